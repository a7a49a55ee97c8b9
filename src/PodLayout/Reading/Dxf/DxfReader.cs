using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace PodLayout.Reading.Dxf;

/// <summary>Reads a DXF file into lines and curves in millimetres.</summary>
internal static class DxfReader
{
    /// <summary>The drawing's lines; null with a refusal.</summary>
    public static DrawnPaths? Read(byte[] content, ReadingOptions options, DrawingFindings findings)
    {
        var binary = content.AsSpan().StartsWith(BinaryTags.Sentinel);
        if (ReadTags(content, binary, findings) is not { } tags || DxfSections.Read(tags, findings) is not { } file)
            return null;
        if (findings.HasRefusal || UnitOf(file, options, findings) is not { } unit)
            return null;
        findings.Lengths = new(unit.IsImperial);
        var walk = new DxfWalk(file, unit, options, findings);
        var paths = walk.Read();
        if (findings.HasRefusal)
            return null;
        var hidden = file.Layers.Values.Where(l => l.IsFrozen || l.IsOff).Select(l => l.Name);
        var format = $"DXF {DxfFile.CommonName(file.Version)} ({(binary ? "binary" : "ASCII")})";
        return new(format, unit, paths, [.. hidden], [.. file.Layers.Values.Select(l => l.Name)])
        {
            Texts = walk.Texts,
            Lengths = findings.Lengths,
        };
    }

    private static List<Tag>? ReadTags(byte[] content, bool binary, DrawingFindings findings)
    {
        // The header says how the text is coded, so it is read once with every byte as a character to find that out.
        var silent = new DrawingFindings(findings.FileName);
        var raw = binary
            ? BinaryTags.Read(content, Encoding.Latin1, silent)
            : TextTags.Read(Encoding.Latin1.GetString(content), silent);
        var version = DxfSections.Peek(raw ?? [], "$ACADVER");
        var codePage = DxfSections.Peek(raw ?? [], "$DWGCODEPAGE");
        var encoding = TextEncoding.Of(content, version, codePage, findings);
        return binary
            ? BinaryTags.Read(content, encoding, findings)
            : TextTags.Read(encoding.GetString(content).TrimStart('\ufeff'), findings);
    }

    private static LengthUnit? UnitOf(DxfFile file, ReadingOptions options, DrawingFindings findings)
    {
        var text = file.Header.GetValueOrDefault("$INSUNITS", "");
        var known = double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var code) && Math.Abs(code) < 1000;
        var drawn = known ? LengthUnit.FromInsUnits((int)code) : null;
        if (options.UnitOverride is { } wish)
        {
            if (drawn is not null && drawn != wish)
                findings.Note("unit-overridden", $"The drawing names {drawn.Name} as its unit ($INSUNITS {text}); read in {wish.Name} as asked.");
            return wish;
        }

        if (drawn is null)
        {
            var found = text.Length == 0 ? "no $INSUNITS" : $"$INSUNITS {text}";
            // The size in either unit is what a person chooses by.
            var silent = new DrawingFindings(findings.FileName);
            var paths = new DxfWalk(file, LengthUnit.Millimetre, options, silent).Read();
            var (message, remedy) = UnitChoice.Words($"The drawing names no unit ({found})", paths, file.Header.GetValueOrDefault("$MEASUREMENT"));
            findings.Refuse("unit-missing", message, remedy);
            return null;
        }

        var measurement = file.Header.GetValueOrDefault("$MEASUREMENT", "");
        var isImperial = drawn.IsImperial;
        if ((measurement == "0" && !isImperial) || (measurement == "1" && isImperial))
        {
            var other = measurement == "0" ? "inch" : "metric";
            findings.Warn(
                "unit-contradiction", $"$INSUNITS says {drawn.Name}, $MEASUREMENT says {other} units; read in {drawn.Name}.",
                "Check the part's size, or say the unit with --units.");
        }

        return drawn;
    }
}

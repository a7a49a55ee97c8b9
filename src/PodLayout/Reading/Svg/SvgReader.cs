using System.Globalization;
using System.Xml.Linq;
using PodLayout.Reading.Curves;

namespace PodLayout.Reading.Svg;

/// <summary>Reads an SVG file into lines and curves in millimetres, with Y upwards.</summary>
internal static class SvgReader
{
    /// <summary>The drawing's lines; null with a refusal.</summary>
    public static DrawnPaths? Read(byte[] content, ReadingOptions options, DrawingFindings findings)
    {
        if (SvgDocument.Load(content, findings) is not { Root: { } root })
            return null;
        if (root.Name.LocalName != "svg")
        {
            findings.Refuse("svg-root", $"The XML file's root element is {root.Name.LocalName}; svg was expected.", "Give a DXF or SVG file.");
            return null;
        }

        if (ToMm(root, options, findings) is not var (toMm, unit, width, height))
            return null;
        findings.Lengths = new(unit.IsImperial || (options.UnitOverride is null && root.Attribute("width")?.Value.Trim().EndsWith("in", StringComparison.OrdinalIgnoreCase) == true));
        var paths = new SvgWalk(root, toMm, options.ChordToleranceMm, width, height, findings).Read();
        return findings.HasRefusal ? null : new("SVG", unit, paths, [], []) { Lengths = findings.Lengths };
    }

    private static (Affine3, LengthUnit, double?, double?)? ToMm(XElement root, ReadingOptions options, DrawingFindings findings)
    {
        double? width = Size(root, "width"), height = Size(root, "height");
        var box = ViewBox(root);
        if (box is not null)
        {
            width ??= height * box[2] / box[3];
            height ??= width * box[3] / box[2];
        }

        if (options.UnitOverride is { } wish)
        {
            findings.Note("unit-overridden", $"One unit of the SVG's coordinates was read as one {wish.Name}, as asked.");
            var top = box is not null ? box[1] + box[3] : height ?? 0;
            return (Upwards(wish.MmPerUnit, top * wish.MmPerUnit), wish, box?[2] ?? width, box?[3] ?? height);
        }

        if (width is not { } w || height is not { } h || !(w > 0) || !(h > 0))
        {
            var silent = new DrawingFindings(findings.FileName);
            var paths = new SvgWalk(root, Affine3.Identity, options.ChordToleranceMm, box?[2], box?[3], silent).Read();
            var (message, remedy) = UnitChoice.Words("The SVG names no size (width and height with a unit were expected at its root)", paths, null);
            findings.Refuse("unit-missing", message, remedy);
            return null;
        }

        if (!HasUnit(root))
            findings.Note("svg-px", "The SVG's size is in px; 96 px were read as one inch, as the standard says.");
        var fit = box is not null ? SvgViewport.Fit(box, w, h, root.Attribute("preserveAspectRatio")?.Value ?? "") : Affine3.Identity;
        var toMm = Upwards(SvgLength.MmPerPx, h * SvgLength.MmPerPx).After(fit);
        var mm = fit.X.X * SvgLength.MmPerPx;
        var unit = new LengthUnit(string.Create(CultureInfo.InvariantCulture, $"SVG unit of {mm:0.######} mm"), mm);
        return (toMm, unit, box?[2] ?? w, box?[3] ?? h);
    }

    private static double? Size(XElement root, string name) =>
        root.Attribute(name) is { } a ? SvgLength.InPx(a.Value, null) : null;

    private static bool HasUnit(XElement root) =>
        (root.Attribute("width") ?? root.Attribute("height"))!.Value.Trim() is { Length: > 0 } v && char.IsAsciiLetter(v[^1]) && !v.EndsWith("px", StringComparison.OrdinalIgnoreCase);

    /// <summary>The viewBox; null when there is none that can be used.</summary>
    public static double[]? ViewBox(XElement element) =>
        element.Attribute("viewBox") is { } a && SvgTransform.Numbers(a.Value) is { Length: 4 } box && box[2] > 0 && box[3] > 0 ? box : null;

    /// <summary>SVG's Y runs down; the part's runs up, from the picture's lower edge.</summary>
    private static Affine3 Upwards(double scale, double heightMm) => SvgTransform.Matrix(scale, 0, 0, -scale, 0, heightMm);
}

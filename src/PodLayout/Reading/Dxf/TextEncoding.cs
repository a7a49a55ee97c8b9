using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace PodLayout.Reading.Dxf;

/// <summary>Finds how the text of a DXF file is coded.</summary>
internal static partial class TextEncoding
{
    private static readonly UTF8Encoding StrictUtf8 = new(false, throwOnInvalidBytes: true);

    /// <summary>UTF-8 from R2007 (AC1021) on, else what <c>$DWGCODEPAGE</c> names; where that is wrong, what fits, with a note.</summary>
    public static Encoding Of(byte[] content, string version, string codePage, DrawingFindings findings)
    {
        var isText = !content.AsSpan().ContainsAnyExceptInRange((byte)0, (byte)127);
        if (isText)
            return Encoding.ASCII;
        var saysUtf8 = string.CompareOrdinal(version, "AC1021") >= 0;
        var binary = content.AsSpan().StartsWith(BinaryTags.Sentinel);
        // Bytes of a binary file's numbers say nothing about its text.
        if (binary)
            return saysUtf8 ? Encoding.UTF8 : ByName(codePage);
        var isUtf8 = IsUtf8(content);
        if (saysUtf8 && !isUtf8)
            findings.Mended("dxf-encoding", $"The file's text is not UTF-8, as its version {version} demands; read as {ByName(codePage).WebName}.");
        var readAsUtf8 = isUtf8 && (saysUtf8 || codePage.Length == 0 || ByName(codePage).IsSingleByte);
        if (readAsUtf8 && !saysUtf8)
            findings.Note("dxf-encoding", "The file's text is UTF-8, though its version does not say so; read as UTF-8.");
        return readAsUtf8 ? Encoding.UTF8 : ByName(codePage);
    }

    /// <summary>Names with <c>\U+XXXX</c> escapes written out.</summary>
    public static string Unescaped(string text) => text.Contains("\\U+", StringComparison.OrdinalIgnoreCase)
        ? Escape().Replace(text, m => ((char)int.Parse(m.ValueSpan[3..], NumberStyles.HexNumber, CultureInfo.InvariantCulture)).ToString())
        : text;

    [GeneratedRegex(@"\\U\+[0-9A-Fa-f]{4}", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Escape();

    private static bool IsUtf8(byte[] content)
    {
        try
        {
            StrictUtf8.GetCharCount(content);
            return true;
        }
        catch (DecoderFallbackException)
        {
            return false;
        }
    }

    private static Encoding ByName(string codePage)
    {
        var name = codePage.ToUpperInvariant();
        var digits = new string([.. name.Where(char.IsAsciiDigit)]);
        var number = name switch
        {
            "MACINTOSH" or "MAC-ROMAN" => 10000,
            "BIG5" => 950,
            "GB2312" => 936,
            "JOHAB" => 1361,
            "KSC5601" => 949,
            "UTF8" or "UTF-8" => 65001,
            _ when name.StartsWith("ISO8859", StringComparison.Ordinal) => 28590 + (digits.Length == 5 ? digits[4] - '0' : 1),
            _ => int.TryParse(digits, NumberStyles.None, CultureInfo.InvariantCulture, out var n) ? n : 1252,
        };
        return CodePagesEncodingProvider.Instance.GetEncoding(number)
            ?? (number == 65001 ? Encoding.UTF8 : CodePagesEncodingProvider.Instance.GetEncoding(1252)!);
    }
}

using System.Globalization;

namespace PodLayout.Handover;

/// <summary>
/// Rows of comma-separated values as RFC 4180 describes them: CRLF at line ends, quotes where needed. A text cell that a
/// spreadsheet would take for a formula (it starts with = + - @, a tab or a carriage return, blanks before it or not) gets an apostrophe in front.
/// </summary>
internal static class CsvText
{
    public static string Of(IEnumerable<IEnumerable<string>> rows) =>
        string.Concat(rows.Select(cells => string.Join(',', cells) + "\r\n"));

    /// <summary>A cell with text from the user.</summary>
    public static string Text(string text)
    {
        var start = text.TrimStart(' ', '\n');
        var isFormula = start.Length > 0 && "=+-@\t\r".Contains(start[0], StringComparison.Ordinal);
        var plain = isFormula ? "'" + text : text;
        return plain.AsSpan().IndexOfAny(",\"\r\n") < 0 && plain == plain.Trim()
            ? plain : "\"" + plain.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"";
    }

    /// <summary>A cell with a length; a minus in front of a number is no formula.</summary>
    public static string Mm(double value) => LayoutFiling.Mm(value).ToString("0.###", CultureInfo.InvariantCulture);

    /// <summary>A cell with a count.</summary>
    public static string Count(int value) => value.ToString(CultureInfo.InvariantCulture);
}

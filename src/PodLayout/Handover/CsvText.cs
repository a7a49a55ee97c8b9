using System.Globalization;
using System.Text.RegularExpressions;
using PodLayout.Findings;
using PodLayout.Geometry;

namespace PodLayout.Handover;

/// <summary>
/// Rows of comma-separated values as RFC 4180 describes them: CRLF at line ends, quotes where needed. A text cell that a
/// spreadsheet would take for a formula (it starts with = + - @, a tab or a carriage return, blanks before it or not, also in
/// the full width of East Asian type) gets an apostrophe in front; so does what follows a semicolon, a tab or a line end, where a
/// spreadsheet with other habits would begin a new cell.
/// </summary>
internal static partial class CsvText
{
    // By definition (NIST Special Publication 811, appendix B).
    internal const double MmPerInch = 25.4;

    public static string Of(IEnumerable<IEnumerable<string>> rows) =>
        string.Concat(rows.Select(cells => string.Join(',', cells) + "\r\n"));

    /// <summary>A cell with text from the user.</summary>
    public static string Text(string text)
    {
        var plain = FormulaStart().Replace(Plain.Text(text, keepsLines: true), "'");
        return plain.AsSpan().IndexOfAny(",\"\r\n") < 0 && plain == plain.Trim()
            ? plain : "\"" + plain.Replace("\"", "\"\"", StringComparison.Ordinal) + "\"";
    }

    // Blanks of any kind, marks without width and quotes may stand before the sign.
    [GeneratedRegex("""(?:^|(?<=[;\t\r\n|]))(?=[\s\u200B-\u200F\u202A-\u202E\u2060-\u2069\uFEFF"']*[=+\-@\uFF1D\uFF0B\uFF0D\uFF20])|^(?=[\t\r])""")]
    private static partial Regex FormulaStart();

    /// <summary>A cell with a length; a minus in front of a number is no formula.</summary>
    public static string Mm(double value) => LayoutFiling.Mm(value).ToString("0.###", CultureInfo.InvariantCulture);

    /// <summary>A length in inches, to a thousandth: what a machine is set to and a caliper reads.</summary>
    public static string Inches(double mm) =>
        (Math.Round(mm / MmPerInch, 3, MidpointRounding.AwayFromZero) + 0.0).ToString("0.###", CultureInfo.InvariantCulture);

    /// <summary>Headings of the columns with X and Y in inches; none where they are not asked for.</summary>
    public static string[] InchHeads(bool areAsked) => areAsked ? ["x_in", "y_in"] : [];

    /// <summary>Their cells.</summary>
    public static string[] Inches(Point2 at, bool areAsked) => areAsked ? [Inches(at.X), Inches(at.Y)] : [];

    /// <summary>
    /// Headings of last columns that only such layouts have: that do not hold what they are to hold, or leave part of the wood unsupported.
    /// </summary>
    public static string[] StopHead(Layouts.PlanResult result) => [.. result.DoesNotHold ? ["do_not_start"] : None, .. result.IsPartial ? ["unsupported_mm"] : None];

    /// <summary>Heading of the last column, the plan's mark.</summary>
    public const string MarkHead = "plan";

    /// <summary>The cells of the headings of <see cref="StopHead"/>.</summary>
    public static string[] Stop(Layouts.PlanResult result) =>
        [.. result.DoesNotHold ? ["does not hold"] : None, .. result.IsPartial ? [Mm(result.Layout!.Proof.UnsupportedMm)] : None];

    private static string[] None => [];

    /// <summary>A cell with a count.</summary>
    public static string Count(int value) => value.ToString(CultureInfo.InvariantCulture);
}

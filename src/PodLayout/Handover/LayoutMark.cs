using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using PodLayout.Handover.Format;
using PodLayout.Layouts;

namespace PodLayout.Handover;

/// <summary>
/// The mark of a plan: a short hash of its layout, which every file of the plan bears, so that files of two plans are told apart
/// whatever they are called. A layout that was changed by hand has the plan's mark and one of its own behind a plus sign.
/// </summary>
public static partial class LayoutMark
{
    // Eight hexadecimal digits: among a thousand plans of a shop two are the same once in some ten thousand times.
    private const int Bytes = 4;

    private const string Words = "PodLayout plan ";

    /// <summary>The mark of a plan's layout.</summary>
    public static string Of(PlanResult result) => result.Mark ?? LayoutFiling.File(result).Mark!;

    /// <summary>The mark of a layout file as it is now.</summary>
    public static string Of(LayoutFile file)
    {
        var own = Hash(file);
        return file.Mark is not { } mark || mark == own ? own : IsPlain(mark) ? $"{mark}+{own}" : mark;
    }

    /// <summary>The part of a mark that all files of one plan have, changed by hand or not.</summary>
    public static string PlanOf(string mark) => mark.Split('+')[0];

    /// <summary>What stands in a file, where only programs look.</summary>
    public static string Sentence(string mark) => Words + mark;

    /// <summary>
    /// The mark that a file of ours bears; null where it bears none. A list of comma-separated values has it in its last column.
    /// </summary>
    public static string? In(string fileName, ReadOnlySpan<byte> content)
    {
        var text = Encoding.Latin1.GetString(content);
        if (fileName.EndsWith(".csv", StringComparison.OrdinalIgnoreCase))
        {
            return InRows(text.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries));
        }

        var found = fileName.EndsWith(".json", StringComparison.OrdinalIgnoreCase) ? Member().Match(text) : Told().Match(text);
        return found.Success ? found.Groups["mark"].Value : null;
    }

    // A list without rows is one of a plan without a layout: a mark of no characters.
    private static string? InRows(string[] rows) => rows.Length == 0 || !rows[0].EndsWith("," + CsvText.MarkHead, StringComparison.Ordinal) ? null
        : rows.Length == 1 ? "" : Cell().Match(rows[^1]) is { Success: true } last ? last.Groups["mark"].Value : null;

    /// <summary>Whether a text is a mark as it stands in a layout file.</summary>
    internal static bool IsPlain(string text) => Plain().IsMatch(text);

    internal static string Hash(LayoutFile file) => Convert.ToHexStringLower(
        SHA256.HashData(Encoding.UTF8.GetBytes(LayoutJson.Write(file with { Mark = null }))).AsSpan(0, Bytes));

    [GeneratedRegex(@"\A[0-9a-f]{8}\z", RegexOptions.CultureInvariant)]
    private static partial Regex Plain();

    [GeneratedRegex(@"PodLayout plan (?<mark>[0-9a-f]{8}(\+[0-9a-f]{8})?)", RegexOptions.CultureInvariant)]
    private static partial Regex Told();

    [GeneratedRegex(@",(?<mark>[0-9a-f]{8}(\+[0-9a-f]{8})?)\z", RegexOptions.CultureInvariant)]
    private static partial Regex Cell();

    [GeneratedRegex(@"""mark"":\s*""(?<mark>[0-9a-f]{8})""", RegexOptions.CultureInvariant)]
    private static partial Regex Member();
}

using System.Net;
using System.Text.RegularExpressions;

namespace PodLayout.Tests.Handover.Setup;

/// <summary>
/// A reader of card.html that knows nothing of the program: tables by their captions, cells as text. What another program would
/// do with a card.
/// </summary>
internal static partial class PageTables
{
    /// <summary>The rows of the table with this caption, by column heading.</summary>
    public static List<Dictionary<string, string>> Rows(string page, string caption)
    {
        var table = Table().Matches(page).Select(m => m.Value).Single(t => WebUtility.HtmlDecode(t).Contains($"<caption>{caption}</caption>", StringComparison.Ordinal));
        var parts = Row().Matches(table).Select(m => Cell().Matches(m.Groups[1].Value).Select(c => Words(c.Groups[1].Value)).ToList()).ToList();
        return [.. parts.Skip(1).Select(cells => parts[0].Zip(cells).Where(c => c.First.Length > 0).ToDictionary(c => c.First, c => c.Second))];
    }

    private static string Words(string markup) => WebUtility.HtmlDecode(Tag().Replace(markup, "")).Trim();

    [GeneratedRegex("<table>.*?</table>", RegexOptions.Singleline)]
    private static partial Regex Table();

    [GeneratedRegex("<tr[^>]*>(.*?)</tr>", RegexOptions.Singleline)]
    private static partial Regex Row();

    [GeneratedRegex("<t[hd][^>]*>(.*?)</t[hd]>", RegexOptions.Singleline)]
    private static partial Regex Cell();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tag();
}

using System.Globalization;
using System.Text;

namespace PodLayout.Handover.Picture;

/// <summary>
/// How wide a text may become. The type of the reader's machine is not known, so the widths are those of a wide
/// sans-serif: a text that fits by this measure fits.
/// </summary>
internal static class TextMeasure
{
    public static double Width(string text, double size, bool isBold = false) =>
        text.EnumerateRunes().Sum(Em) * size * (isBold ? 1.1 : 1);

    /// <summary>Whether all of a text is capitals and digits, which are 0.72 of the type high and reach no lower than its line.</summary>
    public static bool IsOfCapitals(string text) => text.All(c => c is >= '0' and <= '9' or >= 'A' and <= 'Z' and not 'Q');

    /// <summary>The text cut to a width, with an ellipsis.</summary>
    public static string Cut(string text, double width, double size, bool isBold = false)
    {
        if (Width(text, size, isBold) <= width)
        {
            return text;
        }

        var clusters = new StringInfo(text);
        for (var n = clusters.LengthInTextElements - 1; n > 0; n--)
        {
            var cut = clusters.SubstringByTextElements(0, n).TrimEnd() + "…";
            if (Width(cut, size, isBold) <= width)
            {
                return cut;
            }
        }

        return "…";
    }

    /// <summary>The text in lines of at most a width; words that are longer are cut.</summary>
    public static IReadOnlyList<string> Wrap(string text, double width, double size, int mostLines, bool isBold = false)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in text.Split([' ', '\n', '\r', '\t'], StringSplitOptions.RemoveEmptyEntries))
        {
            var longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length == 0 || Width(longer, size, isBold) <= width)
            {
                line = longer;
                continue;
            }

            lines.Add(line);
            line = word;
        }

        lines.Add(line);
        if (lines.Count > mostLines)
        {
            lines[mostLines - 1] = string.Join(' ', lines.Skip(mostLines - 1));
        }

        return [.. lines.Take(mostLines).Select(l => Cut(l, width, size, isBold))];
    }

    private static double Em(Rune rune) => rune.Value switch
    {
        'i' or 'l' or 'j' or '.' or ',' or ':' or ';' or '\'' or '|' or ' ' => 0.34,
        'f' or 't' or 'r' or '(' or ')' or '-' => 0.42,
        'm' or 'w' or 'M' or 'W' or '%' => 0.98,
        >= '0' and <= '9' => 0.64,
        >= 'A' and <= 'Z' => 0.7,
        < 0x1100 => 0.63,
        _ => 1.05,
    };
}

using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using PodLayout.Handover.Picture;

namespace PodLayout.Handover.Setup;

/// <summary>The colours of the page on the screen, light and dark, and the greys on paper. Blue and orange differ in lightness too.</summary>
internal static class CardColours
{
    private static readonly ImmutableDictionary<string, string> OnDark = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["#111111"] = "#f2f2ee",
        ["#ffffff"] = "#1a1d20",
        ["#f6f6f4"] = "#24282c",
        ["#005a8f"] = "#7cc4f5",
        ["#b84a00"] = "#ffa463",
        ["#b09a78"] = "#75684f",
        ["#5c4a2c"] = "#dcc18f",
        ["#fbf6ec"] = "#35302a",
        ["#dddddd"] = "#4a4f54",
    }.ToImmutableDictionary();

    /// <param name="pictures">The pictures, each with what its rules are limited to.</param>
    public static string Css(IEnumerable<(Sheet Picture, string Scope)> pictures)
    {
        var names = pictures.SelectMany(s => s.Picture.Layers).SelectMany(l => l.Primitives).Select(p => p.Style).ToHashSet(StringComparer.Ordinal);
        var colours = PictureStyles.All.Where(s => names.Contains(s.Name)).SelectMany(s => new[] { s.Stroke, s.Fill })
            .OfType<string>().Distinct().Order(StringComparer.Ordinal).ToList();
        var light = Rule(colours, c => c) + "--page: #fff; --text: #111; --soft: #4d4d4d; --line: #b5b5b5; --paper: #fff; --raised: #f3f3f0; --accent: #005a8f; --done: #e3eef5; --lit: #ffe2b8;";
        var dark = Rule(colours, Dark) + "--page: #121416; --text: #f2f2ee; --soft: #bfc3c7; --line: #555b61; --paper: #1a1d20; --raised: #262a2e; --accent: #7cc4f5; --done: #1d3442; --lit: #5a3d14;";
        var paper = Rule(colours, Grey) + "--page: #fff; --text: #111; --soft: #4d4d4d; --line: #b5b5b5; --paper: #fff; --raised: #fff; --accent: #000; --done: #fff; --lit: #fff;";
        StringBuilder css = new();
        css.Append(":root { color-scheme: light; ").Append(light).Append(" }\n")
            .Append("@media screen and (prefers-color-scheme: dark) { :root:not([data-theme=light]) { color-scheme: dark; ").Append(dark).Append(" } }\n")
            .Append("@media screen { :root[data-theme=dark] { color-scheme: dark; ").Append(dark).Append(" } .off { display: none; } }\n")
            .Append("@media print { :root { ").Append(paper).Append(" } }\n");
        foreach (var (picture, scope) in pictures)
        {
            css.Append(SvgWriter.CssInPage(picture, scope, Variable));
        }

        return css.ToString();
    }

    private static string Rule(IEnumerable<string> colours, Func<string, string> shown) =>
        string.Concat(colours.Select(c => $"--c{c[1..]}: {shown(c)}; "));

    private static string Variable(string colour) => $"var(--c{colour[1..]})";

    // On paper as in the PDF: black and white, each colour in its lightness.
    private static string Grey(string colour)
    {
        var value = (int)Math.Round(255 * PdfPage.Grey(colour));
        return string.Create(CultureInfo.InvariantCulture, $"#{value:x2}{value:x2}{value:x2}");
    }

    // A grey becomes the grey that is as far from the other end.
    private static string Dark(string colour)
    {
        if (OnDark.TryGetValue(colour, out var known))
        {
            return known;
        }

        var parts = Enumerable.Range(0, 3).Select(i => int.Parse(colour.AsSpan(1 + 2 * i, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture));
        return "#" + string.Concat(parts.Select(v => (30 + (255 - v) * 210 / 255).ToString("x2", CultureInfo.InvariantCulture)));
    }
}

using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using PodLayout.Handover.Picture;
using PodLayout.JsonFiles;
using PodLayout.Layouts;

namespace PodLayout.Handover.Setup;

/// <summary>
/// The card as one page that needs nothing else: no network, no server. Its policy lets the browser fetch nothing and run no
/// script but its own. Text from the user is escaped, and kept apart from what stands around it whatever its direction.
/// </summary>
internal static partial class CardHtml
{
    // What is shown and hidden together: the name on the page, and the layers of the picture.
    private static readonly (string Name, string Layers)[] Layers =
    [
        ("Grid", "grooves"), ("Numbers", "groove-numbers"), ("Ports", "ports"), ("Zones", "zones"),
        ("Keep clear", "keep-clear defects"), ("Part", "part support"), ("Blank", "blank"), ("Left out", "left-out"), ("Marks for laying", "laying"),
        ("On the board now", "on-the-board-before"), ("Pods", "pods"), ("Seals", "seals"), ("Open ports", "open-ports"), ("Names", "labels"),
    ];

    // A cell of more characters than this may be broken into lines.
    private const int ShortCell = 10;

    // "X mm": a heading of no more characters than this is not broken.
    private const int ShortHeading = 5;

    // Printed, a table of no more rows than this finds room on one page, and is not parted.
    private const int FewRows = 20;

    // The type of a browser is wider than that of the PDF, and a little smaller here: so much of the width by that is surely the whole by its own.
    private const double BrowserShare = 0.96;

    public static string Write(PlanResult result, SetupCard card, CardOptions options, ImmutableArray<Sheet> sheets)
    {
        var (picture, signs, closer) = SetupPicture.OnScreen(result, card.Laying, card.Faults);
        var script = Encoding.UTF8.GetString(Embedded.Bytes("card.js"));
        var style = $"\n{CardColours.Css(Scoped(picture, signs, closer, sheets))}{Style(picture, closer)}{Paper(card, options, sheets[0])}\n";
        StringBuilder page = new();
        page.Append(CultureInfo.InvariantCulture, $"""
            <!DOCTYPE html>
            <html lang="en" data-card="{Identity(result, options)}">
            <head>
            <meta charset="utf-8">
            <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src {Hash(style)}; script-src {Hash(script)}; base-uri 'none'; form-action 'none'">
            <meta name="generator" content="{LayoutMark.Sentence(LayoutMark.Of(result))}">
            <meta name="viewport" content="width=device-width, initial-scale=1">
            <title>Setup card: {Plain(card.Title)}</title>
            <style>{style}</style>
            </head>
            <body>
            <a class="skip" href="#pods">To the pods</a>
            {PrintedSheet(sheets[0], 0)}
            <header>
            <h1>{Text(card.Title)}</h1>
            <p class="edition">{string.Join("<br>", card.Edition.Select(Text))}</p>

            """);
        if (!card.Warnings.IsEmpty)
        {
            page.Append("<section class=\"warnings\" aria-label=\"Read this first\">\n");
            foreach (var warning in card.Warnings)
            {
                page.Append("<p>").Append(Sentence(warning)).Append("</p>\n");
            }

            page.Append("</section>\n");
        }

        Block(page, card.Head);
        page.Append("</header>\n<main>\n");
        Picture(page, picture, signs, closer);
        page.Append("<div>\n");
        for (var i = 0; i < card.Sections.Length; i++)
        {
            var section = card.Sections[i];
            page.Append(CultureInfo.InvariantCulture, $"<section id=\"{section.Id}\" aria-labelledby=\"h-{section.Id}\">\n<h2 id=\"h-{section.Id}\">{i + 1}. {Text(section.Heading)}</h2>\n");
            foreach (var block in section.Blocks)
            {
                Block(page, block);
            }

            page.Append("</section>\n");
        }

        page.Append("</div>\n</main>\n").AppendJoin("", sheets.Skip(1).Select((s, i) => PrintedSheet(s, i + 1) + "\n")).Append("<script>").Append(script).Append("</script>\n</body>\n</html>\n");
        return page.ToString();
    }

    // Each picture has its own scale, and with it the widths of its lines.
    private static IEnumerable<(Sheet Picture, string Scope)> Scoped(Sheet picture, Sheet signs, ImmutableArray<CloserView> closer, ImmutableArray<Sheet> sheets) =>
    [
        (picture, ".view "), .. closer.Select(c => (c.Picture, $".view[data-part=\"{c.Number}\"] ")), (signs, ".signs "),
        .. sheets.Select((s, i) => (s, i == 0 ? ".sheet " : string.Create(CultureInfo.InvariantCulture, $".sheet[data-part=\"{i}\"] "))),
    ];

    // On a low screen a picture is scrolled rather than made so small that its numbers cannot be read, and it stands beside the tables
    // only where it is wide enough for them there.
    private static string Style(Sheet picture, ImmutableArray<CloserView> closer)
    {
        var pictures = closer.Select(c => (Place: $".view[data-part=\"{c.Number}\"]", Least: SetupPicture.LeastPixelsOf(c.Picture))).Prepend((Place: ".view", Least: SetupPicture.LeastPixelsOf(picture))).ToList();
        var heights = pictures.Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.Place} {{ --least: {Math.Ceiling(p.Least.Height):0}px; }}\n"));

        // In the style sheet: 17 pixels are a rem, but in its conditions 16; two margins and a gap, five ninths, and a frame. A bar to scroll by may take 15.
        const string beside = "(min-width: 75rem)";
        var wide = Math.Max(75, Math.Ceiling(((pictures.Max(p => p.Least.Width) + 4) * 9 / 5 + 4 * 17 + 15) / 16));
        return string.Concat(heights) + Encoding.UTF8.GetString(Embedded.Bytes("card.css")).Replace(beside, string.Create(CultureInfo.InvariantCulture, $"(min-width: {wide:0}rem)"), StringComparison.Ordinal);
    }

    private static string PrintedSheet(Sheet sheet, int part) => string.Create(
        CultureInfo.InvariantCulture, $"<div class=\"sheet\" data-part=\"{part}\" aria-hidden=\"true\">{SvgWriter.WriteInPage(sheet, part == 0 ? "sheet-" : $"sheet-{part}-")}</div>");

    private static void Picture(StringBuilder page, Sheet picture, Sheet signs, ImmutableArray<CloserView> closer)
    {
        var used = picture.Layers.Where(l => !l.Primitives.IsEmpty).Select(l => l.Name).ToHashSet(StringComparer.Ordinal);
        page.Append("""
            <section id="picture" aria-labelledby="h-picture">
            <h2 id="h-picture">The board from above</h2>
            <div class="tools">
            <button type="button" id="nearer" aria-label="Zoom in">+</button>
            <button type="button" id="farther" aria-label="Zoom out">&#8722;</button>
            <button type="button" id="whole" aria-label="Show the whole board">Board</button>
            <button type="button" id="close" aria-label="Show the part alone">Part</button>
            <button type="button" id="theme">Light or dark</button>
            <button type="button" id="untick">Untick all</button>
            <p class="progress" id="progress" role="status"></p>
            </div>
            <div class="view" data-id="pic-" tabindex="0" role="group" aria-label="Picture: arrow keys move it, + and - zoom, 0 shows the board, 1 the part">

            """);
        page.Append(SvgWriter.WriteInPage(picture, "pic-"));
        page.Append("\n</div>\n<p class=\"told\" id=\"told\" role=\"status\">Tap a pod or a port, or press its number in the table.</p>\n");
        foreach (var view in closer)
        {
            var id = $"pic-{CsvText.Count(view.Number)}-";
            page.Append(CultureInfo.InvariantCulture, $"<h3>{Plain(view.Title)}</h3>\n<div class=\"view\" data-part=\"{view.Number}\" data-id=\"{id}\" tabindex=\"0\" role=\"group\" aria-label=\"{view.Name}, a part of the picture, larger: arrow keys move it, + and - zoom, 0 shows all of it\">\n")
                .Append(SvgWriter.WriteInPage(view.Picture, id)).Append("\n</div>\n");
        }

        page.Append("<details class=\"layers\">\n<summary>Layers</summary>\n<div>\n");
        foreach (var (name, layers) in Layers.Where(l => l.Layers.Split(' ').Any(used.Contains)))
        {
            page.Append(CultureInfo.InvariantCulture, $"<label><input type=\"checkbox\" checked data-layers=\"{layers}\">{name}</label>\n");
        }

        page.Append("</div>\n</details>\n<div class=\"signs\">\n").Append(SvgWriter.WriteInPage(signs, "signs-")).Append("\n</div>\n</section>\n");
    }

    private static void Block(StringBuilder page, CardBlock block)
    {
        switch (block)
        {
            case CardBlock.Words words:
                page.Append(words.IsStrong ? "<p class=\"strong\">" : "<p>").Append(Sentence(words.Text)).Append("</p>\n");
                break;
            case CardBlock.Facts facts:
                page.Append("<dl class=\"facts\">\n");
                foreach (var (name, value) in facts.Rows)
                {
                    page.Append("<div><dt>").Append(Plain(name)).Append("</dt>")
                        .Append(value.Length == 0 ? "<dd class=\"blank\"></dd>" : $"<dd>{Text(value)}</dd>").Append("</div>\n");
                }

                page.Append("</dl>\n");
                break;
            case CardBlock.Table table:
                Table(page, table);
                break;
            case CardBlock.Steps steps:
                page.Append("<ul class=\"steps-list\">\n");
                foreach (var (key, text) in steps.Items)
                {
                    page.Append(CultureInfo.InvariantCulture, $"<li><label><input type=\"checkbox\" data-key=\"{key}\"><span>{Sentence(text)}</span></label></li>\n");
                }

                page.Append("</ul>\n");
                break;
            case CardBlock.Lines lines:
                page.Append("<div class=\"write\">").AppendJoin("", lines.Names.Select(n => $"<span>{Plain(n)}</span>")).Append("</div>\n");
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(block), block, "Unknown block.");
        }
    }

    private static void Table(StringBuilder page, CardBlock.Table table)
    {
        page.Append(table.Rows.Length <= FewRows ? "<div class=\"scroll few\">" : "<div class=\"scroll\">").Append("<table>\n<caption>").Append(Plain(table.Caption)).Append("</caption>\n<thead><tr>");
        if (table.Tick is not null)
        {
            page.Append("<th scope=\"col\">").Append(Plain(table.Tick)).Append("</th>");
        }

        page.AppendJoin("", table.Columns.Select(c => c.Length == 0 ? "<td></td>" : $"<th{(c.Length <= ShortHeading ? " class=\"short\"" : "")} scope=\"col\">{Plain(c)}</th>")).Append("</tr></thead>\n<tbody>\n");
        foreach (var row in table.Rows)
        {
            page.Append(CultureInfo.InvariantCulture, $"<tr id=\"row-{row.Key}\">");
            if (table.Tick is { } tick)
            {
                page.Append(CultureInfo.InvariantCulture, $"<td class=\"tick\"><label><input type=\"checkbox\" data-key=\"{row.Key}\" aria-label=\"{Plain(row.Cells[0])}: {Plain(tick)}\"></label></td>");
            }

            // What is drawn in the picture can be pointed at from here.
            var name = row.Key[0] is 'P' or 'O' ? $"<button type=\"button\" data-show=\"{row.Key}\">{Text(row.Cells[0])}</button>" : Text(row.Cells[0]);
            page.Append(row.Cells[0].Length > ShortCell ? "<th scope=\"row\">" : "<th class=\"short\" scope=\"row\">").Append(name).Append("</th>").AppendJoin("", row.Cells.Skip(1).Select(c => $"<td{(c.Length > ShortCell ? " class=\"long\"" : "")}>{Text(c)}</td>")).Append("</tr>\n");
        }

        page.Append("</tbody>\n</table></div>\n");
    }

    // Page size, and what stands on each page; it is written in numbers of characters, so that no name of the user can end the string.
    private static string Paper(SetupCard card, CardOptions options, Sheet sheet)
    {
        static string Mm(double value) => CsvText.Mm(value) + "mm";
        const double edge = PageFrame.MarginMm;
        double width = sheet.Extent.Width / sheet.Scale, height = sheet.Extent.Height / sheet.Scale;
        static string Quoted(string text) => "\"" + string.Concat(SvgWriter.XmlText(text).EnumerateRunes().Select(r =>
            Rune.IsLetterOrDigit(r) && r.IsAscii ? r.ToString() : $"\\{r.Value:x6} ")) + "\"";
        var weight = card.Stop.Stops ? "bold " : "";
        var running = $"content: {Quoted(CardPages.Running(card, options.Paper, BrowserShare))}; font: {weight}8pt sans-serif; white-space: pre-wrap;";
        const string number = "@bottom-right { content: \"page \" counter(page) \" of \" counter(pages); font: 9pt sans-serif; white-space: nowrap; }";

        // The picture has a head of its own; its page lies as its sheet does. A browser that knows no pages of another size scales it into an upright one.
        return $"@page {{ size: {Mm(options.Paper.WidthMm)} {Mm(options.Paper.HeightMm)}; margin: 18mm 12mm 16mm; {number} @top-left {{ {running} width: 100%; vertical-align: bottom; padding-bottom: 1mm; margin-bottom: 3mm; border-bottom: 1px solid; }} }}\n"
            + $"@page picture {{ size: {Mm(width + 2 * edge)} {Mm(height + 2 * edge)}; margin: {Mm(edge)}; {number} @top-left {{ content: none; border: 0; }} @bottom-left {{ {running} }} }}\n"
            + $"@media print {{ .sheet svg {{ width: {Mm(width)}; height: {Mm(height - 0.5)}; }} }}\n";
    }

    // Ticks belong to this card: another layout, revision or date has its own.
    private static string Identity(PlanResult result, CardOptions options) => Convert.ToHexString(SHA256.HashData(
        Encoding.UTF8.GetBytes(string.Join('\u0001', LayoutJson.Write(result), options.Revision, options.Date, options.Face))).AsSpan(0, 8));

    // How the page's policy names its one style sheet and its one script.
    private static string Hash(string text) => $"'sha256-{Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(text)))}'";

    // Text of ours or of the user: escaped, and in a box of its own direction.
    private static string Text(string text) => "<bdi>" + Plain(text) + "</bdi>";

    // The same; a port's name, or the number of a table, is not parted at the end of a line.
    private static string Sentence(string text) => NumberPair().Replace(Text(text), "<span class=\"whole\">$0</span>");

    [GeneratedRegex(@"(?<![\w#;-])[0-9]+-[0-9]+(?![\w-])", RegexOptions.CultureInvariant)]
    private static partial Regex NumberPair();

    private static string Plain(string text) => SvgWriter.XmlText(text)
        .Replace("&", "&amp;", StringComparison.Ordinal).Replace("<", "&lt;", StringComparison.Ordinal)
        .Replace(">", "&gt;", StringComparison.Ordinal).Replace("\"", "&quot;", StringComparison.Ordinal)
        .Replace("'", "&#39;", StringComparison.Ordinal);
}

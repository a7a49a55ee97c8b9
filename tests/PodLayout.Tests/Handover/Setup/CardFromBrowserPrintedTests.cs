using Microsoft.Playwright;
using PodLayout.Tests.Cli;

namespace PodLayout.Tests.Handover.Setup;

/// <summary>The page as a browser prints it.</summary>
public class CardFromBrowserPrintedTests
{
    [Theory]
    [InlineData("oval", "A4")]
    [InlineData("door", "A4")]
    [InlineData("block", "A4")]
    [InlineData("block", "Letter")]
    [InlineData("standing", "Letter")]
    public async Task Printed_from_the_browser_no_table_is_clipped_and_pages_are_numbered(string name, string paper)
    {
        using Scratch scratch = new();
        await using var browser = await Browser.Start(1024, 768, ColorScheme.Dark);
        var options = Cards.Options with { Paper = paper == "A4" ? PodLayout.Handover.Picture.PaperSize.A4 : PodLayout.Handover.Picture.PaperSize.Letter };
        var plan = Cards.Plan(name);
        var page = await browser.Open(scratch.Put("card.html", Cards.File(plan, "card.html", options)));
        var print = await page.PdfAsync(new() { PreferCSSPageSize = true });
        using var document = UglyToad.PdfPig.PdfDocument.Open(print);
        var pages = document.GetPages().ToList();

        // A page for the picture and for each part that is shown larger, and about 25 rows of pods or ports on each of the others.
        var (rows, last) = (2 * plan.Layout!.Pods.Length, name == "block" ? 1 : 0);
        Assert.InRange(pages.Count, 3 + rows / 30 + last, 6 + rows / 15 + last);
        bool IsPicture(int i) => i == 0 || i >= pages.Count - last;
        var ends = string.Join(' ', pages[^1].GetWords().Select(w => w.Text));
        Assert.Equal(last > 0, ends.Contains("View 1: columns", StringComparison.Ordinal) && ends.Contains("P25", StringComparison.Ordinal));
        for (var i = 0; i < pages.Count; i++)
        {
            // The picture's page may lie on its side.
            Assert.Equal(IsPicture(i) ? Math.Min(options.Paper.WidthMm, options.Paper.HeightMm) : options.Paper.WidthMm, (IsPicture(i) ? Math.Min(pages[i].Width, pages[i].Height) : pages[i].Width) / 72 * 25.4, 0.5);
            Assert.Contains($"page {i + 1} of {pages.Count}", string.Join(' ', pages[i].GetWords().Select(w => w.Text)), StringComparison.Ordinal);
            Assert.All(pages[i].Letters, l => Assert.InRange(l.StartBaseLine.X, 0, pages[i].Width));
        }

        var words = pages.SelectMany(p => p.GetWords()).Select(w => w.Text).ToHashSet();
        Assert.All(plan.Layout.Pods.Select((p, i) => ($"P{i + 1}", p.OpenPorts[0].Name)), p => Assert.True(words.Contains(p.Item1) && words.Contains(p.Name)));
    }

    [Theory]
    [InlineData("crest", "A4")]
    [InlineData("oval", "Letter")]
    [InlineData("tall", "A4")]
    [InlineData("wide-60", "A4")]
    public async Task The_first_page_of_the_browsers_print_is_the_picture_of_the_PDF_at_the_same_places(string name, string paper)
    {
        using Scratch scratch = new();
        await using var browser = await Browser.Start(1024, 768, ColorScheme.Dark);
        var options = Cards.Options with { Paper = paper == "A4" ? PodLayout.Handover.Picture.PaperSize.A4 : PodLayout.Handover.Picture.PaperSize.Letter };
        var plan = Cards.Plan(name);
        var page = await browser.Open(scratch.Put("card.html", Cards.File(plan, "card.html", options)));
        using var print = UglyToad.PdfPig.PdfDocument.Open(await page.PdfAsync(new() { PreferCSSPageSize = true }));
        using var own = UglyToad.PdfPig.PdfDocument.Open(Cards.File(plan, "card.pdf", options));
        var (theirs, ours) = (print.GetPage(1), own.GetPage(1));
        Assert.Equal((ours.Width, ours.Height), (theirs.Width, theirs.Height), (a, b) => Math.Abs(a.Item1 - b.Item1) < 1.5 && Math.Abs(a.Item2 - b.Item2) < 1.5);

        // By the middle of each pod's number, points of 1/72 in: within a millimetre, since the browser has a type of its own.
        foreach (var id in plan.Layout!.Pods.Select((_, i) => $"P{i + 1}"))
        {
            (double X, double Y) Middle(UglyToad.PdfPig.Content.Page p) => p.GetWords().Where(w => w.Text == id).Select(w => (w.BoundingBox.Centroid.X, w.BoundingBox.Centroid.Y)).First();
            var (a, b) = (Middle(theirs), Middle(ours));
            Assert.True(Math.Abs(a.X - b.X) < 3 && Math.Abs(a.Y - b.Y) < 3, $"{id}: {a} and {b}");
        }

        // No line is heavier than the heaviest in the PDF, and nothing has a colour.
        // PdfPig gives widths as they are written: the browser's in millimetres of the board, ours in points.
        var scale = PaperText.Number(System.Text.RegularExpressions.Regex.Match(Cards.Text(plan, "card.html", options), "Scale 1:([0-9.]+) on").Groups[1].Value);
        Assert.Equal(ours.Paths.Max(p => p.LineWidth) / 72 * 25.4, theirs.Paths.Where(p => p.IsStroked).Max(p => p.LineWidth) / scale, 0.01);
        Assert.All(theirs.Paths.SelectMany(p => new[] { p.IsStroked ? p.StrokeColor : null, p.IsFilled ? p.FillColor : null }).OfType<UglyToad.PdfPig.Graphics.Colors.IColor>(), c =>
        {
            var (r, g, blue) = c.ToRGBValues();
            Assert.True(Math.Abs(r - g) < 0.01 && Math.Abs(g - blue) < 0.01, $"{r} {g} {blue}");
        });
    }

    [Fact]
    public async Task Every_page_printed_from_the_browser_says_not_to_start_and_of_which_revision_it_is_but_no_page_of_another_print()
    {
        using Scratch scratch = new();
        await using var browser = await Browser.Start(1024, 768);
        var options = Cards.Options with { Revision = "B \"2\" \\ ;}", Date = "25 November 2026" };
        var plan = Cards.Plan("washed") with { Findings = [new("wood-unknown", PodLayout.Findings.Severity.Warning, PodLayout.Findings.FindingKind.Request, "the wood is not known.", null)] };
        var first = "";
        async Task<List<string>> Printed(PodLayout.Handover.Setup.LayoutDoubts doubts)
        {
            var file = PodLayout.Handover.Setup.CardFiles.Of(plan, options, doubts).Single(f => f.Name == "card.html").Content;
            var page = await browser.Open(scratch.Put("card.html", file));
            using var print = UglyToad.PdfPig.PdfDocument.Open(await page.PdfAsync(new() { PreferCSSPageSize = true }));
            first = string.Concat(print.GetPage(1).Letters.Select(l => l.Value)).Replace(" ", "", StringComparison.Ordinal);
            return [.. print.GetPages().Select(p => string.Join(' ', p.GetWords().Select(w => w.Text)))];
        }

        var stopped = await Printed(new(true, ["on the lattice (P1)"], ["P1 is off."], []) { Faults = [new(0, Counts: true)] });
        Assert.True(stopped.Count >= 4);
        Assert.All(stopped, words => Assert.Contains("DO NOT START", words, StringComparison.Ordinal));
        var planned = await Printed(PodLayout.Handover.Setup.LayoutDoubts.None);
        Assert.All(planned, words => Assert.DoesNotContain("DO NOT START", words, StringComparison.Ordinal));
        Assert.All(stopped.Concat(planned), words => Assert.Contains("Revision: B \"2\" \\ ;} | Date: 25 November 2026", words, StringComparison.Ordinal));

        // On the picture too, whose words are broken as they fit.
        Assert.Contains("1warningstandsinsection8:readbeforesettingup.", first, StringComparison.Ordinal);
        Assert.All(planned, words => Assert.DoesNotMatch("on page [0-9]", words));
    }

    [Theory]
    [InlineData("A4")]
    [InlineData("Letter")]
    public async Task Printed_from_the_browser_figures_and_a_table_that_fit_on_a_page_are_not_parted(string paper)
    {
        using Scratch scratch = new();
        await using var browser = await Browser.Start(1024, 768);
        foreach (var count in new[] { 4, 8, 13, 17 })
        {
            var card = Cards.File(Cards.Grid(1500, 900, count, PodLayout.Tests.Independent.HandMade.Square), "card.html", Cards.Options with { Paper = paper == "A4" ? PodLayout.Handover.Picture.PaperSize.A4 : PodLayout.Handover.Picture.PaperSize.Letter });
            var page = await browser.Open(scratch.Put("card.html", card));
            using var print = UglyToad.PdfPig.PdfDocument.Open(await page.PdfAsync(new() { PreferCSSPageSize = true }));
            List<string> pages = [.. print.GetPages().Skip(1).Select(p => string.Join(' ', p.GetWords().Select(w => w.Text)))];
            int PageOf(string words)
            {
                var found = pages.FindIndex(p => p.Contains(words, StringComparison.Ordinal));
                Assert.True(found >= 0, words);
                return found;
            }

            // The heading and the last of its figures, as far as no ligature of the browser's type parts them.
            Assert.Equal(PageOf("Heights and work"), PageOf(" as set"));
            Assert.Equal(PageOf("Pods in placing order"), PageOf($"P{count} 120x120"));
        }
    }

    [Fact]
    public async Task Printed_from_the_browser_a_long_table_begins_under_its_heading_on_a_page_that_has_room()
    {
        using Scratch scratch = new();
        await using var browser = await Browser.Start(1024, 768);
        var page = await browser.Open(scratch.Put("card.html", Cards.File(Cards.Plan("wide-60"), "card.html")));
        using var print = UglyToad.PdfPig.PdfDocument.Open(await page.PdfAsync(new() { PreferCSSPageSize = true }));
        var pages = print.GetPages().ToList();

        // 60 ports and 60 pods follow on each other without a gap: every page from the first port to the last pod is full, but the last.
        int PageOf(string id) => pages.FindIndex(1, p => p.GetWords().Any(w => w.Text == id && w.Letters[0].FontName!.Contains("Bold", StringComparison.Ordinal)));
        var ports = pages.FindIndex(1, p => string.Join(' ', p.GetWords().Select(w => w.Text)).Contains("2. Open the ports", StringComparison.Ordinal));
        var pods = pages.FindIndex(1, p => string.Join(' ', p.GetWords().Select(w => w.Text)).Contains("3. Set the pods", StringComparison.Ordinal));
        Assert.True(pods > ports);
        Assert.Equal(pods, PageOf("P3"));
        foreach (var full in Enumerable.Range(ports, PageOf("P60") - ports))
        {
            // The foot stands 16 mm high; a row is about 11 mm, and three of them stay together.
            Assert.True(pages[full].GetWords().Where(w => w.BoundingBox.Bottom > 16 / 25.4 * 72).Min(w => w.BoundingBox.Bottom) < (16 + 4 * 11) / 25.4 * 72, $"page {full + 1}");
        }
    }
}

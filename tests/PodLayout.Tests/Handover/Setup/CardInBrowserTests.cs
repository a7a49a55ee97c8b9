using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using PodLayout.Tests.Cli;

namespace PodLayout.Tests.Handover.Setup;

/// <summary>The page in a browser: it needs nothing but itself, and does what it promises.</summary>
public class CardInBrowserTests
{
    public static TheoryData<string> Plans() => [.. Cards.Names];

    [Theory]
    [MemberData(nameof(Plans))]
    public async Task It_opens_from_a_file_asks_for_nothing_and_complains_of_nothing(string name)
    {
        using Scratch scratch = new();
        await using var browser = await Browser.Start(1280, 900);
        var page = await browser.Open(scratch.Put("card.html", Cards.File(Cards.Plan(name), "card.html")));
        Assert.Equal([], browser.Complaints);
        Assert.Equal(Cards.Plan(name).Layout!.Pods.Length, await page.Locator(".view[data-id='pic-'] .pl-pod").CountAsync());
        Assert.Contains($"0 of {Cards.Plan(name).Layout!.Pods.Length}", await page.Locator("#progress").InnerTextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ticks_are_kept_in_the_browser_for_this_card_and_no_other()
    {
        using Scratch scratch = new();
        await using var browser = await Browser.Start(1280, 900);
        var file = scratch.Put("card.html", Cards.File(Cards.Plan("oval"), "card.html"));
        var page = await browser.Open(file);
        await page.Locator("input[data-key=P3]").CheckAsync();
        await page.Locator("input[data-key=O1]").CheckAsync();
        Assert.Equal("Pods set: 1 of 7. Ports open: 1 of 7.", await page.Locator("#progress").InnerTextAsync());

        // A mark in the picture too, drawn twice: a light one under a dark one.
        Assert.Equal(4, await page.Locator(".view .done-mark").CountAsync());
        await page.CloseAsync();
        page = await browser.Open(file);
        Assert.True(await page.Locator("input[data-key=P3]").IsCheckedAsync());
        Assert.False(await page.Locator("input[data-key=P1]").IsCheckedAsync());
        var other = await browser.Open(scratch.Put("other.html", Cards.File(Cards.Plan("oval"), "card.html", Cards.Options with { Revision = "C" })));
        Assert.False(await other.Locator("input[data-key=P3]").IsCheckedAsync());
        page.Dialog += (_, dialog) => dialog.AcceptAsync();
        await page.Locator("#untick").ClickAsync();
        Assert.False(await page.Locator("input[data-key=P3]").IsCheckedAsync());
        Assert.Equal([], browser.Complaints);
    }

    [Fact]
    public async Task What_is_done_in_the_picture_is_done_in_the_part_that_is_shown_larger_too()
    {
        using Scratch scratch = new();
        await using var browser = await Browser.Start(820, 1180, hasTouch: true);
        var page = await browser.Open(scratch.Put("card.html", Cards.File(Cards.Plan("block"), "card.html")));
        var (whole, part) = (page.Locator(".view[data-id='pic-']"), page.Locator(".view[data-part='1']"));
        Assert.StartsWith("View 1: columns 1", await page.Locator("#picture h3").InnerTextAsync(), StringComparison.Ordinal);

        // A tick, a tap, a layer.
        await page.Locator("input[data-key=P25]").CheckAsync();
        Assert.Equal(2, await whole.Locator(".done-mark").CountAsync());
        Assert.Equal(2, await part.Locator(".done-mark").CountAsync());
        await part.Locator(".pl-pod[data-of=P34]").TapAsync();
        Assert.Contains("Pod P34", await page.Locator("#told").InnerTextAsync(), StringComparison.Ordinal);
        Assert.Equal(1, await whole.Locator(".pl-pod.lit").CountAsync());
        Assert.Equal(1, await part.Locator(".pl-pod.lit").CountAsync());
        await page.Locator("details.layers summary").ClickAsync();
        await page.GetByLabel("Seals", new() { Exact = true }).UncheckAsync();
        Assert.False(await page.Locator("#pic-seals").IsVisibleAsync());
        Assert.False(await page.Locator("#pic-1-seals").IsVisibleAsync());
        Assert.True(await page.Locator("#pic-1-open-ports").IsVisibleAsync());

        // Ticks hide no number, no name and no port.
        foreach (var id in Enumerable.Range(1, 60))
        {
            await page.Locator($"input[data-key=P{id}]").CheckAsync();
        }

        var hidden = await page.EvaluateAsync<string[]>("""
            (() => {
              const view = document.querySelector(".view[data-part='1']"), boxes = s => [...view.querySelectorAll(s)].map(e => [e.getBBox(), e.textContent]);
              const touch = (a, b) => a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
              return boxes(".done-mark").flatMap(([m]) => boxes("#pic-1-labels text, .pl-port-open").filter(([b]) => touch(m, b)).map(([, w]) => w));
            })()
            """);
        Assert.Equal([], hidden);

        // Each zooms by itself.
        var before = await whole.Locator("svg").GetAttributeAsync("viewBox");
        async Task<double[]> Seen() => [.. (await part.Locator("svg").GetAttributeAsync("viewBox"))!.Split(' ').Select(v => Math.Round(PaperText.Number(v), 3))];
        var near = await Seen();
        await part.FocusAsync();
        await page.Keyboard.PressAsync("+");
        Assert.Equal(before, await whole.Locator("svg").GetAttributeAsync("viewBox"));
        Assert.NotEqual(near, await Seen());
        await page.Keyboard.PressAsync("0");
        Assert.Equal(near, await Seen());
        await page.Locator("#nearer").ClickAsync();
        Assert.NotEqual(before, await whole.Locator("svg").GetAttributeAsync("viewBox"));
        Assert.Equal([], browser.Complaints);
    }

    [Theory]
    [InlineData("rows on an upright board")]
    [InlineData("round the edges, upright")]
    [InlineData("rows of small pods")]
    [InlineData("rows of small pods, one against the other")]
    public async Task Numbers_are_read_without_zooming_on_a_low_screen_and_on_a_tablet_however_it_is_held(string name)
    {
        using Scratch scratch = new();
        var file = scratch.Put("card.html", Cards.File(CrowdedCards.Plan(name), "card.html"));
        await using var browser = await Browser.Start(820, 1180);
        var page = await browser.Open(file);
        foreach (var (width, height) in new[] { (820, 1070), (1180, 710), (1280, 650), (1400, 890), (1900, 940) })
        {
            await page.SetViewportSizeAsync(width, height);
            var largest = await page.EvaluateAsync<Dictionary<string, double>>("""
                (() => {
                  const sizes = {};
                  for (const text of document.querySelectorAll(".view .pl-pod-id, .view .pl-stretch-number")) {
                    const pixels = text.getAttribute("font-size") * text.getScreenCTM().a;
                    sizes[text.textContent] = Math.max(pixels, sizes[text.textContent] ?? 0);
                  }
                  return sizes;
                })()
                """);

            // The picture leaves room for the tables: never wider than the page.
            Assert.Equal(width, await page.EvaluateAsync<int>("document.documentElement.scrollWidth"));
            Assert.True(largest.Count > 48);
            Assert.Equal([], largest.Where(t => t.Value < 9).Select(t => $"{t.Key} {t.Value:0.0} at {width} x {height}"));
        }
    }

    [Fact]
    public async Task Layers_go_and_come_back_and_print_shows_them_all()
    {
        using Scratch scratch = new();
        await using var browser = await Browser.Start(1280, 900);
        var page = await browser.Open(scratch.Put("card.html", Cards.File(Cards.Plan("standing"), "card.html")));
        await page.Locator("details.layers summary").ClickAsync();
        foreach (var (name, layer) in new[] { ("Grid", "grooves"), ("Seals", "seals"), ("Open ports", "open-ports"), ("On the board now", "on-the-board-before") })
        {
            var box = page.GetByLabel(name, new() { Exact = true });
            await box.UncheckAsync();
            Assert.False(await page.Locator($"#pic-{layer}").IsVisibleAsync());
            await page.EmulateMediaAsync(new() { Media = Media.Print });
            Assert.True(await page.Locator($"#sheet-{layer}").IsVisibleAsync());
            await page.EmulateMediaAsync(new() { Media = Media.Screen });
            Assert.False(await page.Locator($"#sheet-{layer}").IsVisibleAsync());
            await box.CheckAsync();
            Assert.True(await page.Locator($"#pic-{layer}").IsVisibleAsync());
        }

        Assert.Equal([], browser.Complaints);
    }

    [Fact]
    public async Task A_pod_tells_what_it_is_to_mouse_finger_and_keyboard()
    {
        using Scratch scratch = new();
        await using var browser = await Browser.Start(820, 1180, hasTouch: true);
        var page = await browser.Open(scratch.Put("card.html", Cards.File(Cards.Plan("oval"), "card.html")));
        await page.Locator(".view .pl-pod[data-of=P2]").HoverAsync();
        var told = page.Locator("#told");
        Assert.Contains("Pod P2, Type 120x120, Turn -, Column 13, Row 6, X mm 435, Y mm 225, Ports 4-2", await told.InnerTextAsync(), StringComparison.Ordinal);
        await page.Locator(".view .pl-pod[data-of=P5]").TapAsync();
        Assert.Contains("Pod P5", await told.InnerTextAsync(), StringComparison.Ordinal);
        await page.Locator("button[data-show=P6]").FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        Assert.Contains("Pod P6", await told.InnerTextAsync(), StringComparison.Ordinal);
        Assert.Equal(1, await page.Locator(".view .pl-pod.lit").CountAsync());
    }

    [Fact]
    public async Task The_picture_zooms_and_moves_by_button_and_key_and_stays_on_the_board()
    {
        using Scratch scratch = new();
        await using var browser = await Browser.Start(1280, 900);
        var page = await browser.Open(scratch.Put("card.html", Cards.File(Cards.Plan("door"), "card.html")));
        async Task<double[]> Seen() => [.. (await page.Locator(".view svg").GetAttributeAsync("viewBox"))!.Split(' ').Select(PaperText.Number)];
        var whole = await Seen();
        await page.Locator("#nearer").ClickAsync();
        var near = await Seen();
        Assert.Equal(whole[2] / 1.5, near[2], whole[2] * 1e-6);
        await page.Locator(".view").FocusAsync();
        await page.Keyboard.PressAsync("ArrowRight");
        Assert.True((await Seen())[0] > near[0]);
        for (var i = 0; i < 40; i++)
        {
            await page.Keyboard.PressAsync("ArrowRight");
        }

        var last = await Seen();
        Assert.Equal(whole[0] + whole[2], last[0] + last[2], whole[2] * 1e-6);
        await page.Keyboard.PressAsync("0");
        Assert.Equal(whole, await Seen());
    }

    [Fact]
    public async Task One_press_shows_the_part_with_its_blank_alone_and_print_shows_the_whole_board_all_the_same()
    {
        using Scratch scratch = new();
        await using var browser = await Browser.Start(1280, 900);
        var plan = Cards.Plan("crest");
        var page = await browser.Open(scratch.Put("card.html", Cards.File(plan, "card.html")));
        async Task<double[]> Seen() => [.. (await page.Locator(".view svg").GetAttributeAsync("viewBox"))!.Split(' ').Select(PaperText.Number)];
        var whole = await Seen();
        await page.Locator("#close").ClickAsync();
        var close = await Seen();
        Assert.True(close[2] < 0.9 * whole[2]);

        // Y is turned over in SVG.
        var part = plan.Job.Part.Shape.Blank[0].Bounds.Moved(plan.Layout!.Placement.ZeroOnBoard);
        Assert.True(close[0] <= part.MinX && close[0] + close[2] >= part.MaxX && close[1] <= -part.MaxY && close[1] + close[3] >= -part.MinY);
        await page.EmulateMediaAsync(new() { Media = Media.Print });
        Assert.False(await page.Locator(".view").IsVisibleAsync());
        Assert.True(await page.Locator(".sheet svg").IsVisibleAsync());
        await page.EmulateMediaAsync(new() { Media = Media.Screen });
        Assert.Equal(close, await Seen());
        Assert.Equal([], browser.Complaints);
    }

    [Theory]
    [InlineData(1280)]
    [InlineData(1400)]
    [InlineData(1920)]
    [InlineData(820)]
    [InlineData(400)]
    public async Task No_table_is_cut_off_at_the_side_of_a_screen(int width)
    {
        using Scratch scratch = new();
        await using var browser = await Browser.Start(width, 900);
        foreach (var name in new[] { "standing", "washed", "inches", "wide-60", "tall" })
        {
            var page = await browser.Open(scratch.Put(name + ".html", Cards.File(Cards.Plan(name), "card.html")));
            var cut = await page.EvaluateAsync<string[]>(
                "[...document.querySelectorAll('.scroll')].filter(s => s.scrollWidth > s.clientWidth).map(s => s.querySelector('caption').textContent + ' by ' + (s.scrollWidth - s.clientWidth))");
            Assert.Equal([], cut);

            // Nothing stands beyond the side either, and every cell has its words whole.
            var beyond = await page.EvaluateAsync<string[]>(
                "[...document.querySelectorAll('tbody td, tbody th')].filter(c => c.getBoundingClientRect().right > innerWidth || c.scrollWidth > c.clientWidth + 1).map(c => c.textContent)");
            Assert.Equal([], beyond);
        }
    }

    [Fact]
    public async Task A_table_that_is_too_wide_for_a_telephone_shows_each_figure_under_its_heading_and_is_a_table_again_on_a_wide_screen()
    {
        using Scratch scratch = new();
        await using var browser = await Browser.Start(400, 900);
        var page = await browser.Open(scratch.Put("card.html", Cards.File(Cards.Plan("washed"), "card.html")));
        const string shown = "[...document.querySelectorAll('#row-P4 td, #row-P4 th')].map(c => getComputedStyle(c, '::before').content)";
        Assert.Equal(
            ["\"Set\"", "\"Pod\"", "\"Type\"", "\"Turn\"", "\"Column\"", "\"Row\"", "\"X mm\"", "\"Y mm\"", "\"Ports\"", "\"Under\"", "\"Now\""],
            await page.EvaluateAsync<string[]>(shown));
        var found = await page.RunAxe();
        Assert.Equal([], found.Violations.Where(v => v.Impact is "serious" or "critical").Select(v => $"{v.Id}: {v.Nodes[0].Html}"));
        await page.SetViewportSizeAsync(1920, 1000);
        await page.WaitForFunctionAsync("!document.querySelector('.stacked')");
        Assert.All(await page.EvaluateAsync<string[]>(shown), c => Assert.Equal("none", c));
        Assert.Equal([], browser.Complaints);
    }

    [Fact]
    public async Task A_line_to_write_on_is_not_the_rule_below_it()
    {
        using Scratch scratch = new();
        await using var browser = await Browser.Start(820, 1180);
        var page = await browser.Open(scratch.Put("card.html", Cards.File(Cards.Plan("ell"), "card.html")));
        foreach (var media in new[] { Media.Screen, Media.Print })
        {
            await page.EmulateMediaAsync(new() { Media = media });
            var near = await page.EvaluateAsync<string[]>(
                "[...document.querySelectorAll('.steps-list li')].filter(l => l.getBoundingClientRect().bottom - l.querySelector('span').getBoundingClientRect().bottom < 5).map(l => l.textContent)");
            Assert.Equal([], near);
        }
    }

    [Theory]
    [InlineData("oval", ColorScheme.Light)]
    [InlineData("standing", ColorScheme.Dark)]
    [InlineData("door", ColorScheme.Light)]
    [InlineData("hostile", ColorScheme.Dark)]
    public async Task An_accessibility_check_finds_nothing_serious(string name, ColorScheme scheme)
    {
        using Scratch scratch = new();
        await using var browser = await Browser.Start(1024, 768, scheme);
        var page = await browser.Open(scratch.Put("card.html", Cards.File(Cards.Plan(name), "card.html")));
        var found = await page.RunAxe();
        Assert.Equal([], found.Violations.Where(v => v.Impact is "serious" or "critical").Select(v => $"{v.Id}: {v.Help}: {v.Nodes[0].Html}"));
        Assert.True(found.Passes.Length > 10);
    }

    [Theory]
    [InlineData(ColorScheme.Light)]
    [InlineData(ColorScheme.Dark)]
    public async Task Words_on_a_dark_ground_are_light_and_the_other_way_round(ColorScheme scheme)
    {
        using Scratch scratch = new();
        await using var browser = await Browser.Start(1024, 768, scheme);
        var files = PodLayout.Handover.Setup.CardFiles.Of(Cards.Plan("oval"), Cards.Options, new(true, ["on the lattice (P1)"], ["P1 is off."], [])
        {
            Faults = [new(0, Counts: true)],
        });
        var page = await browser.Open(scratch.Put("card.html", System.Text.Encoding.UTF8.GetString(files.Single(f => f.Name == "card.html").Content)));
        Task<string> Fill(string style) => page.Locator($".view .pl-{style}").First.EvaluateAsync<string>("e => getComputedStyle(e).fill");
        Assert.Equal(await Fill("knockout"), await Fill("fault-words"));
        Assert.Equal(await Fill("pod-id"), await Fill("fault-ground"));
        Assert.NotEqual(await Fill("fault-ground"), await Fill("fault-words"));
    }

    [Theory]
    [InlineData(1280, 900)]
    [InlineData(820, 1180)]
    [InlineData(1180, 820)]
    [InlineData(390, 800)]
    public async Task Nothing_runs_off_the_side_of_the_screen(int width, int height)
    {
        using Scratch scratch = new();
        await using var browser = await Browser.Start(width, height);
        foreach (var name in new[] { "hostile", "standing", "wide-60", "small" })
        {
            var page = await browser.Open(scratch.Put(name + ".html", Cards.File(Cards.Plan(name), "card.html")));
            Assert.True(await page.EvaluateAsync<int>("document.documentElement.scrollWidth") <= width, name);

            // What is pressed with gloves on is at least 44 CSS pixels high (Web Content Accessibility Guidelines 2.2, 2.5.5).
            var low = await page.EvaluateAsync<string[]>("[...document.querySelectorAll('button, summary, .tick label, .steps-list label')].filter(b => b.getBoundingClientRect().height < 44).map(b => b.outerHTML)");
            Assert.Equal([], low);
        }
    }
}

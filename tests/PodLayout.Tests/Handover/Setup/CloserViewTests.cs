using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using PodLayout.Geometry;
using PodLayout.Handover.Picture;
using PodLayout.Handover.Setup;
using PodLayout.Layouts;

namespace PodLayout.Tests.Handover.Setup;

/// <summary>Parts of the board that are shown larger, where numbers of pods would be too small in the picture of the whole.</summary>
public partial class CloserViewTests
{
    public static TheoryData<string> Plans() => [.. CrowdedCards.Names];

    [Theory]
    [MemberData(nameof(Plans))]
    public void On_paper_each_pods_number_is_read_on_the_first_page_or_on_the_last_ones(string name)
    {
        // The printed type's capitals are 0.729 of its size (its own table of heights, 1493 of 2048). Type of six points, which is
        // the least that is printed on labels, has capitals of about 1.5 mm: from memory.
        const double capital = 1493.0 / 2048, leastMm = 1.5;
        var plan = CrowdedCards.Plan(name);
        foreach (var paper in new[] { PaperSize.A4, PaperSize.Letter })
        {
            var pages = SetupPicture.OnPaper(plan, Laying.Of(plan, plan.Layout!), ("x", ["y"]), 3, paper);
            Dictionary<string, double> largest = [];
            foreach (var (words, mm) in pages.SelectMany(p => Numbers(p).Select(t => (t.Words, t.SizeMm / p.Scale))))
            {
                largest[words] = Math.Max(mm * capital, largest.GetValueOrDefault(words));
            }

            Assert.Equal(plan.Layout!.Pods.Select((_, i) => $"P{i + 1}").Order(StringComparer.Ordinal), largest.Keys.Order(StringComparer.Ordinal));
            Assert.Equal([], largest.Where(p => p.Value < leastMm).Select(p => p.Key));
            for (var i = 0; i < pages.Length; i++)
            {
                var page = i == 0 ? 1 : 4 + i;
                Assert.Contains(pages[i].Layers.SelectMany(l => l.Primitives).OfType<Primitive.Text>(), t => t.Words == $"page {page} of {3 + pages.Length}");
                Assert.Equal(pages[0].Extent.Width / pages[0].Scale, pages[i].Extent.Width / pages[i].Scale, 1e-6);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Plans))]
    public void A_part_shows_its_pods_where_they_stand_and_counts_its_own_grooves(string name)
    {
        var plan = CrowdedCards.Plan(name);
        foreach (var (title, sheet) in Views(plan))
        {
            var window = Window(sheet);

            // Grooves every 30 mm from 15 mm on, counted from 1.
            var said = Said().Match(title).Groups.Values.Skip(1).Select(g => int.Parse(g.Value, CultureInfo.InvariantCulture)).ToList();
            Assert.Equal([First(window.MinX), Last(window.MaxX), First(window.MinY), Last(window.MaxY)], said);
            foreach (var number in sheet.Layers.Single(l => l.Name == "groove-numbers").Primitives.OfType<Primitive.Text>().Where(t => t.Style is "number" or "number-fifth"))
            {
                var at = 15 + 30 * (int.Parse(number.Words, CultureInfo.InvariantCulture) - 1);
                var isBeside = number.At.X < window.MinX || number.At.X > window.MaxX;
                Assert.Equal(at, isBeside ? number.At.Y : number.At.X, 1e-6);
                Assert.True(isBeside != number.At.Y < window.MinY || number.At.Y > window.MaxY, number.Words);
            }

            // Every pod that is in it, where it stands; numbers of those that are in it wholly.
            var pods = plan.Layout!.Pods.Select((p, i) => (Id: $"P{i + 1}", Box: p.BodyBox)).ToList();
            var drawn = sheet.Layers.Single(l => l.Name == "pods").Primitives.Where(p => p.Style == "pod").ToDictionary(p => p.Of!, Bounds);
            Assert.Equal([], pods.Where(p => p.Box.Grow(-0.01).Touches(window)).Select(p => p.Id).Except(drawn.Keys));
            Assert.All(drawn, d => Assert.Equal(pods.Single(p => p.Id == d.Key).Box, d.Value, (a, b) => Near(a.MinX, b.MinX) && Near(a.MaxY, b.MaxY) && Near(a.MaxX, b.MaxX) && Near(a.MinY, b.MinY)));
            Assert.Equal(pods.Where(p => window.Contains(p.Box)).Select(p => p.Id).Order(StringComparer.Ordinal), Numbers(sheet).Select(t => t.Words).Order(StringComparer.Ordinal));
        }
    }

    [Theory]
    [MemberData(nameof(Plans))]
    public void In_a_part_no_number_lies_on_another_word_or_on_another_pod_and_nothing_is_seen_beyond_its_edge(string name)
    {
        var plan = CrowdedCards.Plan(name);
        foreach (var (_, sheet) in Views(plan))
        {
            var window = Window(sheet);
            var words = sheet.Layers.Single(l => l.Name == "labels").Primitives.OfType<Primitive.Text>().ToList();
            Assert.All(words, w => Assert.True(window.Contains(DrawnSheets.Ink(w)), w.Words));
            foreach (var word in words)
            {
                Assert.Equal([], words.Where(w => w != word && DrawnSheets.Ink(w).Touches(DrawnSheets.Ink(word))).Select(w => $"{w.Words} on {word.Words}"));
            }

            foreach (var word in words.Where(w => w.Style == "pod-id"))
            {
                Assert.Equal([], plan.Layout!.Pods.Where((p, i) => $"P{i + 1}" != word.Words && p.BodyBox.Touches(DrawnSheets.Ink(word))).Select(p => $"{word.Words} on {p.Column}-{p.Row}"));
            }

            // What covers the page around it lies over all but the numbers of the grooves and the page's own words.
            var cover = (Primitive.Area)sheet.Layers.Single(l => l.Name == "edge").Primitives[0];
            Assert.True(Box2.Around(cover.Rings[0].Points).Contains(sheet.Extent));
            Assert.Equal(window, Box2.Around(cover.Rings[1].Points));
            Assert.Equal(["groove-numbers", "panel"], sheet.Layers.SkipWhile(l => l.Name != "edge").Skip(1).Select(l => l.Name));
        }
    }

    [Fact]
    public void The_whole_says_where_each_part_is_and_counts_only_ports_that_are_named_nowhere()
    {
        var plan = CrowdedCards.Plan("square block of small pods with no gap");
        var (picture, signs, closer) = SetupPicture.OnScreen(plan, Laying.Of(plan, plan.Layout!));
        var labels = picture.Layers.Single(l => l.Name == "labels").Primitives;
        Assert.Equal(["View 1"], closer.Select(c => c.Name));
        Assert.Contains(labels.OfType<Primitive.Text>(), t => t.Words == "View 1: shown larger below");

        // Heavy corners: two strokes from each, as far as no words lie there.
        var window = Window(closer[0].Picture);
        var ends = labels.OfType<Primitive.Line>().Where(l => l.Style == "closer-corner").SelectMany(l => l.Points).ToList();
        Assert.All(ends, p => Assert.True(Near(p.X, window.MinX) || Near(p.X, window.MaxX) || Near(p.Y, window.MinY) || Near(p.Y, window.MaxY)));
        Assert.InRange(ends.Count, 12, 40);

        // The legend counts ports that no picture names.
        var named = new[] { picture, closer[0].Picture }.SelectMany(s => s.Layers.Single(l => l.Name == "labels").Primitives.OfType<Primitive.Text>())
            .Where(t => t.Style == "port-name").Select(t => t.Words).Distinct().Count();
        var legend = string.Join(' ', signs.Layers.SelectMany(l => l.Primitives).OfType<Primitive.Text>().Select(t => t.Words));
        Assert.Contains(named == 60 ? "port to open" : $"no room for its name: {(60 - named == 1 ? "one port" : $"{60 - named} ports")}", legend, StringComparison.Ordinal);
        Assert.Equal(named < 60, legend.Contains("no room for its name", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("oval")]
    [InlineData("tall")]
    [InlineData("wide-60")]
    [InlineData("dense-60")]
    public void Where_every_number_is_read_no_part_is_shown_again(string name)
    {
        var plan = Cards.Plan(name);
        Assert.Equal([], SetupPicture.OnScreen(plan, Laying.Of(plan, plan.Layout!)).Closer);
        Assert.Single(SetupPicture.OnPaper(plan, Laying.Of(plan, plan.Layout!), ("x", ["y"]), 3, PaperSize.A4));
    }

    // However pods stand, each number is at least nine pixels high somewhere on a tablet, and each part is needed.
    [Theory]
    [InlineData(60, 1500, 1400)]
    [InlineData(60, 3400, 700)]
    [InlineData(50, 1800, 900)]
    [InlineData(67, 2600, 1100)]
    public void However_near_to_each_other_pods_stand_each_number_is_read_on_a_tablet(int count, double width, double length)
    {
        for (var seed = 1; seed <= 4; seed++)
        {
            var plan = CrowdedCards.Anywhere(100 * seed + count, count, width, length);
            var (picture, _, closer) = SetupPicture.OnScreen(plan, Laying.Of(plan, plan.Layout!));
            HashSet<string> read = [.. Read(picture)];
            foreach (var view in closer)
            {
                Assert.NotEmpty(Read(view.Picture).Except(read));
                Assert.True(view.Picture.Extent.Width < picture.Extent.Width / 1.2);
                read.UnionWith(Read(view.Picture));
            }

            Assert.Equal([], plan.Layout!.Pods.Select((_, i) => $"P{i + 1}").Except(read));
        }
    }

    [Fact]
    public void In_the_page_each_port_of_the_board_is_where_it_is_though_one_disc_is_written_for_all()
    {
        var plan = CrowdedCards.Plan("square block of small pods with no gap");
        var line = PortLine().Match(Cards.Text(plan, "card.html"));
        HashSet<Point2> places = [];
        var at = default(Point2);
        foreach (Match step in Step().Matches(line.Groups[1].Value))
        {
            var numbers = step.Groups[2].Value.Split(' ').Select(PaperText.Number).ToList();
            at = step.Groups[1].Value == "H" ? new(numbers[0], at.Y) : new(numbers[0], -numbers[1]);
            Assert.True(places.Add(at));
        }

        Assert.Equal(plan.Job.Shop.Board.Ports.Select(p => p.Centre).Order(Comparer<Point2>.Create((p, q) => (p.Y, p.X).CompareTo((q.Y, q.X)))), places.Order(Comparer<Point2>.Create((p, q) => (p.Y, p.X).CompareTo((q.Y, q.X)))));
        Assert.Equal(1416, places.Count);
    }

    private static IEnumerable<string> Read(Sheet sheet) => Numbers(sheet)
        .Where(t => t.SizeMm * DrawnSheets.TabletPixels(sheet) >= DrawnSheets.LeastPixels).Select(t => t.Words);

    private static IEnumerable<(string Title, Sheet Sheet)> Views(PlanResult plan)
    {
        var laying = Laying.Of(plan, plan.Layout!);
        return SetupPicture.OnScreen(plan, laying).Closer.Select(c => (c.Title, c.Picture))
            .Concat(SetupPicture.OnPaper(plan, laying, ("x", ["y"]), 3, PaperSize.A4).Skip(1)
                .Select(s => (s.Layers.Single(l => l.Name == "panel").Primitives.OfType<Primitive.Text>().Single(t => t.Style == "heading").Words, s)));
    }

    private static IEnumerable<Primitive.Text> Numbers(Sheet sheet) =>
        sheet.Layers.Single(l => l.Name == "labels").Primitives.OfType<Primitive.Text>().Where(t => t.Style == "pod-id");

    private static Box2 Window(Sheet sheet) =>
        Box2.Around(((Primitive.Area)sheet.Layers.Single(l => l.Name == "edge").Primitives.Single(p => p.Style == "rule")).Rings[0].Points);

    private static int First(double from) => (int)Math.Ceiling((from - 15) / 30) + 1;

    private static int Last(double to) => (int)Math.Floor((to - 15) / 30) + 1;

    private static bool Near(double a, double b) => Math.Abs(a - b) < 1e-6;

    private static Box2 Bounds(Primitive pod) => pod is Primitive.Disc disc
        ? new Box2(disc.Centre.X, disc.Centre.Y, disc.Centre.X, disc.Centre.Y).Grow(disc.RadiusMm) : Box2.Around(((Primitive.Area)pod).Rings[0].Points);

    [GeneratedRegex("marker-mid=\"url\\(#pic-ports-0\\)\"[^>]* d=\"([^\"]*)\"")]
    private static partial Regex PortLine();

    [GeneratedRegex("([MHL])([^MHL]+)")]
    private static partial Regex Step();

    [GeneratedRegex("^View [1-9]: columns ([0-9]+) to ([0-9]+), rows ([0-9]+) to ([0-9]+)$")]
    private static partial Regex Said();
}

using PodLayout.Geometry;
using PodLayout.Handover.Picture;
using PodLayout.Handover.Setup;
using PodLayout.Tests.Independent;

namespace PodLayout.Tests.Handover.Setup;

public class SetupPictureTests
{
    public static TheoryData<string> Plans() => [.. Cards.Names];

    [Theory]
    [MemberData(nameof(Plans))]
    public void No_word_in_the_drawing_lies_on_another_or_off_the_sheet(string name)
    {
        var plan = Cards.Plan(name);
        var laying = Laying.Of(plan, plan.Layout!);
        foreach (var sheet in new[]
        {
            SetupPicture.OnScreen(plan, laying).Picture,
            SetupPicture.OnPaper(plan, laying, ("x", ["y"]), "page 1 of 2", PaperSize.A4),
            SetupPicture.OnPaper(plan, laying, ("x", ["y"]), "page 1 of 2", PaperSize.Letter),
        })
        {
            // Port names are the last to be placed, and left out where there is no room; they count all the same.
            var words = sheet.Layers.Where(l => l.Name is "labels" or "groove-numbers").SelectMany(l => l.Primitives).OfType<Primitive.Text>()
                .Where(t => t.Words is not ("X" or "Y")).Select(t => (t.Words, Box: Around(t))).ToList();
            for (var i = 0; i < words.Count; i++)
            {
                Assert.True(sheet.Extent.Contains(words[i].Box), words[i].Words);
                Assert.Equal([], words.Skip(i + 1).Where(w => w.Box.Touches(words[i].Box)).Select(w => $"{w.Words} on {words[i].Words}"));
            }

            var ids = words.Select(w => w.Words).ToHashSet();
            Assert.All(Enumerable.Range(1, plan.Layout!.Pods.Length), i => Assert.Contains($"P{i}", ids));
            Assert.All(laying.Marks, m => Assert.Contains(m.Name, ids));
        }
    }

    [Fact]
    public void On_paper_every_pod_of_the_largest_board_has_a_number_that_can_be_read()
    {
        foreach (var name in new[] { "door", "wide-60", "dense-60", "tall", "oval" })
        {
            var plan = Cards.Plan(name);
            var sheet = SetupPicture.OnPaper(plan, Laying.Of(plan, plan.Layout!), ("x", ["y"]), "", PaperSize.A4);
            var ids = sheet.Layers.Single(l => l.Name == "labels").Primitives.OfType<Primitive.Text>().Where(t => t.Style == "pod-id").ToList();
            Assert.Equal(plan.Layout!.Pods.Length, ids.Count);

            // Millimetres of type on the paper: at 1.9 a capital is about 1.4 mm high.
            Assert.All(ids, t => Assert.True(t.SizeMm / sheet.Scale >= 1.9, $"{name} {t.Words}: {t.SizeMm / sheet.Scale}"));
        }
    }

    [Fact]
    public void Pods_and_open_ports_in_the_picture_say_what_they_are()
    {
        var plan = Cards.Plan("oval");
        var sheet = SetupPicture.OnScreen(plan, Laying.Of(plan, plan.Layout!)).Picture;
        var bodies = sheet.Layers.Single(l => l.Name == "pods").Primitives;
        Assert.Equal(plan.Layout!.Pods.Select((_, i) => $"P{i + 1}"), bodies.Select(b => b.Of!));
        var rings = sheet.Layers.Single(l => l.Name == "open-ports").Primitives.Where(p => p.Style == "port-open-ring").Select(p => p.Of!).Order();
        Assert.Equal(Enumerable.Range(1, 7).Select(i => $"O{i}"), rings);
    }

    [Fact]
    public void A_rectangle_is_laid_by_its_four_corners()
    {
        // 3400 x 1300 mm at (100, 100), grooves every 30 mm from 15: (100 - 15) / 30 is 2 and 25 mm over.
        var plan = HandMade.Door();
        var marks = Laying.Of(plan, plan.Layout!).Marks;
        Assert.Equal([new(100, 100), new(3500, 100), new(100, 1400), new(3500, 1400)], marks.Select(m => m.At).OrderBy(p => p.Y).ThenBy(p => p.X));
        Assert.All(marks, m => Assert.True(m.XCounts && m.YCounts));
        Assert.Equal("3 + 25", new CardUnit(false).Grooves(100, 15, plan.Job.Shop.Board));
        Assert.Equal("1 - 5", new CardUnit(false).Grooves(10, 15, plan.Job.Shop.Board));
        Assert.Equal("1 + 0", new CardUnit(false).Grooves(15 - 1e-9, 15, plan.Job.Shop.Board));
    }

    [Theory]
    [InlineData(25, 25, 25, 25)]
    [InlineData(40, 0, 0, 0)]
    public void Where_a_blank_reaches_beyond_the_part_the_blank_is_laid(double left, double right, double near, double far)
    {
        // A part of 400 x 200 mm with its zero at (300, 200) of the board, in a blank so much larger on each side.
        var door = HandMade.Door();
        var shape = new PodLayout.Parts.PartShape(HandMade.Rectangle(0, 0, 400, 200), [], [])
        {
            Blank = [HandMade.Rectangle(-left, -near, 400 + right, 200 + far)],
        };
        var board = door.Job.Shop.Board with
        {
            Obstacles = [new("pin", PodLayout.Shops.ObstacleKind.Pin, new PodLayout.Shops.ObstacleShape.Disc(new(300 - left - 30, 300), 20), 0)],
        };
        var plan = door with
        {
            Job = door.Job with { Part = door.Job.Part with { Shape = shape }, Shop = door.Job.Shop with { Board = board } },
            Layout = door.Layout! with { Placement = new(new(300, 200), 0) },
        };
        var laying = Laying.Of(plan, plan.Layout!);
        Assert.Equal(
            [new(300 - left, 200 - near), new(700 + right, 200 - near), new(300 - left, 400 + far), new(700 + right, 400 + far)],
            laying.Marks.Select(m => m.At).OrderBy(p => p.Y).ThenBy(p => p.X));
        Assert.Equal(
            ["far left corner", "far right corner", "near left corner", "near right corner"], laying.Marks.Select(m => m.What).Order(StringComparer.Ordinal));
        Assert.Equal("blank", laying.Thing);

        // The pin's edge lies 30 - 10 mm from the blank's.
        Assert.Equal(20, laying.Gaps.Single().GapMm, 1e-9);
    }

    [Fact]
    public void A_curve_is_laid_by_the_four_lines_that_touch_it()
    {
        var plan = HandMade.Oval();
        var marks = Laying.Of(plan, plan.Layout!).Marks;
        var bounds = plan.Job.Part.Shape.Outline.Bounds.Moved(plan.Layout!.Placement.ZeroOnBoard);
        Assert.Equal([bounds.MinX, bounds.MinY, bounds.MaxX, bounds.MaxY], [marks[0].At.X, marks[1].At.Y, marks[2].At.X, marks[3].At.Y]);
        Assert.Equal([(true, false), (false, true), (true, false), (false, true)], marks.Select(m => (m.XCounts, m.YCounts)));
    }

    [Fact]
    public void Gaps_to_pins_and_stops_are_the_least_distances()
    {
        // The ell's left edge is X 30, its lower edge Y 30: a pin of 20 mm at (15, 100), a stop up to Y 27, one that touches.
        var ell = HandMade.Ell();
        var board = ell.Job.Shop.Board with
        {
            Obstacles =
            [
                new("pin", PodLayout.Shops.ObstacleKind.Pin, new PodLayout.Shops.ObstacleShape.Disc(new(15, 100), 20), 0),
                new("low stop", PodLayout.Shops.ObstacleKind.Stop, new PodLayout.Shops.ObstacleShape.Rectangle(new(100, 10, 140, 27)), 0),
                new("right stop", PodLayout.Shops.ObstacleKind.Stop, new PodLayout.Shops.ObstacleShape.Rectangle(new(270, 60, 280, 90)), 0),
                new("under", PodLayout.Shops.ObstacleKind.Pin, new PodLayout.Shops.ObstacleShape.Disc(new(60, 60), 10), 0),
            ],
        };
        var plan = ell with { Job = ell.Job with { Shop = ell.Job.Shop with { Board = board } } };
        var gaps = Laying.Of(plan, plan.Layout!).Gaps.ToDictionary(g => g.Stop.Name);
        Assert.Equal(5, gaps["pin"].GapMm, 1e-9);
        Assert.Equal(new Point2(30, 100), gaps["pin"].At);
        Assert.Equal(3, gaps["low stop"].GapMm, 1e-9);
        Assert.Equal(0, gaps["right stop"].GapMm, 1e-9);
        Assert.Equal((25, true), (gaps["under"].GapMm, gaps["under"].IsUnder));
    }

    // In running text a character takes about half an em; digits with a hyphen between them are 1.7 em for three.
    private static Box2 Around(Primitive.Text text)
    {
        double width = text.Words.Length * (text.Words.Length > 8 ? 0.5 : 0.57) * text.SizeMm, height = 0.75 * text.SizeMm;
        (width, height) = text.AngleDeg == 90 ? (height, width) : (width, height);
        var left = text.Anchor switch { TextAnchor.Start => 0, TextAnchor.Middle => width / 2, _ => width };
        return new(text.At.X - left, text.At.Y - height / 2, text.At.X - left + width, text.At.Y + height / 2);
    }
}

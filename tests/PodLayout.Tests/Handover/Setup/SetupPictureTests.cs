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
        var screen = SetupPicture.OnScreen(plan, laying);
        foreach (var sheets in new[]
        {
            [screen.Picture, .. screen.Closer.Select(c => c.Picture)],
            SetupPicture.OnPaper(plan, laying, ("x", ["y"]), 1, PaperSize.A4),
            SetupPicture.OnPaper(plan, laying, ("x", ["y"]), 1, PaperSize.Letter),
        })
        {
            HashSet<string> ids = [];
            foreach (var sheet in sheets)
            {
                // Port names are the last to be placed, and left out where there is no room; they count all the same.
                var words = sheet.Layers.Where(l => l.Name is "labels" or "groove-numbers").SelectMany(l => l.Primitives).OfType<Primitive.Text>()
                    .Where(t => t.Words is not ("X" or "Y")).Select(t => (t.Words, Box: Around(t))).ToList();
                for (var i = 0; i < words.Count; i++)
                {
                    Assert.True(sheet.Extent.Contains(words[i].Box), words[i].Words);
                    Assert.Equal([], words.Skip(i + 1).Where(w => w.Box.Touches(words[i].Box)).Select(w => $"{w.Words} on {words[i].Words}"));
                }

                ids.UnionWith(words.Select(w => w.Words));
            }

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
            var sheet = SetupPicture.OnPaper(plan, Laying.Of(plan, plan.Layout!), ("x", ["y"]), null, PaperSize.A4)[0];
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
        Assert.Equal("10 + 0", new CardUnit(false).Grooves(284.967, 15, plan.Job.Shop.Board));
        Assert.Equal("1 + 0", new CardUnit(false).Grooves(14.98, 15, plan.Job.Shop.Board));
        Assert.Equal("1 - 5", new CardUnit(false).Grooves(10, 15, plan.Job.Shop.Board));
        Assert.Equal("1 + 0", new CardUnit(false).Grooves(15 - 1e-9, 15, plan.Job.Shop.Board));
    }

    [Fact]
    public void A_mark_that_is_a_sharp_corner_says_both_coordinates_however_many_corners_there_are()
    {
        // Five sharp corners turned by 17.5 degrees about (400, 250): the rightmost one, (620, 0), is not among the four that lie farthest apart.
        var door = HandMade.Door();
        PodLayout.Geometry.Ring outline = new([new(0, 0), new(620, 0), new(620, 180), new(380, 420), new(0, 420)]);
        var plan = door with
        {
            Job = door.Job with { Part = door.Job.Part with { Shape = new(outline, [], []) } },
            Layout = door.Layout! with { Placement = new(new(400, 250), 17.5) },
        };
        var (cos, sin) = (Math.Cos(17.5 * Math.PI / 180), Math.Sin(17.5 * Math.PI / 180));
        var marks = Laying.Of(plan, plan.Layout!).Marks;
        Assert.Contains(marks, m => Math.Abs(m.At.X - 400 - 620 * cos) < 0.01 && Math.Abs(m.At.Y - 250 - 620 * sin) < 0.01);
        Assert.All(marks, m => Assert.True(m.XCounts && m.YCounts && m.What.EndsWith("corner", StringComparison.Ordinal), $"{m.Name} {m.What}"));
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

    [Theory]
    [MemberData(nameof(Plans))]
    public void On_paper_numbers_of_grooves_marks_and_what_must_be_read_are_as_large_as_they_must_be(string name)
    {
        // Capitals of 2.2, 2, 2.5 and 2.9 mm; the printed type's capitals are 0.729 of its size (its own table of heights, 1493 of 2048).
        const double capital = 1493.0 / 2048;
        var plan = Cards.Plan(name);
        foreach (var paper in new[] { PaperSize.A4, PaperSize.Letter })
        {
            var sheet = SetupPicture.OnPaper(
                plan, Laying.Of(plan, plan.Layout!), ("x", ["Gauge", "Face"]), 1, paper, false, default, ["Board"], "", "DO NOT START: this layout was changed.")[0];
            var words = sheet.Layers.SelectMany(l => l.Primitives).OfType<Primitive.Text>().ToList();
            double Least(Func<Primitive.Text, bool> which) => words.Where(which).Min(t => t.SizeMm / sheet.Scale) * capital;
            Assert.True(Least(t => t.Style is "number" or "number-fifth") >= 2.2);
            Assert.True(Least(t => t.Style == "stretch-number") >= 2);
            Assert.True(Least(t => t.Words is "Gauge" or "Face") >= 2.5);
            Assert.True(Least(t => t.Words.StartsWith("DO NOT", StringComparison.Ordinal)) >= 2.9);

            // The panel stays on its page, and nothing in it lies on anything else.
            var panel = sheet.Layers.Single(l => l.Name == "panel").Primitives.OfType<Primitive.Text>().Select(t => (t.Words, Box: Around(t))).ToList();
            for (var i = 0; i < panel.Count; i++)
            {
                Assert.True(sheet.Extent.Contains(panel[i].Box), panel[i].Words);
                Assert.Equal([], panel.Skip(i + 1).Where(w => w.Box.Touches(panel[i].Box)).Select(w => $"{w.Words} on {panel[i].Words}"));
            }
        }
    }

    [Fact]
    public void No_lines_of_grain_lie_in_the_part_and_the_programs_zero_is_there_with_a_program_alone()
    {
        var plan = Cards.Plan("standing");
        var without = plan with { Job = plan.Job with { ProgramZero = null } };
        var laying = Laying.Of(plan, plan.Layout!);
        var sheet = SetupPicture.OnPaper(plan, laying, ("x", ["y"]), null, PaperSize.A4)[0];
        Assert.DoesNotContain(sheet.Layers.SelectMany(l => l.Primitives), p => p is Primitive.Hatch { Style: "grain" });

        // The oval's drawing has its zero in its middle, (600, 300) of the board; the program's is 300 mm left of it and 200 mm below, turned with the part.
        var placement = plan.Layout!.Placement;
        var (sin, cos) = Math.SinCos(placement.AngleDeg * Math.PI / 180);
        var zero = (Primitive.Area)sheet.Layers.Single(l => l.Name == "support").Primitives.Single(p => p.Style == "zero");
        Assert.Equal(placement.ZeroOnBoard.X - 300 * cos + 200 * sin, zero.Rings[0].Points[0].X, 1e-6);
        Assert.Equal(placement.ZeroOnBoard.Y - 300 * sin - 200 * cos, zero.Rings[0].Points[0].Y, 1e-6);
        Assert.Contains(sheet.Layers.SelectMany(l => l.Primitives).OfType<Primitive.Text>(), t => t.Words == "program zero");
        var plain = SetupPicture.OnPaper(without, laying, ("x", ["y"]), null, PaperSize.A4)[0];
        Assert.DoesNotContain(plain.Layers.SelectMany(l => l.Primitives), p => p.Style == "zero" || p is Primitive.Text { Words: "program zero" });
    }

    [Fact]
    public void Pods_that_stay_and_ports_to_plug_have_signs_of_their_own()
    {
        var plan = Cards.Plan("standing");
        var changes = StandingChanges.Of(plan.Job, plan.Layout!);
        var sheet = SetupPicture.OnPaper(plan, Laying.Of(plan, plan.Layout!), ("x", ["y"]), null, PaperSize.A4)[0];
        var drawn = sheet.Layers.Where(l => l.Name != "panel").SelectMany(l => l.Primitives).ToList();
        Assert.NotEmpty(changes.Staying);
        Assert.Equal(changes.Staying.Select(i => $"P{i + 1}").Order(), drawn.Where(p => p.Style == "pod-stays").Select(p => p.Of!).Order());
        var bars = drawn.OfType<Primitive.Line>().Where(p => p.Style == "port-to-plug").Select(p => Box2.Around(p.Points).Centre);
        Assert.Equal(plan.Job.Shop.Board.Ports.Where(p => changes.ToPlug.Contains(p.Name)).Select(p => p.Centre), bars);
        var legend = string.Join(' ', sheet.Layers.Single(l => l.Name == "panel").Primitives.OfType<Primitive.Text>().Select(t => t.Words));
        Assert.Contains("stands already", legend, StringComparison.Ordinal);
        Assert.Contains("plug it", legend, StringComparison.Ordinal);
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

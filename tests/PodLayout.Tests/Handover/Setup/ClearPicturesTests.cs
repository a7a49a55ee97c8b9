using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Handover;
using PodLayout.Handover.Picture;
using PodLayout.Handover.Setup;
using PodLayout.Holding;
using PodLayout.Layouts;
using PodLayout.Tests.Independent;

namespace PodLayout.Tests.Handover.Setup;

/// <summary>Pictures in which one thing does not hide another, and a legend of what is in them.</summary>
public class ClearPicturesTests
{
    public static TheoryData<string> Plans() => [.. Cards.Names];

    [Theory]
    [MemberData(nameof(Plans))]
    public void No_name_of_a_port_or_mark_lies_on_an_edge_of_the_part_or_on_a_line_to_a_mark(string name)
    {
        foreach (var sheet in Pictures(Cards.Plan(name)))
        {
            var lines = Lines(sheet, "part-edge", "leader").ToList();
            var words = sheet.Layers.Single(l => l.Name == "labels").Primitives.OfType<Primitive.Text>().Where(t => t.Style is "port-name" or "stretch-number");
            Assert.All(words, t => Assert.True(
                !lines.Exists(l => Reaches(l, Inside(t), sheet.Scale)), $"{t.Words} at 1:{sheet.Scale}"));
        }
    }

    [Theory]
    [MemberData(nameof(Plans))]
    public void The_flag_of_a_mark_lies_on_no_pod_no_open_port_no_number_and_no_edge_and_its_line_runs_over_no_port(string name) =>
        FlagsHaveRoom(Cards.Plan(name));

    [Theory]
    [InlineData(300, 600, 12, true)]
    [InlineData(600, 600, 60, true)]
    [InlineData(900, 600, 40, true)]
    [InlineData(1500, 1500, 60, true)]
    [InlineData(2400, 1200, 60, false)]
    [InlineData(3600, 600, 60, true)]
    [InlineData(600, 3600, 60, true)]
    [InlineData(3600, 1500, 60, false)]
    public void Where_the_part_covers_the_board_and_pods_stand_in_its_corners_flags_find_room_too(double width, double length, int pods, bool isSmall) =>
        FlagsHaveRoom(Cards.Grid(width, length, pods, isSmall ? HandMade.Small : HandMade.Square));

    private static void FlagsHaveRoom(PlanResult plan)
    {
        var marks = Laying.Of(plan, plan.Layout!).Marks;
        foreach (var sheet in Pictures(plan))
        {
            var drawn = sheet.Layers.Where(l => l.Name != "panel").SelectMany(l => l.Primitives).ToList();
            var flags = drawn.OfType<Primitive.Disc>().Where(d => d.Style == "stretch-flag").ToList();
            Assert.Equal(marks.Length, flags.Count);
            var pods = sheet.Layers.Single(l => l.Name == "pods").Primitives.Select(p => p is Primitive.Disc d ? Around(d) : Box2.Around([.. ((Primitive.Area)p).Rings[0].Points])).ToList();
            var ports = drawn.OfType<Primitive.Disc>().Where(d => d.Style == "port-open-ring").ToList();
            var words = drawn.OfType<Primitive.Text>().Where(t => t.Style != "stretch-number").ToList();
            var lines = Lines(sheet, "part-edge", "board", "datum").ToList();
            foreach (var flag in flags)
            {
                // The disc fills its box but for the corners.
                var ink = Around(flag).Grow(-0.3 * flag.RadiusMm);
                Assert.DoesNotContain(pods, p => p.Touches(ink));
                Assert.DoesNotContain(ports, p => (p.Centre - flag.Centre).Length < p.RadiusMm + flag.RadiusMm);
                Assert.Equal([], words.Where(t => Inside(t).Touches(ink)).Select(t => t.Words));
                Assert.DoesNotContain(flags, f => f != flag && (f.Centre - flag.Centre).Length < f.RadiusMm + flag.RadiusMm);
                Assert.DoesNotContain(lines, l => Reaches(l, ink, sheet.Scale));
            }

            foreach (var (a, b) in Lines(sheet, "leader").Where(l => marks.Any(m => (m.At - l.A).Length < 1e-9)))
            {
                Assert.DoesNotContain(ports, p => Reaches((a, b), Around(p).Grow(-0.5 * p.RadiusMm), sheet.Scale));
            }
        }
    }

    [Theory]
    [MemberData(nameof(Plans))]
    public void Numbers_of_pods_lie_on_no_edge_of_the_part_and_on_no_line_to_a_mark(string name)
    {
        foreach (var sheet in Pictures(Cards.Plan(name)))
        {
            var lines = Lines(sheet, "part-edge", "leader").ToList();
            var words = sheet.Layers.Single(l => l.Name == "labels").Primitives.OfType<Primitive.Text>().Where(t => t.Style == "pod-id").ToList();
            Assert.Equal([], words.Where(t => lines.Exists(l => Reaches(l, Inside(t), sheet.Scale))).Select(t => t.Words));
        }
    }

    [Theory]
    [MemberData(nameof(Plans))]
    public void The_legend_explains_only_signs_that_are_in_the_picture(string name)
    {
        var plan = Held(Cards.Plan(name));
        var laying = Laying.Of(plan, plan.Layout!);
        var (picture, signs, _) = SetupPicture.OnScreen(plan, laying);
        Assert.Equal([], Styles(signs, "panel").Except(Styles(picture, null)));
        foreach (var sheet in Pictures(plan).Skip(1).Append(LayoutPicture.Draw(plan)))
        {
            Assert.Equal([], Styles(sheet, "panel").Except(Styles(sheet, null)));
        }
    }

    [Fact]
    public void Where_every_port_is_open_and_all_pods_are_alike_the_legend_speaks_of_neither_plugged_ports_nor_types()
    {
        var plan = Cards.Plan("small");
        var words = string.Join(' ', SetupPicture.OnScreen(plan, Laying.Of(plan, plan.Layout!)).Signs.Layers.SelectMany(l => l.Primitives).OfType<Primitive.Text>().Select(t => t.Words));
        Assert.Contains("port to open", words, StringComparison.Ordinal);
        Assert.DoesNotContain("plugged", words, StringComparison.Ordinal);
        Assert.DoesNotContain("keep clear", words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("oval")]
    [InlineData("dense-60")]
    [InlineData("small")]
    [InlineData("ell")]
    public void The_bar_of_a_pods_load_covers_neither_a_word_nor_a_port(string name)
    {
        var sheet = LayoutPicture.Draw(Held(Cards.Plan(name)));
        var bars = sheet.Layers.SelectMany(l => l.Primitives).OfType<Primitive.Area>().Where(a => a.Style == "load-frame").Select(a => Box2.Around([.. a.Rings.SelectMany(r => r.Points)])).ToList();
        Assert.Equal(Cards.Plan(name).Layout!.Pods.Length, bars.Count - 1);
        var words = sheet.Layers.Single(l => l.Name == "labels").Primitives.OfType<Primitive.Text>().ToList();
        var ports = sheet.Layers.SelectMany(l => l.Primitives).OfType<Primitive.Disc>().Where(d => d.Style == "port-open-ring").ToList();
        foreach (var bar in bars)
        {
            Assert.Equal([], words.Where(w => Inside(w).Touches(bar)).Select(w => w.Words));
            Assert.DoesNotContain(ports, p => new Box2(p.Centre.X, p.Centre.Y, p.Centre.X, p.Centre.Y).Grow(0.9 * p.RadiusMm).Touches(bar));
        }
    }

    [Theory]
    [InlineData(300, 0)]
    [InlineData(-300, 0)]
    [InlineData(0, 200)]
    [InlineData(0, -200)]
    public void The_arrow_of_the_weakest_place_lies_over_all_else_and_its_push_runs_over_no_word(double x, double y)
    {
        // On the oval's edge, pushing inwards over the pods, and outwards.
        foreach (var inwards in new[] { -1, 1 })
        {
            var sheet = LayoutPicture.Draw(Held(HandMade.Oval(), new(x, y), new(inwards * Math.Sign(x), inwards * Math.Sign(y))));
            var labels = sheet.Layers.Single(l => l.Name == "labels").Primitives;
            var arrow = labels.OfType<Primitive.Line>().Single(l => l.Style == "weakest-arrow");
            Assert.Equal(inwards * Math.Sign(x + y), Math.Sign((arrow.Points[1] - arrow.Points[0]).Dot(new(1, 1))));
            Assert.Equal([], labels.OfType<Primitive.Text>().Where(t => Reaches((arrow.Points[0], arrow.Points[1]), Inside(t), sheet.Scale)).Select(t => t.Words));
            Assert.DoesNotContain(labels.SkipWhile(p => p != arrow).OfType<Primitive.Area>().Where(a => a.Style == "knockout"), a => Reaches(
                (arrow.Points[0], arrow.Points[1]), Box2.Around([.. a.Rings.SelectMany(r => r.Points)]).Grow(-0.2 * sheet.Scale), sheet.Scale));
        }
    }

    [Fact]
    public void Marks_and_types_of_pods_cannot_be_taken_for_each_other()
    {
        foreach (var name in Cards.Names)
        {
            var plan = Cards.Plan(name);
            var marks = Laying.Of(plan, plan.Layout!).Marks.Select(m => m.Name).ToHashSet();
            foreach (var sheet in Pictures(plan))
            {
                Assert.DoesNotContain(sheet.Layers.SelectMany(l => l.Primitives).OfType<Primitive.Text>(), t => t.Style == "pod-type" && marks.Contains(t.Words));
            }
        }
    }

    [Theory]
    [MemberData(nameof(Plans))]
    public void No_word_of_a_pod_lies_on_a_seal_on_a_pods_edge_or_on_a_hatch(string name)
    {
        // A number that finds room nowhere else interrupts the seal: a ground is drawn under it.
        foreach (var sheet in Pictures(Cards.Plan(name)).Append(LayoutPicture.Draw(Cards.Plan(name))))
        {
            var labels = sheet.Layers.Single(l => l.Name == "labels").Primitives;
            var grounds = labels.OfType<Primitive.Area>().Where(a => a.Style == "knockout").Select(a => Box2.Around([.. a.Rings.SelectMany(r => r.Points)])).ToList();
            var pods = sheet.Layers.Single(l => l.Name == "pods").Primitives.Select(p => p is Primitive.Disc d ? Around(d) : Box2.Around([.. ((Primitive.Area)p).Rings[0].Points])).ToList();
            var lines = Lines(sheet, "pod", "seal").ToList();
            var hatches = sheet.Layers.SelectMany(l => l.Primitives).OfType<Primitive.Hatch>().Where(h => h.Style is "cut-hatch" or "floor-hatch" or "defect-hatch")
                .SelectMany(h => HatchLines.Of(h).Chunk(2).Select(e => (A: e[0], B: e[1]))).ToList();
            foreach (var word in labels.OfType<Primitive.Text>().Where(t => t.Style is "pod-id" or "pod-type" or "port-name"))
            {
                var box = Inside(word);
                Assert.True(!lines.Exists(l => Reaches(l, box, sheet.Scale)) || (word.Style != "port-name" && grounds.Exists(g => g.Contains(box))), $"{word.Words} at 1:{sheet.Scale}");
                Assert.True(pods.Exists(p => p.Contains(box)) || !hatches.Exists(l => Reaches(l, box, sheet.Scale)), $"{word.Words} on a hatch at 1:{sheet.Scale}");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Plans))]
    public void Every_pod_says_its_type_and_its_turn_and_every_port_its_name_unless_the_legend_counts_those_without(string name)
    {
        var plan = Cards.Plan(name);
        var screen = SetupPicture.OnScreen(plan, Laying.Of(plan, plan.Layout!));
        ImmutableArray<Sheet> OnPaper(PaperSize paper) => SetupPicture.OnPaper(plan, Laying.Of(plan, plan.Layout!), ("x", ["y"]), 1, paper);
        foreach (var (sheet, closer) in new ImmutableArray<Sheet>[] { [screen.Picture, .. screen.Closer.Select(c => c.Picture)], OnPaper(PaperSize.A4), OnPaper(PaperSize.Letter), [LayoutPicture.Draw(plan)] }
            .Select(s => (s[0], s[1..])))
        {
            var drawn = sheet.Layers.Where(l => l.Name != "panel").SelectMany(l => l.Primitives).ToList();
            var labels = sheet.Layers.Single(l => l.Name == "labels").Primitives.OfType<Primitive.Text>().ToList();
            var isOfMany = plan.Layout!.Pods.Select(p => p.Type.Name).Distinct().Count() > 1;
            for (var i = 0; i < plan.Layout.Pods.Length; i++)
            {
                var id = $"P{i + 1}";
                Assert.InRange(labels.Count(t => t.Style == "pod-type" && t.Of == id), isOfMany ? 1 : 0, 1);
                Assert.Equal(plan.Layout.Pods[i].Turned ? 1 : 0, drawn.Count(p => p.Style == "pod-turned" && p.Of == id));
            }

            // On a screen the legend is a sheet of its own.
            var legend = sheet.Layers.Single(l => l.Name == "panel").Primitives.IsEmpty ? screen.Signs : sheet;
            var told = string.Join(' ', legend.Layers.Single(l => l.Name == "panel").Primitives.OfType<Primitive.Text>().Select(t => t.Words));

            // Named in the picture, or in a part of it that is shown larger.
            var named = labels.Concat(closer.SelectMany(c => c.Layers.Single(l => l.Name == "labels").Primitives.OfType<Primitive.Text>()))
                .Where(t => t.Style == "port-name").Select(t => t.Words).Distinct().Count();
            var without = plan.Layout.Pods.SelectMany(p => p.OpenPorts).Count() - named;
            Assert.Equal(without > 0, told.Contains("no room for its name", StringComparison.Ordinal));
            Assert.True(without <= 0 || told.Contains(without == 1 ? "one port" : $"{without} ports", StringComparison.Ordinal), told);
        }
    }

    [Theory]
    [MemberData(nameof(Plans))]
    public void On_paper_names_of_ports_and_types_are_as_large_as_the_type_beside_the_picture(string name)
    {
        // 2.6 mm of type: a capital of 1.9 mm. Where pods stand so close that a type has no room anywhere it may be smaller.
        foreach (var sheet in Pictures(Cards.Plan(name)).Skip(1).Append(LayoutPicture.Draw(Cards.Plan(name))))
        {
            var words = sheet.Layers.Single(l => l.Name == "labels").Primitives.OfType<Primitive.Text>().ToList();
            Assert.All(words.Where(t => t.Style == "port-name"), t => Assert.True(t.SizeMm / sheet.Scale >= 2.6 - 1e-9, $"{t.Words}: {t.SizeMm / sheet.Scale}"));
            Assert.All(words.Where(t => t.Style == "pod-type"), t => Assert.True(t.SizeMm / sheet.Scale >= 1.9, $"{t.Words}: {t.SizeMm / sheet.Scale}"));
        }
    }

    [Theory]
    [MemberData(nameof(Plans))]
    public void No_name_of_a_port_stands_nearer_to_another_pod_than_to_its_own(string name)
    {
        var plan = Cards.Plan(name);
        var bodies = plan.Layout!.Pods.Select((p, i) => (Id: $"P{i + 1}", Box: p.BodyBox)).ToDictionary(p => p.Id, p => p.Box);
        static double Off(Box2 a, Box2 b) => Math.Max(Math.Max(a.MinX - b.MaxX, b.MinX - a.MaxX), Math.Max(a.MinY - b.MaxY, b.MinY - a.MaxY));
        foreach (var sheet in Pictures(plan))
        {
            foreach (var word in sheet.Layers.Single(l => l.Name == "labels").Primitives.OfType<Primitive.Text>().Where(t => t.Style == "port-name"))
            {
                var own = Off(Inside(word), bodies[word.Of!]);
                Assert.DoesNotContain(bodies, b => b.Key != word.Of && Off(Inside(word), b.Value) < Math.Max(0, own) - 0.3 * sheet.Scale);
            }
        }
    }

    [Fact]
    public void The_cross_of_a_pod_to_take_up_is_not_hidden_under_the_pods_of_the_layout()
    {
        // Two grooves to the right and up: three fifths of the pod that stands there lie under the new one.
        var plan = Cards.Plan("standing");
        var seat = plan.Layout!.Pods[0];
        plan = plan with { Job = plan.Job with { Standing = plan.Job.Standing! with { Pods = [new(seat.Type.Name, seat.Turned, seat.Column + 2, seat.Row + 2)] } } };
        var bodies = plan.Layout.Pods.Select(p => p.BodyBox).ToList();
        foreach (var sheet in Pictures(plan))
        {
            var cross = sheet.Layers.Where(l => l.Name != "panel").SelectMany(l => l.Primitives).OfType<Primitive.Strokes>().Single(s => s.Style == "before-cross");
            Assert.DoesNotContain(bodies, b => b.Touches(Box2.Around(cross.Ends)));
        }
    }

    [Fact]
    public void In_the_crest_rail_with_its_small_pods_nothing_is_lost()
    {
        var plan = Cards.Plan("crest");
        foreach (var sheet in Pictures(plan).Append(LayoutPicture.Draw(plan)))
        {
            var drawn = sheet.Layers.Where(l => l.Name != "panel").SelectMany(l => l.Primitives).ToList();
            Assert.Equal(plan.Layout!.Pods.SelectMany(p => p.OpenPorts).Select(p => p.Name).Order(), drawn.OfType<Primitive.Text>().Where(t => t.Style == "port-name").Select(t => t.Words).Order());
            Assert.Equal(2, drawn.Count(p => p.Style == "pod-turned"));
            Assert.Single(drawn, p => p.Style == "grain-arrow");
            Assert.Equal([new(580, 220), new(1120, 220), new(1120, 380), new(580, 380)], ((Primitive.Area)drawn.Single(p => p.Style == "blank-edge")).Rings[0].Points);
        }
    }

    [Theory]
    [InlineData("oval")]
    [InlineData("crest")]
    [InlineData("ell")]
    public void A_mark_stands_near_its_place_where_nothing_is_in_the_way(string name)
    {
        // Outside the part there is room at once: the flag of 4 mm, and a line of 7 mm or less to it.
        var plan = Cards.Plan(name);
        var marks = Laying.Of(plan, plan.Layout!).Marks.ToDictionary(m => m.Name, m => m.At);
        foreach (var sheet in Pictures(plan))
        {
            foreach (var flag in sheet.Layers.Single(l => l.Name == "labels").Primitives.OfType<Primitive.Text>().Where(t => t.Style == "stretch-number"))
            {
                Assert.InRange((flag.At - marks[flag.Words]).Length / sheet.Scale, 0, 13);
            }
        }
    }

    [Fact]
    public void A_blank_that_reaches_beyond_the_board_makes_the_picture_larger_and_is_explained()
    {
        var ell = HandMade.Ell();
        var plan = ell with { Job = ell.Job with { Part = ell.Job.Part with { Shape = ell.Job.Part.Shape with { Blank = [HandMade.Rectangle(-80, -60, 350, 320)] } } } };
        foreach (var sheet in Pictures(plan).Append(LayoutPicture.Draw(plan)).Append(LayoutDxf.Draw(plan)))
        {
            // The part's zero lies at (30, 30): the blank from (-50, -30) to (380, 350), on a board of 300 x 300.
            Assert.True(sheet.Extent.Contains(new Box2(-50, -30, 380, 350)));
        }

        var words = SetupPicture.OnScreen(plan, Laying.Of(plan, plan.Layout!)).Signs.Layers.SelectMany(l => l.Primitives).OfType<Primitive.Text>().Select(t => t.Words);
        Assert.Contains("edge of the blank, as it is laid down", string.Join(' ', words), StringComparison.Ordinal);
    }

    [Fact]
    public void Pods_that_break_a_rule_or_are_not_counted_are_framed_named_and_explained()
    {
        var plan = Cards.Plan("oval");
        var laying = Laying.Of(plan, plan.Layout!);
        var (picture, signs, _) = SetupPicture.OnScreen(plan, laying, new PodFault(2, Counts: true), new PodFault(5, Counts: false));
        var paper = SetupPicture.OnPaper(plan, laying, ("x", ["y"]), null, PaperSize.A4, false, [new(2, Counts: true), new(5, Counts: false)])[0];
        foreach (var (sheet, legend) in new[] { (picture, signs), (paper, paper) })
        {
            var drawn = sheet.Layers.Where(l => l.Name != "panel").SelectMany(l => l.Primitives).ToList();
            var frames = drawn.OfType<Primitive.Area>().Where(a => a.Style == "fault-frame").Select(a => Box2.Around([.. a.Rings[0].Points]).Centre).ToList();
            Assert.Equal([plan.Layout!.Pods[2].Centre, plan.Layout.Pods[5].Centre], frames);
            Assert.Equal(["breaks a rule", "not counted"], drawn.OfType<Primitive.Text>().Where(t => t.Style == "fault-words").Select(t => t.Words));
            Assert.Contains(legend.Layers.Single(l => l.Name == "panel").Primitives, p => p.Style == "fault-frame");
        }

        Assert.DoesNotContain(Pictures(plan).SelectMany(s => s.Layers).SelectMany(l => l.Primitives), p => p.Style == "fault-frame");
    }

    [Theory]
    [InlineData(3600, 1500, false)]
    [InlineData(1500, 3600, false)]
    [InlineData(1200, 1200, false)]
    [InlineData(600, 1800, true)]
    public void Where_many_pods_break_a_rule_their_frames_hide_neither_numbers_nor_ports(double width, double length, bool isLarge)
    {
        var plan = Cards.Grid(width, length, isLarge ? 24 : 60, isLarge ? HandMade.Square : HandMade.Small);
        foreach (var share in new[] { 1, 2, 4 })
        {
            PodFault[] faults = [.. Enumerable.Range(0, plan.Layout!.Pods.Length).Where(i => i % share == 0).Select(i => new PodFault(i, Counts: true))];
            var laying = Laying.Of(plan, plan.Layout);
            foreach (var sheet in new[] { SetupPicture.OnScreen(plan, laying, [.. faults]).Picture, SetupPicture.OnPaper(plan, laying, ("Title", ["one line"]), null, PaperSize.A4, faults: [.. faults])[0] })
            {
                var drawn = sheet.Layers.Where(l => l.Name != "panel").SelectMany(l => l.Primitives.Select((p, i) => (p, l.Name))).ToList();
                var frames = drawn.Count(d => d.p.Style.StartsWith("fault-frame", StringComparison.Ordinal));
                Assert.Equal(faults.Length, frames);
                var grounds = drawn.Select(d => d.p).OfType<Primitive.Area>().Where(a => a.Style == "fault-ground").Select(a => Box2.Around([.. a.Rings[0].Points])).ToList();
                Assert.DoesNotContain(drawn.Select(d => d.p).OfType<Primitive.Text>().Where(t => t.Style.StartsWith("pod-id", StringComparison.Ordinal)), t => grounds.Exists(g => g.Touches(Inside(t))));
                Assert.DoesNotContain(drawn.Select(d => d.p).OfType<Primitive.Disc>().Where(d => d.Style == "port-open"), d => grounds.Exists(g => g.Touches(Around(d))));

                // Ports are drawn over frames that lie on the pods' edges.
                Assert.All(drawn.Where(d => d.p.Style == "fault-frame-small"), d => Assert.Equal("pods", d.Name));
            }
        }
    }

    private static Box2 Around(Primitive.Disc disc) => new Box2(disc.Centre.X, disc.Centre.Y, disc.Centre.X, disc.Centre.Y).Grow(disc.RadiusMm);

    private static IEnumerable<Sheet> Pictures(PlanResult plan)
    {
        var laying = Laying.Of(plan, plan.Layout!);
        yield return SetupPicture.OnScreen(plan, laying).Picture;
        yield return SetupPicture.OnPaper(plan, laying, ("x", ["y"]), 1, PaperSize.A4)[0];
        yield return SetupPicture.OnPaper(plan, laying, ("x", ["y"]), 1, PaperSize.Letter)[0];
    }

    // As if it had been computed: the pods bear more and more.
    private static PlanResult Held(PlanResult plan, Point2 at = default, Point2 push = default) => plan with
    {
        Layout = plan.Layout! with
        {
            Holding = new(
                3, 2, 1.5, null, new(at, 10, new(push.X, push.Y, 1), "outline", FailureMode.Slides, 4),
                [.. plan.Layout.Pods.Select((_, i) => new PodHold(70, 500, 100 + i, 2))], 70, 101.3, 50, 40, []),
        },
    };

    private static IEnumerable<(Point2 A, Point2 B)> Lines(Sheet sheet, params string[] styles)
    {
        foreach (var primitive in sheet.Layers.Where(l => l.Name != "panel").SelectMany(l => l.Primitives).Where(p => styles.Contains(p.Style)))
        {
            var rings = primitive switch
            {
                Primitive.Area area => area.Rings.Select(r => r.Points.Append(r.Points[0])),
                Primitive.Line line => [line.Points],
                _ => [],
            };
            foreach (var points in rings.Select(r => r.ToList()))
            {
                for (var i = 1; i < points.Count; i++)
                {
                    yield return (points[i - 1], points[i]);
                }
            }
        }
    }

    // By points a tenth of a millimetre of paper apart.
    private static bool Reaches((Point2 A, Point2 B) line, Box2 box, double scale)
    {
        var near = Box2.Around([line.A, line.B]);
        if (!near.Touches(box))
        {
            return false;
        }

        var count = 1 + (int)((line.B - line.A).Length / (0.1 * scale));
        return Enumerable.Range(0, count + 1).Any(i => box.Contains(line.A + (line.B - line.A) * ((double)i / count)));
    }

    // The ink of a word: digits and capitals are about .55 em wide and .7 em high.
    private static Box2 Inside(Primitive.Text text)
    {
        double width = text.Words.Length * 0.5 * text.SizeMm, height = 0.65 * text.SizeMm;
        (width, height) = text.AngleDeg == 90 ? (height, width) : (width, height);
        var left = text.Anchor switch { TextAnchor.Start => 0, TextAnchor.Middle => width / 2, _ => width };
        return new(text.At.X - left, text.At.Y - height / 2, text.At.X - left + width, text.At.Y + height / 2);
    }

    // But for what is no sign of the legend, and the three weights of ticks, of which a picture may show one.
    private static HashSet<string> Styles(Sheet sheet, string? layer) =>
    [
        .. sheet.Layers.Where(l => layer is null ? l.Name != "panel" : l.Name == layer).SelectMany(l => l.Primitives)
            .Where(p => p is not Primitive.Text && p.Style is not ("rule" or "bar-light" or "datum-fill" or "support-low" or "support-middle" or "support-high")).Select(p => p.Style),
    ];
}

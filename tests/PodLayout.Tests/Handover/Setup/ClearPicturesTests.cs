using PodLayout.Geometry;
using PodLayout.Handover;
using PodLayout.Handover.Picture;
using PodLayout.Handover.Setup;
using PodLayout.Tests.Independent;
using static PodLayout.Tests.Handover.Setup.DrawnSheets;

namespace PodLayout.Tests.Handover.Setup;

/// <summary>Pictures in which one thing does not hide another.</summary>
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
    [InlineData("oval")]
    [InlineData("dense-60")]
    [InlineData("small")]
    [InlineData("ell")]
    public void The_bar_of_a_pods_load_covers_neither_a_word_nor_a_port(string name)
    {
        var sheet = LayoutPicture.Draw(Cards.Held(Cards.Plan(name)));
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
            var sheet = LayoutPicture.Draw(Cards.Held(HandMade.Oval(), new(x, y), new(inwards * Math.Sign(x), inwards * Math.Sign(y))));
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

    [Fact]
    public void Where_pods_were_moved_over_each_other_open_ports_are_open_ports_and_numbers_are_read()
    {
        // The second block of pods half a pod off the first, their ports where they were; the third beside it leaves its ports alone.
        var plan = CrowdedCards.Plan("square block of small pods with no gap");
        var board = plan.Job.Shop.Board;
        plan = plan with
        {
            Layout = plan.Layout! with
            {
                Pods = [.. plan.Layout.Pods.Select((p, i) => i % 10 is 3 or 7 ? HandMade.Pod(board, p.Type, false, p.Column + (i % 10 == 3 ? 1 : 40), p.Row) with { OpenPorts = p.OpenPorts } : p)],
            },
        };
        var screen = SetupPicture.OnScreen(plan, Laying.Of(plan, plan.Layout!));
        foreach (var sheet in (Sheet[])[screen.Picture, .. screen.Closer.Select(c => c.Picture), .. SetupPicture.OnPaper(plan, Laying.Of(plan, plan.Layout), ("x", ["y"]), 1, PaperSize.A4)])
        {
            var signs = sheet.Layers.Single(l => l.Name == "open-ports").Primitives.OfType<Primitive.Disc>().ToList();
            var open = signs.Where(d => d.Style == "port-open-ring").ToList();
            Assert.DoesNotContain(signs, d => d.Style == "port-plugged" && open.Exists(o => (o.Centre - d.Centre).Length < o.RadiusMm));
            var words = sheet.Layers.Single(l => l.Name == "labels").Primitives.OfType<Primitive.Text>().ToList();
            Assert.DoesNotContain(words, w => open.Exists(o => Around(o).Grow(-0.3 * o.RadiusMm).Touches(Inside(w))));
            Assert.Equal([], words.SelectMany(w => words.Where(o => o != w && Inside(o).Touches(Inside(w))).Select(o => $"{o.Words} on {w.Words}")));
        }
    }
}

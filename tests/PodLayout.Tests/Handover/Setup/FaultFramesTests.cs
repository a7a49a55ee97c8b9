using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Handover.Picture;
using PodLayout.Handover.Setup;
using PodLayout.Layouts;
using PodLayout.Tests.Independent;
using static PodLayout.Tests.Handover.Setup.DrawnSheets;

namespace PodLayout.Tests.Handover.Setup;

/// <summary>Pods that break a rule or are not counted, in the picture.</summary>
public class FaultFramesTests
{
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
            var frames = drawn.OfType<Primitive.Area>().Where(a => a.Style is "fault-frame" or "fault-frame-small").Select(a => Box2.Around([.. a.Rings[0].Points]).Centre).ToList();
            Assert.Equal([plan.Layout!.Pods[2].Centre, plan.Layout.Pods[5].Centre], frames);
            Assert.Equal(["breaks a rule", "not counted"], drawn.OfType<Primitive.Text>().Where(t => t.Style == "fault-words").Select(t => t.Words));
            Assert.Contains(legend.Layers.Single(l => l.Name == "panel").Primitives, p => p.Style is "fault-frame" or "fault-frame-small");
        }

        Assert.DoesNotContain(Pictures(plan).SelectMany(s => s.Layers).SelectMany(l => l.Primitives), p => p.Style is "fault-frame" or "fault-frame-small");
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

    [Theory]
    [InlineData("round the edges, upright")]
    [InlineData("round the edges")]
    [InlineData("anywhere, near to each other")]
    public void Words_and_marks_of_exclamation_belong_to_no_other_pod(string name)
    {
        var plan = CrowdedCards.Plan(name);
        var laying = Laying.Of(plan, plan.Layout!);
        static double Off(Box2 a, Box2 b) => double.Hypot(Math.Max(0, Math.Max(a.MinX - b.MaxX, b.MinX - a.MaxX)), Math.Max(0, Math.Max(a.MinY - b.MaxY, b.MinY - a.MaxY)));
        for (var first = 0; first < 5; first++)
        {
            ImmutableArray<PodFault> faults = [.. Enumerable.Range(0, plan.Layout!.Pods.Length).Where(i => i % 5 == first).Select(i => new PodFault(i, Counts: true)).Take(12)];
            var faulty = faults.Select(f => plan.Layout.Pods[f.Pod].BodyBox).ToList();
            var others = plan.Layout.Pods.Select(p => p.BodyBox).Except(faulty).ToList();
            foreach (var sheet in new[] { SetupPicture.OnScreen(plan, laying, faults).Picture, SetupPicture.OnPaper(plan, laying, ("x", ["y"]), null, PaperSize.A4, faults: faults)[0] })
            {
                var grounds = sheet.Layers.Single(l => l.Name == "labels").Primitives.OfType<Primitive.Area>().Where(a => a.Style == "fault-ground").Select(a => Box2.Around(a.Rings[0].Points)).ToList();
                Assert.NotEmpty(grounds);
                var open = plan.Layout.Pods.SelectMany(p => p.OpenPorts).Select(p => p.Centre).ToList();
                Assert.DoesNotContain(grounds, g => open.Exists(g.Contains));
                Assert.All(grounds, g => Assert.True(faulty.Min(b => Off(b, g)) < others.Min(b => Off(b, g)) || faulty.Exists(b => b.Contains(g))));
            }
        }
    }
}

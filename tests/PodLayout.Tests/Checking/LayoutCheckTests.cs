using System.Collections.Immutable;
using PodLayout.Checking;
using PodLayout.Geometry;
using PodLayout.Handover;
using PodLayout.Layouts;
using PodLayout.Shops;
using PodLayout.Tests.Independent;
using PodLayout.Tests.Placing;

namespace PodLayout.Tests.Checking;

/// <summary>The checker that users have, held against the independent one of the tests and against figures worked out by hand.</summary>
public class LayoutCheckTests
{
    private static readonly Dictionary<string, CheckedRule> Same = new(StringComparer.Ordinal)
    {
        ["seal in wood"] = CheckedRule.SealInSoundWood,
        ["body clear of cuts"] = CheckedRule.BodyClearOfCuts,
        ["apart"] = CheckedRule.PodsApart,
        ["lattice"] = CheckedRule.OnTheLattice,
        ["usable area"] = CheckedRule.InsideUsableArea,
        ["obstacle"] = CheckedRule.ClearOfObstacles,
        ["port once"] = CheckedRule.PortsListed,
        ["ports enough"] = CheckedRule.EnoughPorts,
        ["port known"] = CheckedRule.PortsWork,
        ["port works"] = CheckedRule.PortsWork,
        ["port in seal"] = CheckedRule.PortsInsideSeal,
        ["no port under a seal line"] = CheckedRule.NoOpenPortUnderSeal,
        ["floors bear"] = CheckedRule.FloorsBearVacuum,
        ["type"] = CheckedRule.Stock,
        ["stock"] = CheckedRule.Stock,
        ["turn"] = CheckedRule.QuarterTurn,
        ["height"] = CheckedRule.OneHeight,
        ["edge point within its limit"] = CheckedRule.EdgeWithinLimit,
        ["interior point within its limit"] = CheckedRule.InteriorWithinLimit,
    };

    // Away from a pod that sticks out of the wood the two measure support differently: the layout fails in both either way.
    private static readonly CheckedRule[] OfSupport = [CheckedRule.EdgeWithinLimit, CheckedRule.InteriorWithinLimit];

    [Fact]
    public void Layouts_changed_at_random_get_the_verdict_of_the_independent_checker_rule_by_rule()
    {
        var random = new Random(331);
        List<PlanResult> starts = [HandMade.Oval(), HandMade.Ell()];
        for (var i = 0; starts.Count < 12; i++)
        {
            var planned = PlannedLayoutsTests.Plan(PlannedLayoutsTests.RandomJob(random, i));
            if (planned.Layout is not null)
            {
                starts.Add(planned);
            }
        }

        var (good, bad) = (0, 0);
        var met = new HashSet<CheckedRule>();
        foreach (var start in starts)
        {
            for (var k = 0; k < 16; k++)
            {
                var changed = k == 0 ? start : Changed(random, start);
                var broken = AssertSame(changed);
                met.UnionWith(broken);
                (good, bad) = broken.Length == 0 ? (good + 1, bad) : (good, bad + 1);
            }
        }

        // The test is worth something only when it meets both verdicts and most rules.
        Assert.InRange(good, 12, 150);
        Assert.InRange(bad, 50, 180);
        Assert.True(met.Count >= 12, string.Join(", ", met.Order()));
    }

    [Fact]
    public void Layouts_that_are_right_keep_every_rule_also_after_they_went_through_a_file()
    {
        foreach (var result in new[] { HandMade.Oval(), HandMade.Ell(), HandMade.Door() })
        {
            var read = LayoutJson.ToPlan(LayoutJson.Read("layout.json", LayoutJson.Write(result)).Value!);
            foreach (var plan in new[] { result, read })
            {
                var report = LayoutCheck.Of(plan.Job, plan.Layout!);
                Assert.True(report.AllHold, string.Join("\n", report.Rules.SelectMany(r => r.Breaches)));
                Assert.Equal(Enum.GetValues<CheckedRule>(), report.Rules.Select(r => r.Rule));
            }
        }
    }

    [Fact]
    public void Figures_are_those_worked_out_by_hand()
    {
        // The bar reaches from (100, 100) to (500, 240), the bodies stand on grooves 105 to 225 and 315 to 435, both from 105 up:
        // 5 mm from the left end and the lower edge, 15 mm from the upper; the seals are 6 mm in.
        var plan = Bar();
        var report = LayoutCheck.Of(plan.Job, plan.Layout!);
        Assert.Equal((11.0, 8.0), (Math.Round(report[CheckedRule.SealInSoundWood].Worst!.Value, 9), report[CheckedRule.SealInSoundWood].Needed!.Value));
        Assert.Equal(5, report[CheckedRule.BodyClearOfCuts].Worst!.Value, 9);
        Assert.Equal(90, report[CheckedRule.PodsApart].Worst!.Value, 9);
        Assert.Equal(2, report[CheckedRule.Stock].Worst);

        // The farthest point is the upper right corner: from (435, 225) to (500, 240).
        Assert.Equal(Math.Sqrt((65 * 65) + (15 * 15)) / 130, report[CheckedRule.EdgeWithinLimit].Worst!.Value, 9);
    }

    [Theory]
    [InlineData(-1, 0, 25)]
    [InlineData(1, 0, 0)]
    public void A_body_over_the_edge_is_said_with_how_far_it_passes_it(int columns, int rows, double passes)
    {
        var plan = Bar();
        var moved = Moved(plan, 0, columns, rows);
        var report = LayoutCheck.Of(moved.Job, moved.Layout!);
        var rule = report[CheckedRule.BodyClearOfCuts];
        Assert.Equal(passes == 0, rule.Holds);
        if (passes > 0)
        {
            // The body began 5 mm inside the end of the part and went 30 mm back.
            Assert.Equal(-passes, rule.Worst!.Value, 9);
            Assert.StartsWith("P1: its body passes the outline by 25 mm", Assert.Single(rule.Breaches).Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Ports_that_no_pod_is_fed_by_and_ports_not_listed_are_found()
    {
        var plan = Bar();
        var names = plan.Layout!.Pods.SelectMany(p => p.OpenPorts).Select(p => p.Name).ToImmutableArray();
        Assert.True(LayoutCheck.Of(plan.Job, plan.Layout, names)[CheckedRule.PortsListed].Holds);
        Assert.Contains("not among", Assert.Single(LayoutCheck.Of(plan.Job, plan.Layout, [names[0]])[CheckedRule.PortsListed].Breaches).Message, StringComparison.Ordinal);
        Assert.Contains("no pod is fed", Assert.Single(LayoutCheck.Of(plan.Job, plan.Layout, names.Add("1-1"))[CheckedRule.PortsListed].Breaches).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_cut_under_a_pod_is_found_also_after_a_file()
    {
        // A slot of 20 x 100 mm beside the first body, which ends at 225 on the board, 125 in the drawing: 2 mm away, 3 needed.
        var plan = Bar();
        PodLayout.Parts.Hazard Cut(double x, bool bodies, bool seals) => new(
            "slot", "part.nc lines 7 to 9", Region.Bounded([HandMade.Rectangle(x, 20, x + 20, 120)]), bodies, seals);
        PlanResult With(PodLayout.Parts.Hazard cut)
        {
            var job = plan.Job with { Part = plan.Job.Part with { Shape = plan.Job.Part.Shape with { Hazards = [cut] } } };
            var text = LayoutJson.Write(plan with { Job = job });
            var read = LayoutJson.ToPlan(LayoutJson.Read("layout.json", text).Value!);
            Assert.Equal(text, LayoutJson.Write(read));
            return read;
        }

        var near = With(Cut(127, true, false));
        var rule = LayoutCheck.Of(near.Job, near.Layout!)[CheckedRule.BodyClearOfCuts];
        Assert.Equal(2, rule.Worst!.Value, 9);
        Assert.StartsWith("P1: its body is 2 mm from slot (part.nc lines 7 to 9)", Assert.Single(rule.Breaches).Message, StringComparison.Ordinal);
        var clear = With(Cut(128.1, true, false));
        Assert.True(LayoutCheck.Of(clear.Job, clear.Layout!).AllHold);

        // The seal ends 6 mm before the body and must keep 8 mm: 2 mm from the body is enough, overlapping it is not.
        var pocket = With(Cut(127, false, true));
        Assert.True(LayoutCheck.Of(pocket.Job, pocket.Layout!).AllHold);
        var under = With(Cut(40, false, true));
        Assert.False(LayoutCheck.Of(under.Job, under.Layout!)[CheckedRule.SealInSoundWood].Holds);
    }

    [Fact]
    public void A_layout_without_pods_supports_nothing()
    {
        var plan = Bar();
        var report = LayoutCheck.Of(plan.Job, plan.Layout! with { Pods = [] });
        Assert.False(report[CheckedRule.EdgeWithinLimit].Holds);
        Assert.True(report[CheckedRule.SealInSoundWood].Holds);
    }

    private static PlanResult Bar()
    {
        var part = new PodLayout.Parts.Part("Bar", new(HandMade.Rectangle(0, 0, 400, 140), [], []), 30, "", 0);
        return HandMade.Plan(
            HandMade.Job(part, HandMade.Board(900, 600), new(100, 100), 0, new(130, 130, null, 10, 50)),
            [(HandMade.Square, false, 3, 3), (HandMade.Square, false, 10, 3)]);
    }

    private static CheckedRule[] AssertSame(PlanResult plan)
    {
        var ours = LayoutCheck.Of(plan);
        CheckedRule[] broken = [.. ours.Rules.Where(r => !r.Holds).Select(r => r.Rule)];
        var theirs = LayoutChecker.Check(plan).Violations.Select(v => v[..v.IndexOf(':', StringComparison.Ordinal)])
            .Where(Same.ContainsKey).Select(v => Same[v]).ToHashSet();
        var inWood = !theirs.Contains(CheckedRule.SealInSoundWood) && !theirs.Contains(CheckedRule.BodyClearOfCuts);
        bool Counts(CheckedRule rule) => inWood || !OfSupport.Contains(rule);
        Assert.True(
            theirs.Where(Counts).Order().SequenceEqual(broken.Where(Counts).Order()),
            $"Independent: {string.Join(", ", theirs.Order())}; ours: {string.Join("\n", ours.Rules.SelectMany(r => r.Breaches))}\n{LayoutChecker.Check(plan)}");
        Assert.Equal(theirs.Count == 0, ours.AllHold);
        return broken;
    }

    private static PlanResult Moved(PlanResult plan, int index, int columns, int rows)
    {
        var pod = plan.Layout!.Pods[index];
        var pitch = plan.Job.Shop.Board.PitchMm;
        return WithPod(plan, index, pod with
        {
            Column = pod.Column + columns,
            Row = pod.Row + rows,
            Centre = pod.Centre + new Point2(pitch * columns, pitch * rows),
        });
    }

    private static PlanResult WithPod(PlanResult plan, int index, PlacedPod pod) =>
        plan with { Layout = plan.Layout! with { Pods = plan.Layout.Pods.SetItem(index, pod) } };

    // What a person at the board might do to a layout, well or badly.
    private static PlanResult Changed(Random random, PlanResult plan)
    {
        var layout = plan.Layout!;
        var index = random.Next(layout.Pods.Length);
        var pod = layout.Pods[index];
        var board = plan.Job.Shop.Board;
        switch (random.Next(10))
        {
            case 0:
            case 1:
                var moved = Moved(plan, index, random.Next(3) - 1, random.Next(3) - 1);
                return WithPod(moved, index, Fed(moved.Layout!.Pods[index], board));
            case 2:
                return Moved(plan, index, random.Next(3) - 1, random.Next(3) - 1);
            case 3:
                var type = plan.Job.Shop.Pods[random.Next(plan.Job.Shop.Pods.Length)];
                var turned = type.MayTurn && random.Next(2) == 0;
                return WithPod(plan, index, Fed(HandMade.Pod(board, type, turned, pod.Column, pod.Row), board));
            case 4:
                return WithPod(plan, index, pod with { OpenPorts = [] });
            case 5:
            case 6:
                var by = Turn.FromDegrees(random.Next(360)).Apply(new(1 + (4 * random.NextDouble()), 0));
                return plan with { Layout = layout with { Placement = layout.Placement with { ZeroOnBoard = layout.Placement.ZeroOnBoard + by } } };
            case 7:
                return plan with { Layout = layout with { Pods = layout.Pods.RemoveAt(index) } };
            case 8:
                var port = board.Ports[random.Next(board.Ports.Length)];
                return WithPod(plan, index, pod with { OpenPorts = [port] });
            default:
                return WithPod(plan, index, pod with { Turned = !pod.Turned, Centre = random.Next(2) == 0 ? pod.Centre : pod.Centre + new Point2(random.NextDouble(), 0) });
        }
    }

    // The working ports nearest to the middle, whether or not they lie well inside the seal.
    private static PlacedPod Fed(PlacedPod pod, GridBoard board) => pod with
    {
        OpenPorts = [.. board.Ports.Where(p => p.State == PortState.Working && pod.BodyBox.Contains(p.Centre))
            .OrderBy(p => Plane.Span(p.Centre, pod.Centre)).Take(pod.Type.PortsNeeded)],
    };
}

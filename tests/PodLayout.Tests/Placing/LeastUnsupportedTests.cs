using System.Collections.Immutable;
using System.Numerics;
using PodLayout.Geometry;
using PodLayout.Handover;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Parts;
using PodLayout.Placing;
using PodLayout.Seats;
using PodLayout.Shops;
using PodLayout.Support;
using PodLayout.Tests.Independent;

namespace PodLayout.Tests.Placing;

/// <summary>Where not everything can be supported: as little as can be is left, then the fewest pods for the rest.</summary>
public class LeastUnsupportedTests
{
    // Edge points are 10 mm apart: a length of edge is told to a step at either end.
    private const double StepMm = 10;

    [Fact]
    public void Of_a_tongue_too_narrow_for_any_pod_what_lies_beyond_the_limit_stays()
    {
        // A body of 400 x 200 with a tongue of 300 x 40. A pod's face comes as near to the tongue's root as the margin of 3 mm allows, and
        // reaches 60 mm from there: both edges from 457 to 700 and the end of 40 mm stay, 526 mm.
        var result = PlannedLayoutsTests.Plan(Shapes.JobFor(Tongue(300, 40), Shapes.Board(1500, 1200), Pods, 60));
        Assert.True(LayoutChecker.Check(result).Violations.Count == 0, string.Join("\n", LayoutChecker.Check(result).Violations));
        var proof = result.Layout!.Proof;
        Assert.InRange(proof.UnsupportedMm, 526 - 2 * StepMm, 526 + 2 * StepMm);
        Assert.InRange(proof.LeastUnsupportedMm, 1, proof.UnsupportedMm);
        var stretch = Assert.Single(result.Unsupported);
        Assert.Equal(proof.UnsupportedMm, stretch.LengthMm, 0.1);
        Assert.All(new[] { stretch.From, stretch.To }, p => Assert.InRange(p.X, 457, 457 + StepMm));

        // At the end of the tongue: 700 - 397 mm.
        Assert.InRange(stretch.OverhangNowMm!.Value, 303, 306);
        Assert.Contains(result.Findings, f => f.Code == UnsupportedFindings.Code && f.Message.Contains("mm of edge stay", StringComparison.Ordinal));
        Assert.True(result.IsPartial && result.IsUsable);
    }

    [Fact]
    public void Where_all_is_to_be_supported_or_nothing_there_is_no_layout()
    {
        var job = Shapes.JobFor(Tongue(300, 40), Shapes.Board(1500, 1200), Pods, 60);
        var result = PlannedLayoutsTests.Plan(job with { Support = job.Support with { MustSupportAll = true } });
        Assert.Null(result.Layout);
        Assert.NotEmpty(result.Unsupported);
    }

    [Fact]
    public void A_part_narrower_than_every_pod_is_refused_with_what_would_fit()
    {
        var job = Shapes.JobFor(new(Shapes.Rectangle(0, 0, 300, 40), [], []), Shapes.Board(1500, 1200), Pods, 60);
        var result = PlannedLayoutsTests.Plan(job);
        Assert.Null(result.Layout);
        Assert.Contains(result.Unsupported, s => s.Cause.Contains("90 x 30", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("stock", "more in stock would do")]
    [InlineData("port", "no port lies under it")]
    [InlineData("defect", "marked defect")]
    [InlineData("margin", "seal margin of 10 mm")]
    [InlineData("obstacle", "the stop")]
    public void The_cause_is_the_rule_that_applies(string what, string words)
    {
        // A bar of 600 x 100 that three pods of 120 x 60 support, each rule in turn made too tight at its right end; the part lies where it does.
        var board = Shapes.Board(1500, 1200);
        var part = new PartShape(Shapes.Rectangle(0, 0, 600, 100), [], []);
        var pods = Shapes.Pod(120, 60, true, stock: what == "stock" ? 2 : 9);
        var job = Shapes.JobFor(part, board, [pods], 90, placement: what is "port" or "obstacle" ? new PlacementWish.Given(new(310, 310), 0) : null);
        Assert.Empty(PlannedLayoutsTests.Plan(job with { Shop = job.Shop with { Pods = [pods with { Stock = 9 }] } }).Unsupported);
        job = what switch
        {
            "port" => With(job, board with { Ports = [.. board.Ports.Where(p => p.Centre.X < 700)] }),
            "defect" => job with { Part = job.Part with { Shape = part with { Defects = [Shapes.Rectangle(400, 0, 200, 100)] } } },
            "margin" => job with { Part = job.Part with { Shape = Narrowing() }, Margins = new(10, 3) },
            "obstacle" => With(job, board with { Obstacles = [new("the stop", ObstacleKind.Stop, new ObstacleShape.Rectangle(new(700, 300, 900, 400)), 3)] }),
            _ => job,
        };
        var result = PlannedLayoutsTests.Plan(job);
        Assert.True(result.IsPartial, $"{result.Layout?.Pods.Length} pods; {string.Join("; ", result.Findings)}");
        Assert.Contains(result.Unsupported, s => s.Cause.Contains(words, StringComparison.Ordinal));
    }

    [Fact]
    public void At_one_place_no_choice_of_seats_leaves_less_and_none_of_fewer_pods_as_little()
    {
        var random = new Random(8711);
        var (compared, partial, fewerElsewise) = (0, 0, 0);
        for (var i = 0; compared < 200; i++)
        {
            Assert.True(i < 2000, $"{compared} compared.");
            var job = SmallJob(random, i);
            var reach = ReachMap.Of(job.Part, job.Support);
            var given = (PlacementWish.Given)job.Placement;
            var (offset, columns, rows) = GivenPlacement.Locate(job, given);
            Frames frames = new(job, reach, PodPose.Of(job.Shop, 50), null);
            ImmutableArray<BoardSeats> board = [.. frames.Poses.Select(pose => BoardSeats.Of(pose, job.Shop.Board))];
            var ground = SearchGround.At(frames.Of(given.AngleDeg, 0), board, new(offset, 0, 0), columns, rows);
            var model = PlacementModel.OfSupport(job, ground, ground.Classes[0], offset);
            if (model.Seats.Length is 0 or > 14)
            {
                continue;
            }

            var (left, pods, byPods) = Best(job, model, reach, (columns, rows));
            var result = PlannedLayoutsTests.Plan(job);
            if (result.Layout is not { } layout)
            {
                // No pod supports anything.
                Assert.Equal(Total(reach, job), left, 0.02 * reach.Points.Length);
                continue;
            }

            compared++;
            Assert.Equal(left, layout.Proof.UnsupportedMm, 0.02 * reach.Points.Length);
            Assert.Equal(layout.Proof.UnsupportedMm, layout.Proof.LeastUnsupportedMm);
            Assert.True(layout.Pods.Length >= pods, $"Case {i}: {layout.Pods.Length} pods, {pods} do.");
            Assert.Equal(layout.Pods.Length, layout.Proof.FewestPodsPossible);
            partial += result.IsPartial ? 1 : 0;
            fewerElsewise += layout.Pods.Length > pods ? 1 : 0;
            Assert.True(byPods);
        }

        // The test is worth something only where much stays; and what is left is seldom left elsewhere with fewer pods.
        Assert.InRange(partial, 60, 200);
        Assert.InRange(fewerElsewise, 0, 4);
    }

    [Fact]
    public void Wider_limits_more_ports_more_pods_and_smaller_margins_never_leave_more()
    {
        var random = new Random(31);
        var partial = 0;
        for (var i = 0; i < 40; i++)
        {
            var job = PlannedLayoutsTests.RandomJob(random, 3 * i);
            double Left(Job of) => PlannedLayoutsTests.Plan(of) is { Layout: { } layout } ? layout.Proof.UnsupportedMm : Total(ReachMap.Of(of.Part, of.Support), of);
            var before = Left(job);
            partial += before > 0 ? 1 : 0;
            var wider = job.Support with { OverhangAlongGrainMm = job.Support.OverhangAlongGrainMm * 1.1, OverhangAcrossGrainMm = job.Support.OverhangAcrossGrainMm * 1.1 };
            Assert.InRange(Left(job with { Support = wider }), 0, before);
            Assert.InRange(Left(job with { Margins = new(job.Margins.SealMarginMm / 2, job.Margins.CutClearanceMm / 2) }), 0, before);
            Assert.InRange(Left(job with { Shop = job.Shop with { Pods = [.. job.Shop.Pods, Shapes.Pod(60, 30, true)] } }), 0, before);
            Assert.InRange(Left(With(job, job.Shop.Board with { Ports = [.. job.Shop.Board.Ports.Select(p => p with { State = PortState.Working })] })), 0, before);
        }

        Assert.True(partial >= 10, $"{partial} of 40");
    }

    [Fact]
    public void The_same_comes_out_on_any_number_of_threads()
    {
        foreach (var job in new[] { Shapes.JobFor(Tongue(200, 40), Shapes.Board(1500, 1200, 240), Pods, 60), Shapes.JobFor(Tongue(120, 50), Shapes.Board(1500, 1200, 180), Pods, 50) })
        {
            var one = LayoutJson.Write(PlannedLayoutsTests.Plan(job, 1));
            Assert.Equal(one, LayoutJson.Write(PlannedLayoutsTests.Plan(job, 2)));
            Assert.Equal(one, LayoutJson.Write(PlannedLayoutsTests.Plan(job, 3)));
        }
    }

    private static ImmutableArray<PodType> Pods => [Shapes.Pod(120, 60, true), Shapes.Pod(60, 60)];

    private static PartShape Tongue(double length, double width) => new(new Ring([
        new(0, 0), new(400, 0), new(400, 100 - width / 2), new(400 + length, 100 - width / 2), new(400 + length, 100 + width / 2), new(400, 100 + width / 2), new(400, 200), new(0, 200)]), [], []);

    // From 100 mm to 70 at its right end: with 10 mm of margin to either side 50 are left for a seal of 60.
    private static PartShape Narrowing() => new(new Ring([new(0, 0), new(250, 0), new(250, 15), new(600, 15), new(600, 85), new(250, 85), new(250, 100), new(0, 100)]), [], []);

    private static Job With(Job job, GridBoard board) => job with { Shop = job.Shop with { Board = board } };

    private static double Total(ReachMap reach, Job job) => Lengths(reach, job).Sum();

    // Half the way to either neighbour on the ring; a thousandth of its square for a point inside.
    private static double[] Lengths(ReachMap reach, Job job)
    {
        var points = reach.Points;
        var lengths = new double[points.Length];
        foreach (var ring in points.Select((p, i) => (p, i)).GroupBy(p => p.p.Ring))
        {
            var members = ring.ToArray();
            for (var k = 0; k < members.Length; k++)
            {
                Point2 at = members[k].p.OnPart, before = members[(k + members.Length - 1) % members.Length].p.OnPart, after = members[(k + 1) % members.Length].p.OnPart;
                lengths[members[k].i] = members[k].p.IsEdge ? ((at - before).Length + (after - at).Length) / 2 : job.Support.InteriorStepMm * job.Support.InteriorStepMm / 1000;
            }
        }

        return lengths;
    }

    // Every set of seats: the least length left, the fewest pods that leave no more, and whether all of them keep stock and room.
    private static (double Left, int Pods, bool Any) Best(Job job, PlacementModel model, ReachMap reach, (int Columns, int Rows) shift)
    {
        var lengths = Lengths(reach, job);
        var question = model.Within(1);
        var seats = model.Seats;
        var poses = PodPose.Of(job.Shop, 50);
        var bodies = seats.Select(s => poses[s.Pose].BodyOn(job.Shop.Board, s.Column + shift.Columns, s.Row + shift.Rows)).ToArray();
        // Gaps between rectangles are asked for in both directions of the grid.
        bool Apart(int a, int b) => Math.Max(
            Math.Max(bodies[a].MinX - bodies[b].MaxX, bodies[b].MinX - bodies[a].MaxX),
            Math.Max(bodies[a].MinY - bodies[b].MaxY, bodies[b].MinY - bodies[a].MaxY)) >= job.Shop.PodGapMm - 1e-6;
        var clash = new int[seats.Length];
        for (var a = 0; a < seats.Length; a++)
        {
            for (var b = 0; b < seats.Length; b++)
            {
                clash[a] |= a != b && !Apart(a, b) ? 1 << b : 0;
            }
        }

        int[] supporters = [.. Enumerable.Range(0, reach.Points.Length).Select(p => Enumerable.Range(0, seats.Length).Where(s => question.Supports(s, p)).Sum(s => 1 << s))];
        var best = (Left: double.PositiveInfinity, Pods: 0);
        for (var set = 1; set < 1 << seats.Length; set++)
        {
            var chosen = Enumerable.Range(0, seats.Length).Where(s => (set >> s & 1) == 1).ToArray();
            if (chosen.Any(s => (clash[s] & set) != 0)
                || chosen.GroupBy(s => poses[seats[s].Pose].TypeIndex).Any(g => g.Count() > job.Shop.Pods[g.Key].Stock))
            {
                continue;
            }

            var left = Enumerable.Range(0, supporters.Length).Where(p => (supporters[p] & set) == 0).Sum(p => lengths[p]);
            var pods = BitOperations.PopCount((uint)set);
            if (left < best.Left - 1e-6 || (left < best.Left + 1e-6 && pods < best.Pods))
            {
                best = (left, pods);
            }
        }

        return (best.Left, best.Pods, double.IsFinite(best.Left));
    }

    // Small parts on sparse ports, with little stock: much cannot be had at once.
    private static Job SmallJob(Random random, int i)
    {
        var outline = Shapes.Wavy(70 + 70 * random.NextDouble(), 0.5 + 0.5 * random.NextDouble(), [(2 + random.Next(4), 0.25 * random.NextDouble(), 6 * random.NextDouble())], 30 + random.Next(60));
        var job = Shapes.JobFor(
            new(outline, [], []), Shapes.Board(600, 600, 60 * (1 + random.Next(3))), [Shapes.Pod(60, 60, stock: 1 + random.Next(3)), Shapes.Pod(60, 30, mayTurn: random.Next(2) == 0, stock: 1 + random.Next(3))],
            25 + 30 * random.NextDouble(), 3, new PlacementWish.Given(new(270 + random.Next(60), 270 + random.Next(60)), 15 * random.Next(24)),
            interiorSpanMm: random.Next(3) == 0 ? 70 : null);
        return i % 5 == 0 ? job with { Shop = job.Shop with { PodGapMm = 4 } } : job;
    }
}

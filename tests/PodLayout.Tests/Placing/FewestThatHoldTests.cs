using System.Collections.Immutable;
using Google.OrTools.LinearSolver;
using PodLayout.Geometry;
using PodLayout.Holding;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Placing;
using PodLayout.Seats;
using PodLayout.Shops;
using PodLayout.Support;

namespace PodLayout.Tests.Placing;

/// <summary>The fewest pods that support and hold, held against trying all sets of seats one by one.</summary>
public class FewestThatHoldTests
{
    private const double Target = 2;

    // Inscribed pyramids of 24 facets reach at least cos(7.5 degrees) = .9914 of a round cone: between the two a set is in doubt.
    private const int Facets = 24;
    private const double Doubt = 0.988;

    [Fact]
    public void No_smaller_set_of_seats_supports_and_holds_on_small_boards()
    {
        var random = new Random(21);
        int held = 0, more = 0, none = 0;
        for (var i = 0; held < 110; i++)
        {
            Assert.True(i < 700, $"{held} held, {more} needed more, {none} none.");
            var job = SmallJob(random);
            var seats = Seats(job, out var model);
            if (seats.Length is 0 or > 26)
            {
                continue;
            }

            var supportOnly = PlannedLayoutsTests.Plan(job with
            {
                Part = job.Part with { Loads = CutterLoads.None },
                Support = job.Support with { MustSupportAll = true },
            }).Layout?.Pods.Length;
            var holding = HoldingModel.Of(job, Target)!;
            Frames frames = new(job, ReachMap.Of(job.Part, job.Support), PodPose.Of(job.Shop, 50), null);
            var search = GivenPlacement.Search(job, frames, (PlacementWish.Given)job.Placement, holding, null, TestContext.Current.CancellationToken);
            var ours = search.Best?.Seats.Length;
            // No set with fewer seats than the bound surely holds by pulls; and ours is among those that hold, beyond doubt or in it.
            var fewest = Fewest(job, seats, model, holding.Ground, Math.Min((ours is null && search.ShortBySprings == 0 ? 5 : search.FewestPossible) - 1, 5));
            Assert.True(fewest is null, $"Case {i}: {search.FewestPossible} pods were called the fewest, {fewest} do.");
            if (search.Best is { } best)
            {
                Assert.True(search.FewestPossible == ours || (search.ShortBySprings > 0 && search.FewestPossible < ours));
                Assert.True(IsHeld(best.Seats.Select(s => Pod(job, holding.Ground, model.Frame, s, best.Offset)).ToList(), holding.Ground, Target * Doubt * 0.999));
                held++;
                more += ours > supportOnly ? 1 : 0;
            }
            else if (supportOnly is not null)
            {
                none++;
            }
        }

        // The cases are worth something: many need more pods to hold than to support.
        Assert.InRange(more, 30, 110);
    }

    [Fact]
    public void Over_all_offsets_no_offset_tried_needs_fewer_pods_to_hold()
    {
        var random = new Random(8);
        var (compared, more) = (0, 0);
        for (var i = 0; i < 14; i++)
        {
            var job = SmallJob(random) with { Placement = new PlacementWish.Search([0]) };
            var holding = HoldingModel.Of(job, Target)!;
            var reach = ReachMap.Of(job.Part, job.Support);
            var poses = PodPose.Of(job.Shop, 50);
            var end = new PlacingSearch(job, holding, new Effort(2, null), 0.5, null, null, TestContext.Current.CancellationToken).Run(new(job, reach, poses, holding), [0]);
            if (end.Best is not { } best)
            {
                continue;
            }

            // The same with another aim where choices fall short by springs: never worse, and its bound no more than what is found.
            var firm = FirmSearch.Run(holding, null, (model, toBeat, course) =>
                new PlacingSearch(job, model, new Effort(2, null), 0.5, toBeat, null, TestContext.Current.CancellationToken) { Course = course }.Run(new(job, reach, poses, holding), [0]));
            Assert.True(firm.Best!.Seats.Length <= best.Seats.Length, $"Case {i}: {firm.Best.Seats.Length}, {best.Seats.Length} without another aim.");
            Assert.True(firm.FewestPossible <= firm.Best.Seats.Length && firm.Best.Frame.Holding == holding);
            Assert.True(holding.Bodies.Holds(firm.Best.Frame, firm.Best.Seats, firm.Best.Offset, firm.Best.Columns, firm.Best.Rows));
            (end, best) = (firm, firm.Best);
            compared++;
            var without = new PlacingSearch(job, null, new Effort(2, null), 0.5, null, null, TestContext.Current.CancellationToken).Run(new(job, reach, poses, null), [0]);
            more += without.Best!.Seats.Length < best.Seats.Length ? 1 : 0;
            if (end.ShortBySprings > 0 && end.FewestPossible < best.Seats.Length)
            {
                // More pods than the bound may have been taken: what is compared below holds for the bound alone.
                Assert.True(end.FewestPossible <= best.Seats.Length);
                continue;
            }

            Assert.True(end.FewestPossible == best.Seats.Length, $"Case {i}: bound {end.FewestPossible}, best {best.Seats.Length}.");
            var frame = new PlacingFrame(job, reach, poses, 0, 0) { Holding = holding };
            ImmutableArray<BoardSeats> board = [.. poses.Select(pose => BoardSeats.Of(pose, job.Shop.Board))];
            var ground = SearchGround.Over(frame, board, job, OffsetBox.WholePitch(30));
            foreach (var shift in ground.Classes)
            {
                for (var k = 0; k < 100; k++)
                {
                    var offset = new Point2(k % 10 * 3.0 + 1.1, k / 10 * 3.0 + 0.7);
                    var found = NodeExamination.AtOffset(job, ground, shift, offset, best.Seats.Length - 1, CancellationToken.None);
                    Assert.True(found is null, $"Case {i}: {best.Seats.Length} pods were called the fewest, {found?.Seats.Length} do at {offset}.");
                }
            }
        }

        Assert.InRange(compared, 8, 14);
        Assert.InRange(more, 3, 14);
    }

    private static ImmutableArray<FrameSeat> Seats(Job job, out (PlacingFrame Frame, Point2 Offset) model)
    {
        var poses = PodPose.Of(job.Shop, 50);
        var given = (PlacementWish.Given)job.Placement;
        var frame = new PlacingFrame(job, ReachMap.Of(job.Part, job.Support), poses, given.AngleDeg, 0);
        var (offset, columns, rows) = GivenPlacement.Locate(job, given);
        ImmutableArray<BoardSeats> board = [.. poses.Select(pose => BoardSeats.Of(pose, job.Shop.Board))];
        var ground = SearchGround.At(frame, board, new OffsetBox(offset, 0, 0), columns, rows);
        model = (frame, offset);
        return [.. ground.Seats.Where((s, i) => ground.Classes[0].Available[i] && frame.IsPossible(s, offset))];
    }

    private static int? Fewest(
        Job job, ImmutableArray<FrameSeat> seats, (PlacingFrame Frame, Point2 Offset) model, HoldingGround ground, int atMost)
    {
        PodFace[] faces = [.. seats.Select(s => PodFace.Of(model.Frame.Poses[s.Pose]))];
        Point2[] centres = [.. seats.Select(s => model.Frame.CentreOf(s, model.Offset))];
        var points = model.Frame.Reach.PointCount;
        UInt128[] supports = [.. seats.Select((s, i) => Enumerable.Range(0, points)
            .Where(p => model.Frame.Reach.Share(p, faces[i], centres[i]) <= 1).Aggregate(UInt128.Zero, (bits, p) => bits | UInt128.One << p))];
        var all = (UInt128.One << points) - 1;
        HeldPod[] pods = [.. seats.Select(s => Pod(job, ground, model.Frame, s, model.Offset))];
        foreach (var size in Enumerable.Range(1, Math.Max(0, atMost)))
        {
            foreach (var set in Sets(seats.Length, size))
            {
                var isSet = set.Aggregate(UInt128.Zero, (bits, s) => bits | supports[s]) == all
                    && !set.Any(a => set.Any(b => a < b && Overlap(model.Frame, seats[a], seats[b])));
                if (isSet && IsHeld([.. set.Select(s => pods[s])], ground, Target))
                {
                    return size;
                }
            }
        }

        return null;
    }

    private static bool Overlap(PlacingFrame frame, FrameSeat a, FrameSeat b)
    {
        PodPose one = frame.Poses[a.Pose], other = frame.Poses[b.Pose];
        return a.Column < b.Column + other.Columns && b.Column < a.Column + one.Columns && a.Row < b.Row + other.Rows && b.Row < a.Row + one.Rows;
    }

    private static IEnumerable<int[]> Sets(int count, int size)
    {
        int[] set = [.. Enumerable.Range(0, size)];
        while (size <= count)
        {
            yield return set;
            var at = size - 1;
            while (at >= 0 && set[at] == count - size + at)
            {
                at--;
            }

            if (at < 0)
            {
                yield break;
            }

            set[at]++;
            for (var i = at + 1; i < size; i++)
            {
                set[i] = set[i - 1] + 1;
            }
        }
    }

    // The part at angle 0 lies in the drawing's own axes.
    private static HeldPod Pod(Job job, HoldingGround ground, PlacingFrame frame, FrameSeat seat, Point2 offset)
    {
        var pose = frame.Poses[seat.Pose];
        return new(
            PodGrip.Of(pose.Type, job.Shop.Holding.Friction), frame.CentreOf(seat, offset), Turn.FromDegrees(pose.Turned ? 90 : 0),
            ground.MostKPa(1)[pose.TypeIndex]);
    }

    // By a general linear solver, written down afresh.
    private static bool IsHeld(List<HeldPod> pods, HoldingGround ground, double factor)
    {
        Point2[] spots = [.. pods.SelectMany(p => p.Spots)];
        var centre = ground.CentreOfMass;
        foreach (var (a, b) in spots.SelectMany(a => spots.Where(b => a != b).Select(b => (a, b))))
        {
            // A line with all spots on its left: the centre of mass must lie 5 mm to the left of it.
            var along = (b - a) * (1 / (b - a).Length);
            if (spots.All(s => along.Cross(s - a) >= -1e-9) && along.Cross(centre - a) < 5 - 0.02)
            {
                return false;
            }
        }

        using var solver = Solver.CreateSolver("GLOP");
        var scale = ground.LengthMm;
        var resting = pods.Aggregate(ground.Weight, (sum, p) => sum + p.Pull);
        double[] Six(Wrench w) => [w.Fx, w.Fy, w.Fz, w.Mx / scale, w.My / scale, w.Mz / scale];
        var rows = Six(resting).Select(r => solver.MakeConstraint(-r, -r)).ToArray();
        void Put(Variable v, Wrench w)
        {
            foreach (var (row, amount) in rows.Zip(Six(w)))
            {
                row.SetCoefficient(v, amount);
            }
        }

        foreach (var pod in pods)
        {
            // Friction of all spots of a pod: at most the coefficient times its own pull.
            var cap = solver.MakeConstraint(double.NegativeInfinity, pod.Grip.Friction * pod.PullN);
            foreach (var c in pod.Contacts)
            {
                Put(solver.MakeNumVar(0, double.PositiveInfinity, ""), c.Normal);
                for (var f = 0; f < Facets; f++)
                {
                    var angle = 2 * Math.PI * f / Facets;
                    var push = solver.MakeNumVar(0, double.PositiveInfinity, "");
                    Put(push, c.Normal + c.SlideA * (c.Friction * Math.Cos(angle)) + c.SlideB * (c.Friction * Math.Sin(angle)));
                    cap.SetCoefficient(push, c.Friction);
                }
            }
        }

        return ground.Loads.All(load =>
        {
            foreach (var (row, amount) in rows.Zip(Six(resting + load.Wrench * factor)))
            {
                row.SetBounds(-amount, -amount);
            }

            return solver.Solve() == Solver.ResultStatus.OPTIMAL;
        });
    }

    private static Job SmallJob(Random random)
    {
        var outline = Shapes.Wavy(
            75 + 50 * random.NextDouble(), 0.5 + 0.5 * random.NextDouble(),
            [(2, 0.25 * random.NextDouble(), 6 * random.NextDouble()), (3, 0.2 * random.NextDouble(), 6 * random.NextDouble())], 12);
        var board = Shapes.Board(600, 600, 30);
        PodType Pod(double w, double l, bool turn) =>
            new($"{w}x{l}", new PodFootprint.Rectangle(w, l), 3, 3, 50, turn, 8, 1);
        var points = Enumerable.Range(0, 3 + random.Next(3)).Select(_ =>
        {
            var at = outline.Points[random.Next(outline.Points.Length)];
            double angle = 6.3 * random.NextDouble(), size = 8 + 40 * random.NextDouble();
            ImmutableArray<Force> forces =
            [
                new(size * Math.Cos(angle), size * Math.Sin(angle), 0.4 * size * (random.NextDouble() - 0.2)),
                new(-0.7 * size * Math.Cos(angle), size * Math.Sin(angle), 0),
            ];
            return new PathLoad(at, 30 * random.NextDouble(), forces, 0);
        });
        var loads = new CutterLoads([.. points], [new("profile", "test", 120, 60)], []);
        var shape = new PartShape(outline, [], []);
        return new(
            "small", new Part("small part", shape, 30, "", 0) { Loads = loads },
            new Shop("small shop", board, [Pod(60, 60, false), Pod(60, 30, true)], 0), new Margins(1, 1),
            new SupportRules(60 + 40 * random.NextDouble(), 60 + 40 * random.NextDouble(), null, 25, 30),
            new PlacementWish.Given(new(300 + 30 * random.NextDouble(), 300 + 30 * random.NextDouble()), 0));
    }
}

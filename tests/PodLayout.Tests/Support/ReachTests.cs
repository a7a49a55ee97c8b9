using System.Collections.Immutable;
using FsCheck;
using FsCheck.Fluent;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Placing;
using PodLayout.Seats;
using PodLayout.Shops;
using PodLayout.Support;

namespace PodLayout.Tests.Support;

public class ReachTests
{
    [Fact]
    public void A_pod_under_one_leg_of_a_u_does_not_support_the_other()
    {
        // The legs are 20 mm apart; the limit is 60 mm.
        var shape = new PartShape(
            new([new(0, 0), new(200, 0), new(200, 300), new(110, 300), new(110, 100), new(90, 100), new(90, 300), new(0, 300)]),
            [], []);
        var (reach, face) = ReachOf(shape, 60, 60, 0);
        var other = PointNear(reach, new(110, 250));
        var own = PointNear(reach, new(90, 250));
        var centre = new Point2(45, 250);
        Assert.Equal(double.PositiveInfinity, TurnedOf(reach).Share(other, face, centre));
        Assert.Equal(15.0 / 60, TurnedOf(reach).Share(own, face, centre), 9);
    }

    [Fact]
    public void Around_the_end_of_a_slot_the_way_is_the_sum_of_its_legs()
    {
        // A slot 10 mm wide ends at y = 100; the pod's face ends at x = 75 on one side, the point lies on the other side.
        var shape = new PartShape(
            new([new(0, 0), new(200, 0), new(200, 300), new(105, 300), new(105, 100), new(95, 100), new(95, 300), new(0, 300)]),
            [], []);
        var (reach, face) = ReachOf(shape, 120, 120, 0);
        var point = PointNear(reach, new(105, 130));
        // From (105, 130) straight down to the corner, along the slot's end, then to the face's corner (75, 120 + ...).
        var legs = 30 + 10 + Distance(new(95, 100), new(75, 115));
        Assert.Equal(legs / 120, TurnedOf(reach).Share(point, face, new(45, 145)), 6);
    }

    [Fact]
    public void A_dowels_hole_is_not_in_the_way_and_a_wide_one_is()
    {
        // From the middle of the left edge straight to a pod, across a hole. Limit 60 mm: an eighth of it is 7.5 mm.
        foreach (var (diameter, isInTheWay) in new[] { (7.0, false), (30.0, true) })
        {
            var shape = new PartShape(Shapes.Rectangle(0, 0, 200, 100), [Shapes.Circle(18, 50, diameter / 2, 40)], []);
            var (reach, face) = ReachOf(shape, 60, 60, 0);
            var share = TurnedOf(reach).Share(PointNear(reach, new(0, 50)), face, new(70, 50));
            if (isInTheWay)
            {
                // Over the circle: two tangents and the arc between, to the face at x = 40; the polygon's way is a little more.
                Assert.InRange(share, (40 + 1) / 60.0, 1);
            }
            else
            {
                Assert.Equal(40 / 60.0, share, 6);
            }
        }
    }

    [Fact]
    public void In_a_part_drilled_all_over_every_way_leads_round_the_true_holes()
    {
        // 500 holes of 20 mm: too many corners to bend at all of them, so that the holes are taken for polygons around them.
        var holes = (from x in Enumerable.Range(0, 25) from y in Enumerable.Range(0, 20) select Shapes.Circle(13 + 24 * x, 12 + 24 * y, 10, 64)).ToImmutableArray();
        var (reach, _) = ReachOf(new PartShape(Shapes.Rectangle(0, 0, 602, 480), holes, []), 60, 60, 0);
        var point = PointNear(reach, new(0, 0));
        var bends = reach.Lookouts[point].Skip(1).ToList();
        Assert.NotEmpty(bends);
        Assert.All(bends, l => Assert.All(holes, h => Assert.True(Distance(l.At, h.Bounds.Centre) >= 10 * Math.Cos(Math.PI / 64) - 1e-6)));
        // The first bend is where the tangent from the corner (0, 0) touches the first hole: by Pythagoras, a hair more for the polygon.
        var tangent = Math.Sqrt(13 * 13 + 12 * 12 - 10 * 10);
        Assert.Contains(bends, l => l.Spent * 60 >= tangent - 1.5 && l.Spent * 60 <= tangent + 2.5);
    }

    [Fact]
    public void The_limit_is_an_ellipse_along_the_grain()
    {
        var shape = new PartShape(Shapes.Rectangle(0, 0, 600, 600), [], []);
        var (reach, face) = ReachOf(shape, 100, 40, 30);
        var point = PointNear(reach, new(300, 0));
        // A pod straight above: its face is 45 mm away across X; the nearest point in the ellipse's measure is found by trying.
        var centre = new Point2(320, 75);
        double cos = Math.Cos(Math.PI / 6), sin = Math.Sin(Math.PI / 6), best = double.PositiveInfinity;
        for (var x = centre.X - 30; x <= centre.X + 30; x += 0.01)
        {
            double dx = x - 300, dy = centre.Y - 30;
            best = Math.Min(best, Math.Sqrt(Math.Pow((dx * cos + dy * sin) / 100, 2) + Math.Pow((dy * cos - dx * sin) / 40, 2)));
        }

        Assert.Equal(best > 1 ? double.PositiveInfinity : best, TurnedOf(reach).Share(point, face, centre), 6);
    }

    [Fact]
    public void What_can_be_reached_from_one_place_of_a_box_is_never_ruled_out_for_the_box() => Prop.ForAll(
        Gen.Choose(0, 10_000_000).ToArbitrary(), seed => BoxRulesOutNothing(seed)).Check(
            Config.QuickThrowOnFailure.WithMaxTest(60).WithReplay(new Replay(new Rnd(31, 7), null)));

    [Fact]
    public void A_box_shrunk_to_a_place_gives_the_answer_of_the_place() => Prop.ForAll(
        Gen.Choose(0, 10_000_000).ToArbitrary(),
        seed =>
        {
            var (job, frame) = RandomFrame(seed, 0);
            var offset = new Point2(seed % 30, seed / 30 % 30);
            var spot = new OffsetBox(offset, 0, 0);
            var seats = frame.PossibleSeats(spot);
            var could = Could(frame, seats, spot);
            for (var p = 0; p < could.Length; p++)
            {
                for (var s = 0; s < seats.Length; s++)
                {
                    var share = frame.Reach.Share(p, PodFace.Of(frame.Poses[seats[s].Pose]), frame.CentreOf(seats[s], offset));
                    Assert.Equal(share <= 1, could[p].Contains(s));
                }
            }
        }).Check(Config.QuickThrowOnFailure.WithMaxTest(40).WithReplay(new Replay(new Rnd(77, 5), null)));

    private static void BoxRulesOutNothing(int seed)
    {
        var random = new Random(seed);
        var halfSpan = random.Next(2) == 0 ? 0 : random.NextDouble() * 3;
        var (job, frame) = RandomFrame(seed, halfSpan);
        var box = new OffsetBox(
            new(random.NextDouble() * 30, random.NextDouble() * 30), random.NextDouble() * 15, random.NextDouble() * 15);
        var seats = frame.PossibleSeats(box);
        var could = Could(frame, seats, box);
        for (var sample = 0; sample < 6; sample++)
        {
            var offset = box.Centre + new Point2(
                (2 * random.NextDouble() - 1) * box.HalfXMm, (2 * random.NextDouble() - 1) * box.HalfYMm);
            var angle = frame.AngleDeg + (2 * random.NextDouble() - 1) * halfSpan;
            var exact = new PlacingFrame(job, ReachMap.Of(job.Part, job.Support), frame.Poses, angle, 0);
            foreach (var seat in exact.PossibleSeats(new OffsetBox(offset, 0, 0)))
            {
                var s = seats.IndexOf(seat);
                Assert.True(s >= 0, "A seat of one placement is missing from the box.");
                var face = PodFace.Of(exact.Poses[seat.Pose]);
                for (var p = 0; p < could.Length; p++)
                {
                    if (exact.Reach.Share(p, face, exact.CentreOf(seat, offset)) <= 1)
                    {
                        Assert.Contains(s, could[p]);
                    }
                }
            }
        }
    }

    private static int[][] Could(PlacingFrame frame, ImmutableArray<FrameSeat> seats, OffsetBox box)
    {
        var reach = new BoxReach(frame, seats, box);
        return [.. Enumerable.Range(0, frame.Reach.PointCount).Select(reach.SupportersOf)];
    }

    private static (Job Job, PlacingFrame Frame) RandomFrame(int seed, double halfSpanDeg)
    {
        var random = new Random(seed);
        var outline = Shapes.Wavy(
            110 + 60 * random.NextDouble(), 0.6 + 0.4 * random.NextDouble(),
            [(2, 0.2 * random.NextDouble(), 6 * random.NextDouble()), (3 + random.Next(5), 0.25 * random.NextDouble(), 6 * random.NextDouble())],
            30 + random.Next(100));
        ImmutableArray<Ring> holes = random.Next(2) == 0 ? [] : [Shapes.Circle(10, 5, 15 + 10 * random.NextDouble(), 24)];
        var shape = new PartShape(outline, holes, []);
        var job = Shapes.JobFor(
            shape, Shapes.Board(600, 600), [Shapes.Pod(60, 60), Shapes.Pod(60, 30, mayTurn: true)], 35 + 40 * random.NextDouble(),
            acrossMm: 30 + 20 * random.NextDouble(), grainDeg: random.Next(180), interiorSpanMm: random.Next(2) == 0 ? null : 60);
        var poses = PodPose.Of(job.Shop, 50);
        return (job, new PlacingFrame(job, ReachMap.Of(job.Part, job.Support), poses, random.Next(90), halfSpanDeg));
    }

    private static (ReachMap Reach, PodFace Face) ReachOf(PartShape shape, double along, double across, double grainDeg)
    {
        var part = new Part("test", shape, 30, "", grainDeg);
        return (ReachMap.Of(part, new SupportRules(along, across, null, 10, 30)), PodFace.Of(
            PodPose.Of(new Shop("s", Shapes.Board(600, 600), [Shapes.Pod(60, 60)], 0), 50)[0]));
    }

    private static TurnedReach TurnedOf(ReachMap reach) => new(reach, Turn.None, default);

    private static int PointNear(ReachMap reach, Point2 at)
    {
        var i = Enumerable.Range(0, reach.Points.Length).MinBy(p => Distance(reach.Points[p].OnPart, at));
        Assert.Equal(0, Distance(reach.Points[i].OnPart, at), 6);
        return i;
    }

    private static double Distance(Point2 a, Point2 b) => Math.Sqrt(Math.Pow(a.X - b.X, 2) + Math.Pow(a.Y - b.Y, 2));
}

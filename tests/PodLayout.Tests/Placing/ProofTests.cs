using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Placing;
using PodLayout.Seats;
using PodLayout.Shops;
using PodLayout.Support;

namespace PodLayout.Tests.Placing;

/// <summary>The proof over all offsets, held against trying offsets one by one.</summary>
public class ProofTests
{
    [Fact]
    public void No_offset_tried_at_a_quarter_millimetre_has_fewer_pods_than_were_proven_needed()
    {
        // Small boards of 5 mm pitch, so that a quarter of a millimetre is 400 offsets to the pitch square. In a third of the
        // cases ports stand two pitches apart, and the whole period of the ports is tried.
        var random = new Random(4);
        var (withLayout, better) = (0, 0);
        for (var i = 0; i < 210; i++)
        {
            var periods = i % 3 == 0 ? 2 : 1;
            var job = SmallJob(random, 5 * periods);
            var reach = ReachMap.Of(job.Part, job.Support);
            var poses = PodPose.Of(job.Shop, 50);
            var search = new PlacingSearch(job, null, new Effort(2, null), 0.02, null, null, TestContext.Current.CancellationToken);
            var end = search.Run(new(job, reach, poses, null), [20 * (i % 4)]);
            var best = end.Best?.Seats.Length;
            var (tried, first) = Exhaust(job, reach, poses, 20 * (i % 4), periods, (best ?? 99) - 1);
            Assert.True(tried is null, $"Case {i}: {best} pods were called the fewest, {tried} do at {first}.");
            withLayout += best is null ? 0 : 1;
            // How often 36 offsets would have missed the fewest: the search must be worth something.
            better += best is not null && Exhaust(job, reach, poses, 20 * (i % 4), periods, best.Value, 5.0 / 3).Pods is null ? 1 : 0;
            Assert.True(best is null || end.FewestPossible == best, $"Case {i}: bound {end.FewestPossible}, best {best}.");
        }

        Assert.InRange(withLayout, 100, 210);
        Assert.InRange(better, 5, 210);
    }

    [Fact]
    public void A_strip_that_fits_a_pod_only_within_a_hundredth_of_a_millimetre_is_found()
    {
        // 120 mm between the margins, for pods of 120 mm: one offset across, any along.
        var shape = new PartShape(Shapes.Rectangle(3.7, 11.2, 600, 126), [], []);
        var result = PlannedLayoutsTests.Plan(Shapes.JobFor(shape, Shapes.Board(1200, 600), [Shapes.Pod(120, 120)], 60));
        Assert.NotNull(result.Layout);
        // Pods of 120 mm with 60 mm of overhang at each end and 120 mm between: 600 = 60 + 120 + 120 + 120 + 120 + 60.
        Assert.Equal(3, result.Layout.Pods.Length);
        Assert.Equal(3, result.Layout.Proof.FewestPodsPossible);
    }

    [Theory]
    [InlineData(240, 240, 4)]
    [InlineData(360, 120, 3)]
    [InlineData(120, 120, 1)]
    public void A_rectangle_of_whole_pods_without_overhang_takes_as_many_as_fit(double width, double height, int pods)
    {
        var shape = new PartShape(Shapes.Rectangle(1.3, -2.1, width, height), [], []);
        // A limit of a millimetre: every edge point must be over a pod.
        var job = Shapes.JobFor(shape, Shapes.Board(900, 900), [Shapes.Pod(120, 120)], 1, marginMm: 0);
        var result = PlannedLayoutsTests.Plan(job);
        Assert.NotNull(result.Layout);
        Assert.Equal(pods, result.Layout.Pods.Length);
    }

    [Fact]
    public void A_part_turned_by_a_quarter_needs_as_many_pods()
    {
        var random = new Random(9);
        for (var i = 0; i < 8; i++)
        {
            var shape = new PartShape(
                Shapes.Wavy(170 + 60 * random.NextDouble(), 0.7, [(2, 0.2, random.NextDouble()), (3, 0.1, 1)], 60), [], []);
            // A port in every cell, so that the board looks the same in all quarters.
            var job = Shapes.JobFor(
                shape, Shapes.Board(900, 900, 30), [Shapes.Pod(120, 120), Shapes.Pod(120, 60, mayTurn: true)], 60);
            int?[] counts = [.. new double[] { 0, 90, 180, 270 }.Select(angle =>
                PlannedLayoutsTests.Plan(job with { Placement = new PlacementWish.Search([angle]) }).Layout?.Pods.Length)];
            Assert.Single(counts.Distinct());
        }
    }

    [Fact]
    public void A_disc_needs_as_many_pods_at_any_angle()
    {
        var job = Shapes.JobFor(
            new(Shapes.Circle(0, 0, 210, 360), [], []), Shapes.Board(900, 900, 30), [Shapes.Pod(120, 120), Shapes.Pod(60, 60)], 70);
        int?[] counts = [.. new double[] { 0, 7, 31, 45 }.Select(angle =>
            PlannedLayoutsTests.Plan(job with { Placement = new PlacementWish.Search([angle]) }).Layout?.Pods.Length)];
        Assert.Single(counts.Distinct());
        Assert.NotNull(counts[0]);
    }

    [Fact]
    public void Points_no_two_of_which_can_share_a_pod_bound_the_layouts_of_samples_without_a_solver()
    {
        // At the place of each layout. The bound is the answer itself nearly every time: a certificate that anybody can check. Points
        // are picked one by one, so that a larger set may be missed: at most once here.
        var tight = 0;
        Job[] jobs =
        [
            .. new[] { "kidney-table", "u-yoke", "crest-rail", "chair-seat" }.Select(PlannedLayoutsTests.SampleJob),
            PlannedLayoutsTests.Oval(new PlacementWish.Search([0])),
        ];
        foreach (var job in jobs)
        {
            var layout = PlannedLayoutsTests.Plan(job).Layout!;
            var given = new PlacementWish.Given(layout.Placement.ZeroOnBoard, layout.Placement.AngleDeg);
            var poses = PodPose.Of(job.Shop, layout.Pods[0].Type.HeightMm);
            var frame = new PlacingFrame(job, ReachMap.Of(job.Part, job.Support), poses, 0, 0);
            var (offset, columns, rows) = GivenPlacement.Locate(job, given);
            ImmutableArray<BoardSeats> board = [.. poses.Select(pose => BoardSeats.Of(pose, job.Shop.Board))];
            var ground = SearchGround.At(frame, board, new OffsetBox(offset, 0, 0), columns, rows);
            var question = PlacementModel.At(job, ground, ground.Classes[0], offset).Within(1);
            ImmutableArray<int[]> supporters = [.. Enumerable.Range(0, question.PointCount).Select(question.SupportersOf)];
            var apart = PodLayout.Choice.DisjointPoints.Of(supporters, question.SeatCount).Length;
            Assert.InRange(apart, 1, layout.Pods.Length);
            tight += apart == layout.Pods.Length ? 1 : 0;
            TestContext.Current.TestOutputHelper?.WriteLine($"{job.Name}: {apart} of {layout.Pods.Length}");
        }

        Assert.InRange(tight, jobs.Length - 1, jobs.Length);
    }

    private static (int? Pods, Point2 Offset) Exhaust(
        Job job, ReachMap reach, ImmutableArray<PodPose> poses, double angleDeg, int periods, int atMost, double step = 0.25)
    {
        var frame = new PlacingFrame(job, reach, poses, angleDeg, 0);
        ImmutableArray<BoardSeats> board = [.. poses.Select(pose => BoardSeats.Of(pose, job.Shop.Board))];
        var pitch = job.Shop.Board.PitchMm;
        var count = (int)Math.Round(pitch / step);
        for (var period = 0; period < periods * periods; period++)
        {
            // Near the middle of the board, where its edges do not matter.
            int columns = 12 + period % periods, rows = 12 + period / periods;
            var ground = SearchGround.Over(frame, board, job, OffsetBox.WholePitch(pitch));
            bool[] available = [.. ground.Seats.Select(s => board[s.Pose].Allows(s.Column + columns, s.Row + rows))];
            var shift = new ShiftClass(columns, rows, available);
            for (var k = 0; k < count * count; k++)
            {
                var offset = new Point2(k % count * step, k / count * step);
                if (NodeExamination.AtOffset(job, ground, shift, offset, atMost, CancellationToken.None) is { } found)
                {
                    return (found.Seats.Length, offset);
                }
            }
        }

        return (null, default);
    }

    private static Job SmallJob(Random random, double portSpacing)
    {
        var outline = Shapes.Wavy(
            20 + 12 * random.NextDouble(), 0.5 + 0.5 * random.NextDouble(),
            [(2, 0.25 * random.NextDouble(), 6 * random.NextDouble()), (3, 0.2 * random.NextDouble(), 6 * random.NextDouble())],
            16 + random.Next(20));
        var ports = from row in Enumerable.Range(0, (int)(120 / portSpacing))
                    from column in Enumerable.Range(0, (int)(120 / portSpacing))
                    select new Port("", new(2.5 + column * portSpacing, 2.5 + row * portSpacing), PortState.Working);
        var board = new GridBoard("small", 120, 120, 5, 1, 1, default, new(0, 0, 120, 120), [.. ports], 1, 0.2, []);
        PodType Pod(double w, double l, bool turn) =>
            new($"{w}x{l}", new PodFootprint.Rectangle(w, l), 0.5, 0.5, 50, turn, 30, 1);
        var shop = new Shop("small shop", board, [Pod(15, 15, false), Pod(15, 10, true)], 0);
        return new(
            "small", new Part("small part", new(outline, [], []), 20, "", random.Next(180)), shop, new Margins(0.5, 0.5),
            new SupportRules(7 + 5 * random.NextDouble(), 6 + 4 * random.NextDouble(), null, 3, 5), new PlacementWish.Search([0]));
    }
}

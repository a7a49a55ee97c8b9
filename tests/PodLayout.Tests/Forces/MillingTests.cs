using FsCheck;
using FsCheck.Fluent;
using PodLayout.Forces;
using PodLayout.Geometry;
using PodLayout.Woods;

namespace PodLayout.Tests.Forces;

public class MillingTests
{
    private static readonly Config Fixed = Config.QuickThrowOnFailure.WithReplay(20261125, 11, 0).WithMaxTest(150);

    // Power is force times speed, and also the chip volume of a minute times the specific cutting force: 12 mm, 2 edges,
    // 18000 rpm, 6 m/min, 10 mm deep, 6 mm wide at 30 N/mm2. Chip 0.1667 mm, 11.31 m/s, 180 W; so the mean force along the cut is
    // 15.9 N, and its peak, where the chip is thickest, 50 N.
    [Fact]
    public void The_peak_is_that_of_the_cut_whose_mean_the_power_tells()
    {
        Engagement half = new(12, 2, 6000.0 / 18_000 / 2, 0, 6);
        Assert.Equal(0.1667, half.ThickestChipMm, 0.0001);
        var peak = 10 * Milling.Forces([half], [new(1, 0)], new(1, 0), CuttingWork.Measured(30)).TangentialN;
        Assert.Equal(50, peak, 0.05);

        // A quarter turn of each of two edges in the wood: the mean over a sine's quarter is 2/pi of its peak.
        var mean = peak * (2 / Math.PI) * (2 * 0.25);
        Assert.Equal(180, mean * Math.PI * 0.012 * 300, 0.5);
        Assert.Equal(30 * 10 * 6 * 6000 / 60.0 / 1000, mean * Math.PI * 0.012 * 300, 0.5);
    }

    [Fact]
    public void Climb_pulls_the_part_against_the_feed_and_conventional_pushes_it_along()
    {
        Point2 feed = new(0, 1);
        var (conventional, climb) = (Corners(new(12, 2, 0.1, 5, 6), feed), Corners(new(12, 2, 0.1, -6, -5), feed));
        // But for a hair, since corners lie around what may happen.
        var hair = 0.02 * conventional.Max(f => f.Length);
        Assert.All(conventional, f => Assert.True(f.Y > -hair));
        Assert.All(climb, f => Assert.True(f.Y < hair));
        Assert.True(conventional.Max(f => f.Y) > 20 * hair && climb.Min(f => f.Y) < -20 * hair);
    }

    [Fact]
    public void Across_the_grain_the_force_is_up_to_three_times_that_along_it()
    {
        var work = CuttingWork.Of(Wood.Of(WoodTable.Find("hard maple")!), 0.1);
        // A hair of wood at the side: the tooth moves along the feed.
        Engagement side = new(12, 1, 0.1, 5.99, 6);
        var (along, across) = (Milling.Forces([side], [new(1, 0)], new(1, 0), work), Milling.Forces([side], [new(1, 0)], new(0, 1), work));
        Assert.Equal(3, across.PeakN / along.PeakN, 0.05);
        Assert.Equal(2, across.LeastPeakN / along.LeastPeakN, 0.05);
    }

    // Particleboard of about 650 kg/m3: 32.0 and 37.6 N/mm2, Palubicki, Materials 14:2208 (2021).
    [Fact]
    public void Published_values_for_particleboard_lie_within_the_band_of_a_board_as_dense()
    {
        var work = CuttingWork.Of(Wood.Of(WoodTable.Find("MDF")!).WithDensity(650) with { Kind = WoodKind.Fibreboard }, 0.1);
        Assert.InRange(32.0, work.Least, work.Most);
        Assert.InRange(37.6, work.Least, work.Most);
    }

    [Fact]
    public void The_band_of_the_estimate_is_wider_than_one_to_two() =>
        Assert.All(WoodTable.All, w => Assert.True(CuttingWork.Of(Wood.Of(w), 0.1) is var c && c.Most > 2 * c.Least));

    [Fact]
    public void No_force_of_any_tooth_at_any_moment_lies_outside_the_corners() => Prop.ForAll(Cuts(), c =>
    {
        var corners = ForceHull.Hull([default, .. Milling.Forces([c.Cut], [c.Feed], c.Grain, c.Work).Corners]);
        var random = new System.Random(c.Seed);
        for (var i = 0; i < 40; i++)
        {
            var force = AtSomeMoment(c.Cut, c.Feed, c.Grain, c.Work, random);
            Assert.True(Inside(corners, force), $"{force} N/mm");
        }
    }).Check(Fixed);

    // The model's own words, straight: each edge by itself, at a random turn of the cutter, pushing or pulling as it likes.
    private static Point2 AtSomeMoment(Engagement cut, Point2 feed, Point2 grain, CuttingWork work, System.Random random)
    {
        Point2 sum = default;
        var turned = 2 * Math.PI * random.NextDouble();
        for (var edge = 0; edge < cut.Flutes; edge++)
        {
            var angle = turned - 2 * Math.PI * edge / cut.Flutes;
            // Clockwise from above: where the edge is, and where it moves.
            Point2 at = new(Math.Cos(angle), Math.Sin(angle)), moves = new(Math.Sin(angle), -Math.Cos(angle));
            var beside = at.Dot(new(-feed.Y, feed.X)) * cut.DiameterMm / 2;
            var chip = cut.ChipMm * at.Dot(feed);
            if (chip > 0 && beside >= cut.FromMm && beside <= cut.ToMm)
            {
                var sine = moves.Cross(grain);
                var force = chip * work.Most * (1 + (work.EndGrainMost - 1) * sine * sine);
                sum += moves * force + at * (force * (-0.3 + 0.9 * random.NextDouble()));
            }
        }

        return sum;
    }

    private static bool Inside(List<Point2> hull, Point2 p)
    {
        var size = hull.Max(h => h.Length);
        return Enumerable.Range(0, hull.Count).All(i =>
        {
            var along = hull[(i + 1) % hull.Count] - hull[i];
            return along.Cross(p - hull[i]) >= -0.002 * size * along.Length;
        });
    }

    private static System.Collections.Immutable.ImmutableArray<Point2> Corners(Engagement cut, Point2 feed) =>
        Milling.Forces([cut], [feed], new(1, 0), CuttingWork.Measured(30)).Corners;

    private static Arbitrary<(Engagement Cut, Point2 Feed, Point2 Grain, CuttingWork Work, int Seed)> Cuts() => Arb.From(
        from flutes in Gen.Choose(1, 4)
        from width in Gen.Choose(5, 100)
        from left in Gen.Choose(0, 1)
        from feed in Gen.Choose(0, 359)
        from grain in Gen.Choose(0, 179)
        from seed in Gen.Choose(0, 1_000_000)
        let wide = 12 * width / 100.0
        select (
            left == 1 ? new Engagement(12, flutes, 0.15, 6 - wide, 6) : new Engagement(12, flutes, 0.15, -6, wide - 6),
            Turn.FromDegrees(feed).Apply(new(1, 0)),
            Turn.FromDegrees(grain).Apply(new(1, 0)),
            new CuttingWork(10, 30, 2, 3),
            seed));
}

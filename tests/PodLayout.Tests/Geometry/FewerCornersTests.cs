using FsCheck;
using FsCheck.Fluent;
using PodLayout.Geometry;

namespace PodLayout.Tests.Geometry;

public sealed class FewerCornersTests
{
    private const double ByMm = 0.01;

    [Fact]
    public void Outward_nothing_is_lost_and_the_edge_reaches_at_most_twice_the_distance() => Prop.ForAll(Curves, curve =>
    {
        var simple = curve.SimplifiedOutward(ByMm);
        Assert.True(curve.Minus(simple).AreaMm2 < 1e-6);
        Assert.True(simple.Minus(curve.Grow(2 * ByMm)).AreaMm2 < 1e-6);
    }).QuickCheckThrowOnFailure();

    [Fact]
    public void Inward_nothing_is_added_and_the_edge_draws_back_by_at_most_twice_the_distance() => Prop.ForAll(Curves, curve =>
    {
        var simple = curve.SimplifiedInward(ByMm);
        Assert.True(simple.Minus(curve).AreaMm2 < 1e-6);
        Assert.True(curve.Shrink(2 * ByMm).Minus(simple).AreaMm2 < 1e-6);
    }).QuickCheckThrowOnFailure();

    [Theory]
    [InlineData(4)]
    [InlineData(10)]
    [InlineData(400)]
    public void A_disc_comes_down_to_about_the_chords_that_its_tolerance_needs(double radiusMm)
    {
        var disc = Region.AlongPath([new(3, 5)], radiusMm);
        // Chords that touch the circle and meet at most 0.02 mm beyond it: n = pi / acos(r / (r + 0.02)). Halving may miss that by
        // a factor of two.
        var needed = Math.PI / Math.Acos(radiusMm / (radiusMm + 2 * ByMm));
        var corners = disc.SimplifiedOutward(ByMm).Boundary.Single().Points.Length;
        Assert.InRange(corners, needed * 0.9, needed * 2.2);
        Assert.True(disc.Boundary.Single().Points.Length > 3 * corners);
    }

    [Fact]
    public void Discs_that_meet_when_grown_are_one_piece_again()
    {
        var two = Region.UnionOf([Region.AlongPath([new(0, 0)], 5), Region.AlongPath([new(10.005, 0)], 5)]);
        Assert.Equal(2, two.Pieces.Length);
        var simple = two.SimplifiedOutward(ByMm);
        Assert.True(two.Minus(simple).AreaMm2 < 1e-9);
        Assert.Equal(simple.AreaMm2, simple.Pieces.Sum(p => p.AreaMm2), 9);
    }

    [Fact]
    public void A_slit_narrower_than_the_distance_may_close_but_nothing_is_lost()
    {
        // A long slit of 0.004 mm with round ends: its sides would cross when they grow.
        var slit = Region.AlongPath([new(0, 0), new(50, 0)], 0.002);
        var plate = Region.AlongPath([new(-20, 0), new(70, 0)], 30).Minus(slit);
        var simple = plate.SimplifiedOutward(ByMm);
        Assert.True(plate.Minus(simple).AreaMm2 < 1e-9);
        Assert.True(simple.Minus(Region.AlongPath([new(-20, 0), new(70, 0)], 30.03)).AreaMm2 < 1e-9);
    }

    [Fact]
    public void Only_pieces_near_a_box_are_kept()
    {
        var discs = Region.UnionOf(Enumerable.Range(0, 40).Select(i => Region.AlongPath([new(20 * i, 0)], 4)));
        var near = discs.Near(new Box2(95, -1, 125, 1));
        Assert.Equal([100.0, 120.0], near.Pieces.Select(p => Math.Round(p.Bounds.Centre.X, 6)).Order());
    }

    // Rings like flowers, with a hole like a flower or a circle, near zero and far from it; some finely drawn, some coarsely.
    private static Arbitrary<Region> Curves => (
        from seed in Gen.Choose(1, 1_000_000)
        from corners in Gen.Elements(7, 40, 300, 1500)
        select Curve(new Random(seed), corners)).ToArbitrary();

    private static Region Curve(Random random, int corners)
    {
        Point2 centre = new(3000 * random.NextDouble() - 1000, 3000 * random.NextDouble() - 1000);
        return Region.Inside(Flower(40, 30), Flower(8, 5));

        Ring Flower(double radius, double wave)
        {
            int lobes = random.Next(2, 7), small = random.Next(8, 30);
            double a = wave * random.NextDouble(), b = 0.1 * wave * random.NextDouble(), start = 6 * random.NextDouble();
            return new([.. Enumerable.Range(0, corners).Select(i =>
            {
                var t = 2 * Math.PI * i / corners;
                var r = radius + a / 2 * Math.Sin(lobes * t + start) + b * Math.Cos(small * t);
                return centre + new Point2(r * Math.Cos(t), r * Math.Sin(t));
            })]);
        }
    }
}

using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Jobs;

namespace PodLayout.Tests.Independent;

/// <summary>Paths whose length follows from elementary geometry.</summary>
public class WoodPathsTests
{
    // A yoke: legs 100 wide from x = 0 and x = 200, joined below y = 100.
    private static readonly ImmutableArray<Point2> Yoke =
        [new(0, 0), new(300, 0), new(300, 400), new(200, 400), new(200, 100), new(100, 100), new(100, 400), new(0, 400)];

    [Fact]
    public void A_pod_in_the_other_leg_is_reached_round_the_bottom_of_the_gap()
    {
        var paths = new WoodPaths([Yoke], 100, 100, 0);
        var pod = new Stand(250, 250, 30, 30, false).Polygon();

        // (80, 160) to (100, 100), along the bottom to (200, 100), up to the pod's corner (220, 220).
        var expected = (Math.Sqrt(20 * 20 + 60 * 60) + 100 + Math.Sqrt(20 * 20 + 120 * 120)) / 100;
        Assert.Equal(expected, paths.ShareOfLimit(new(80, 160), [pod]), 1e-9);
    }

    [Fact]
    public void The_way_round_a_hole_is_two_tangents_and_an_arc()
    {
        var paths = new WoodPaths(
            [HandMade.Rectangle(-200, -200, 200, 200).Points, HandMade.Circle(0, 0, 50, 180).Points], 100, 100, 0);
        var pod = new Stand(110, 0, 10, 0.001, false).Polygon();

        // From (-100, 0) to (100, 0) round a circle of radius 50: tangents of sqrt(100² - 50²), arc of 180 - 2 * 60 degrees.
        var expected = (2 * Math.Sqrt(7500) + 50 * Math.PI / 3) / 100;
        Assert.Equal(expected, paths.ShareOfLimit(new(-100, 0), [pod]), 1e-3);
    }

    [Fact]
    public void The_limit_is_an_ellipse_turned_to_the_grain()
    {
        var paths = new WoodPaths([HandMade.Rectangle(-500, -500, 500, 500).Points], 200, 50, 30);
        var pod = new Stand(0, 0, 1e-6, 1e-6, false).Polygon();
        var (sin, cos) = Math.SinCos(Math.PI / 6);
        Assert.Equal(0.5, paths.ShareOfLimit(new(100 * cos, 100 * sin), [pod]), 1e-6);
        Assert.Equal(2, paths.ShareOfLimit(new(-100 * sin, 100 * cos), [pod]), 1e-6);
    }

    [Fact]
    public void A_round_pod_is_reached_at_its_rim()
    {
        var paths = new WoodPaths([HandMade.Rectangle(-500, -500, 500, 500).Points], 100, 100, 0);
        Assert.Equal(0.5, paths.ShareOfLimit(new(66, 88), [new Stand(0, 0, 60, 60, true).Polygon()]), 1e-4);
    }

    [Fact]
    public void Edge_points_stand_at_equal_steps_between_corners()
    {
        var points = PointsToSupport.OnEdges(new(HandMade.Rectangle(0, 0, 100, 45), [], []), 10);

        // Ten steps along each long side; 45 mm needs five steps of 9 mm.
        Assert.Equal(2 * 10 + 2 * 5, points.Count);
        Assert.Contains(new(100, 9), points);
    }

    [Fact]
    public void Interior_points_stand_on_multiples_of_the_step_strictly_inside()
    {
        var shape = new Parts.PartShape(HandMade.Rectangle(0, 0, 100, 100), [HandMade.Circle(50, 50, 10)], []);
        var points = PointsToSupport.Inside(shape, new SupportRules(1, 1, 1, 10, 25));

        // 3 x 3 inside; the middle one lies in the hole.
        Assert.Equal(8, points.Count);
    }
}

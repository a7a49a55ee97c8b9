using PodLayout.Floors;
using PodLayout.Geometry;

namespace PodLayout.Tests.Floors;

/// <summary>How wide a floor is: the largest disc within it, by elementary geometry, and a tenth of a millimetre more at most.</summary>
public class FloorSizeTests
{
    [Fact]
    public void A_rectangle_is_as_wide_as_its_short_side() => Width(Shapes.Rectangle(10, 20, 100, 40), 40);

    [Fact]
    public void A_triangle_is_as_wide_as_the_circle_within_it()
    {
        // 3-4-5: the radius of the circle within is (a + b - c) / 2.
        Width(new([new(0, 0), new(40, 0), new(0, 30)]), 20);
    }

    [Fact]
    public void An_angle_is_as_wide_as_the_disc_in_its_corner()
    {
        // Two legs of 20 mm: the disc touches both outer sides and the inner corner, r = 20 / (1 + 1 / sqrt 2) = (2 - sqrt 2) 20.
        Width(new([new(0, 0), new(100, 0), new(100, 20), new(20, 20), new(20, 100), new(0, 100)]), 2 * (2 - Math.Sqrt(2)) * 20);
    }

    [Fact]
    public void A_ring_is_as_wide_as_its_wood()
    {
        var ring = Region.Inside(Shapes.Circle(0, 0, 60, 720), [Shapes.Circle(0, 0, 45, 720)]);
        Assert.InRange(FloorSize.WidthMm(ring, 200), 15 - 1e-3, 15 + 0.11);
    }

    [Fact]
    public void Wider_than_asked_for_is_not_told_apart() =>
        Assert.Equal(90, FloorSize.WidthMm(Region.Inside(Shapes.Rectangle(0, 0, 300, 200)), 90));

    private static void Width(Ring ring, double widthMm) =>
        Assert.InRange(FloorSize.WidthMm(Region.Inside(ring), 1000), widthMm - 1e-6, widthMm + 0.11);
}

using PodLayout.Geometry;

namespace PodLayout.Tests;

/// <summary>Slow and plain geometry that tests hold the product's against.</summary>
internal static class Naive
{
    /// <summary>
    /// How far a box lies inside a ring: the distance from its rim to the ring when it is wholly inside; negative when the ring
    /// crosses it or it lies outside.
    /// </summary>
    public static double SignedGap(Ring ring, Box2 box)
    {
        Point2[] corners = [new(box.MinX, box.MinY), new(box.MaxX, box.MinY), new(box.MaxX, box.MaxY), new(box.MinX, box.MaxY)];
        var gap = double.PositiveInfinity;
        var crosses = false;
        for (var i = 0; i < ring.Points.Length; i++)
        {
            Point2 a = ring.Points[i], b = ring.Points[(i + 1) % ring.Points.Length];
            crosses |= box.Contains(a);
            for (var k = 0; k < 4; k++)
            {
                Point2 c = corners[k], d = corners[(k + 1) % 4];
                gap = Math.Min(gap, SegmentDistance(a, b, c, d));
                crosses |= SegmentsCross(a, b, c, d);
            }
        }

        return crosses || !IsInside(ring, corners[0]) ? -gap - 1e-3 : gap;
    }

    /// <summary>Winding by angles: slow, and shares nothing with a ray cast.</summary>
    public static bool IsInside(Ring ring, Point2 p)
    {
        double sum = 0;
        for (var i = 0; i < ring.Points.Length; i++)
        {
            Point2 a = ring.Points[i] - p, b = ring.Points[(i + 1) % ring.Points.Length] - p;
            sum += Math.Atan2(a.X * b.Y - a.Y * b.X, a.X * b.X + a.Y * b.Y);
        }

        return Math.Abs(sum) > Math.PI;
    }

    public static bool SegmentsCross(Point2 a, Point2 b, Point2 c, Point2 d)
    {
        double o1 = Orient(a, b, c), o2 = Orient(a, b, d), o3 = Orient(c, d, a), o4 = Orient(c, d, b);
        return o1 * o2 < 0 && o3 * o4 < 0;
    }

    public static double PointDistance(Point2 p, Point2 a, Point2 b)
    {
        double dx = b.X - a.X, dy = b.Y - a.Y, whole = dx * dx + dy * dy;
        var t = whole == 0 ? 0 : Math.Clamp(((p.X - a.X) * dx + (p.Y - a.Y) * dy) / whole, 0, 1);
        return Math.Sqrt(Math.Pow(p.X - a.X - t * dx, 2) + Math.Pow(p.Y - a.Y - t * dy, 2));
    }

    private static double SegmentDistance(Point2 a, Point2 b, Point2 c, Point2 d) => SegmentsCross(a, b, c, d) ? 0
        : Math.Min(Math.Min(PointDistance(a, c, d), PointDistance(b, c, d)), Math.Min(PointDistance(c, a, b), PointDistance(d, a, b)));

    private static double Orient(Point2 a, Point2 b, Point2 c) => (b.X - a.X) * (c.Y - a.Y) - (b.Y - a.Y) * (c.X - a.X);
}

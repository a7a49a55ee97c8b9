using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Tests.Independent;

/// <summary>Plane geometry of the checker's own: only the coordinates of the model's points are used.</summary>
public static class Plane
{
    public static double Span(Point2 a, Point2 b) => Math.Sqrt((a.X - b.X) * (a.X - b.X) + (a.Y - b.Y) * (a.Y - b.Y));

    /// <summary>Turned about the origin, then moved.</summary>
    public static Point2 Lay(Point2 p, double angleDeg, Point2 move)
    {
        var (sin, cos) = Math.SinCos(angleDeg / 180 * Math.PI);
        return new(p.X * cos - p.Y * sin + move.X, p.X * sin + p.Y * cos + move.Y);
    }

    public static ImmutableArray<Point2> Lay(ImmutableArray<Point2> ring, double angleDeg, Point2 move) =>
        [.. ring.Select(p => Lay(p, angleDeg, move))];

    public static Point2 NearestOnSegment(Point2 a, Point2 b, Point2 p)
    {
        double dx = b.X - a.X, dy = b.Y - a.Y, square = dx * dx + dy * dy;
        var t = square == 0 ? 0 : Math.Clamp(((p.X - a.X) * dx + (p.Y - a.Y) * dy) / square, 0, 1);
        return new(a.X + t * dx, a.Y + t * dy);
    }

    public static double PointToSegment(Point2 a, Point2 b, Point2 p) => Span(NearestOnSegment(a, b, p), p);

    /// <summary>Distance of two segments that do not cross.</summary>
    public static double SegmentToSegment(Point2 a, Point2 b, Point2 c, Point2 d) => Math.Min(
        Math.Min(PointToSegment(a, b, c), PointToSegment(a, b, d)), Math.Min(PointToSegment(c, d, a), PointToSegment(c, d, b)));

    public static double PointToRing(ImmutableArray<Point2> ring, Point2 p)
    {
        var nearest = double.PositiveInfinity;
        for (var i = 0; i < ring.Length; i++)
        {
            nearest = Math.Min(nearest, PointToSegment(ring[i], ring[(i + 1) % ring.Length], p));
        }

        return nearest;
    }

    /// <summary>By the winding of the ring about the point.</summary>
    public static bool IsInside(ImmutableArray<Point2> ring, Point2 p)
    {
        var winding = 0;
        for (var i = 0; i < ring.Length; i++)
        {
            Point2 a = ring[i], b = ring[(i + 1) % ring.Length];
            var side = (b.X - a.X) * (p.Y - a.Y) - (p.X - a.X) * (b.Y - a.Y);
            if (a.Y <= p.Y && b.Y > p.Y && side > 0)
            {
                winding++;
            }
            else if (a.Y > p.Y && b.Y <= p.Y && side < 0)
            {
                winding--;
            }
        }

        return winding != 0;
    }
}

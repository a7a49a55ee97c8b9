using PodLayout.Geometry;

namespace PodLayout.Reading.Rings;

/// <summary>How rings that do not cross lie to each other.</summary>
internal static class Containment
{
    /// <summary>Vertices compared when two rings look alike.</summary>
    private const int MostCompared = 200;

    /// <summary>Whether a ring lies inside another; the two must not cross.</summary>
    public static bool IsInside(Ring inner, Ring outer) =>
        outer.Bounds.Contains(inner.Bounds) && Contains(outer, inner.Points[0]);

    private static bool Contains(Ring ring, Point2 p)
    {
        var inside = false;
        for (var i = 0; i < ring.Points.Length; i++)
        {
            Point2 a = ring.Points[i], b = ring.Points[(i + 1) % ring.Points.Length];
            if ((a.Y > p.Y) != (b.Y > p.Y) && ((b - a).Cross(p - a) > 0) == (b.Y > a.Y))
                inside = !inside;
        }

        return inside;
    }

    /// <summary>Whether two rings are the same line within what chords may differ.</summary>
    public static bool IsSame(Ring a, Ring b)
    {
        const double near = 3 * Tolerances.ChordMm;
        if (Math.Abs(a.AreaMm2 - b.AreaMm2) > near * a.PerimeterMm)
            return false;
        Box2 p = a.Bounds, q = b.Bounds;
        if (Math.Abs(p.MinX - q.MinX) > near || Math.Abs(p.MaxX - q.MaxX) > near || Math.Abs(p.MinY - q.MinY) > near || Math.Abs(p.MaxY - q.MaxY) > near)
            return false;
        var step = Math.Max(1, a.Points.Length / MostCompared);
        for (var i = 0; i < a.Points.Length; i += step)
        {
            if (DistanceTo(b, a.Points[i]) > near)
                return false;
        }

        return true;
    }

    private static double DistanceTo(Ring ring, Point2 p)
    {
        var best = double.PositiveInfinity;
        for (var i = 0; i < ring.Points.Length; i++)
        {
            Point2 a = ring.Points[i], along = ring.Points[(i + 1) % ring.Points.Length] - a;
            var squared = along.Dot(along);
            var t = squared > 0 ? Math.Clamp((p - a).Dot(along) / squared, 0, 1) : 0;
            best = Math.Min(best, (p - a - along * t).Length);
        }

        return best;
    }
}

using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using PodLayout.Geometry;

namespace PodLayout.Support;

/// <summary>Whether edges of the part hide a convex area from a lookout.</summary>
internal static class Shadow
{
    // The limit is an ellipse; this polygon around it is a little larger, which only lets more be seen.
    private const int SidesOfLimit = 32;

    // Angles that differ by less are one: shared corners of neighbouring edges come out the same to the last digits.
    private const double NoGap = 1e-12;

    private static readonly ImmutableArray<Point2> Normals =
        [.. Enumerable.Range(0, SidesOfLimit).Select(i => Turn.FromDegrees(360.0 * i / SidesOfLimit).Apply(new(1, 0)))];

    /// <summary>
    /// Whether some of the area within a distance may be in sight: false only when every line of sight to it is cut by an
    /// edge that lies wholly outside it.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public static bool LeavesInSight(
        Lookout lookout, ImmutableArray<Point2> corners, Point2 centre, LimitMetric metric, double within)
    {
        // Each side of the limit cuts off one corner and adds at most one.
        Span<Point2> area = stackalloc Point2[corners.Length + SidesOfLimit];
        for (var i = 0; i < corners.Length; i++)
        {
            area[i] = corners[i] + centre - lookout.At;
        }

        area = area[..ClipToLimit(area, corners.Length, metric, within)];
        if (area.Length < 3)
        {
            return false;
        }

        // Directions are counted from that of the area's middle: it spans less than half a turn.
        var middle = new Point2(0, 0);
        foreach (var p in area)
        {
            middle += p;
        }

        double from = double.PositiveInfinity, to = double.NegativeInfinity;
        foreach (var p in area)
        {
            var direction = Direction(middle, p);
            (from, to) = (Math.Min(from, direction), Math.Max(to, direction));
        }

        return to - from >= 2 || IsLit(lookout, middle, area, from, to);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static bool IsLit(Lookout lookout, Point2 middle, ReadOnlySpan<Point2> area, double from, double to)
    {
        var shadows = new List<(double From, double To)>();
        foreach (var blind in lookout.Blinds)
        {
            Point2 a = blind.A - lookout.At, b = blind.B - lookout.At;
            double directionA = Direction(middle, a), directionB = Direction(middle, b);
            if (directionA > directionB)
            {
                (a, b, directionA, directionB) = (b, a, directionB, directionA);
            }

            // With the cross product negative the edge passes behind the lookout.
            double lower = Math.Max(directionA, from), upper = Math.Min(directionB, to);
            if (lower < upper && a.Cross(b) > 0 && !Crosses(a, b, area) && StandsBefore(a, b, middle, area, (lower + upper) / 2))
            {
                shadows.Add((directionA, directionB));
            }
        }

        shadows.Sort();
        var dark = from;
        foreach (var shadow in shadows)
        {
            if (shadow.From > dark + NoGap)
            {
                return true;
            }

            dark = Math.Max(dark, shadow.To);
        }

        return dark < to - NoGap;
    }

    // Grows with the angle from the middle, from -2 to 2 over a whole turn; a quarter turn is 1. Cheaper than the angle.
    private static double Direction(Point2 middle, Point2 p)
    {
        double cross = middle.Cross(p), dot = middle.Dot(p);
        var size = Math.Abs(cross) + Math.Abs(dot);
        return size == 0 ? 0 : cross >= 0 ? 1 - dot / size : dot / size - 1;
    }

    // The vector in a direction: the inverse of the above.
    private static Point2 Towards(Point2 middle, double direction)
    {
        var dot = 1 - Math.Abs(direction);
        var cross = Math.Sign(direction) * (1 - Math.Abs(dot));
        return new(middle.X * dot - middle.Y * cross, middle.Y * dot + middle.X * cross);
    }

    // The part of a convex area inside a polygon around the limit ellipse; returns the number of corners left.
    private static int ClipToLimit(Span<Point2> area, int count, LimitMetric metric, double within)
    {
        var determinant = metric.Xx * metric.Yy - metric.Xy * metric.Xy;
        Span<Point2> kept = stackalloc Point2[area.Length];
        foreach (var normal in Normals)
        {
            // The extent of the ellipse in this direction.
            var inverse = (metric.Yy * normal.X * normal.X - 2 * metric.Xy * normal.X * normal.Y
                + metric.Xx * normal.Y * normal.Y) / determinant;
            count = ClipToHalfPlane(area[..count], kept, normal, within * Math.Sqrt(inverse));
            kept[..count].CopyTo(area);
        }

        return count;
    }

    private static int ClipToHalfPlane(ReadOnlySpan<Point2> area, Span<Point2> kept, Point2 normal, double distance)
    {
        var count = 0;
        for (var i = 0; i < area.Length; i++)
        {
            Point2 a = area[i], b = area[i + 1 == area.Length ? 0 : i + 1];
            double beyondA = normal.Dot(a) - distance, beyondB = normal.Dot(b) - distance;
            if (beyondA <= 0)
            {
                kept[count++] = a;
            }

            if (beyondA > 0 != beyondB > 0)
            {
                kept[count++] = a + (b - a) * (beyondA / (beyondA - beyondB));
            }
        }

        return count;
    }

    // Whether an edge comes into the convex area (touching counts).
    private static bool Crosses(Point2 a, Point2 b, ReadOnlySpan<Point2> area)
    {
        double enter = 0, leave = 1;
        var along = b - a;
        for (var i = 0; i < area.Length; i++)
        {
            Point2 side = area[i + 1 == area.Length ? 0 : i + 1] - area[i];
            double inside = side.Cross(a - area[i]), change = side.Cross(along);
            if (change == 0)
            {
                if (inside < 0)
                {
                    return false;
                }
            }
            else if (change > 0)
            {
                enter = Math.Max(enter, -inside / change);
            }
            else
            {
                leave = Math.Min(leave, -inside / change);
            }
        }

        return enter <= leave;
    }

    // Whether an edge that does not come into the area stands before it: one direction that both lie in tells.
    private static bool StandsBefore(Point2 a, Point2 b, Point2 middle, ReadOnlySpan<Point2> area, double direction)
    {
        var towards = Towards(middle, direction);
        var entry = double.PositiveInfinity;
        for (var i = 0; i < area.Length; i++)
        {
            Point2 p = area[i], q = area[i + 1 == area.Length ? 0 : i + 1];
            if (towards.Cross(p) > 0 != towards.Cross(q) > 0)
            {
                entry = Math.Min(entry, Hit(towards, p, q));
            }
        }

        return Hit(towards, a, b) < entry;
    }

    private static double Hit(Point2 direction, Point2 a, Point2 b) => a.Cross(b - a) / direction.Cross(b - a);
}

using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Support;

/// <summary>Whether edges of the part hide a convex area from a lookout.</summary>
internal static class Shadow
{
    private const int SidesOfLimit = 32;

    /// <summary>
    /// Whether some of the area within a distance may be in sight: false only when every line of sight to it is cut by an
    /// edge that lies wholly outside it.
    /// </summary>
    public static bool LeavesInSight(
        Lookout lookout, ImmutableArray<Point2> corners, Point2 centre, LimitMetric metric, double within)
    {
        var area = ClipToLimit([.. corners.Select(c => c + centre - lookout.At)], metric, within);
        if (area.Count < 3)
        {
            return false;
        }

        // Angles are counted from the direction of the area's middle: it spans less than half a turn.
        var middle = area.Aggregate(new Point2(0, 0), (sum, p) => sum + p);
        var angles = area.Select(p => Angle(middle, p)).ToList();
        double from = angles.Min(), to = angles.Max();
        if (to - from >= Math.PI)
        {
            return true;
        }

        var shadows = lookout.Blinds.Select(b => new Blind(b.A - lookout.At, b.B - lookout.At))
            .Where(b => !Crosses(b, area))
            .Select(b => ShadowOf(b, middle, area, from, to))
            .OfType<(double From, double To)>().OrderBy(s => s.From).ToList();
        var dark = from;
        foreach (var shadow in shadows)
        {
            if (shadow.From > dark + 1e-12)
            {
                return true;
            }

            dark = Math.Max(dark, shadow.To);
        }

        return dark < to - 1e-12;
    }

    private static double Angle(Point2 middle, Point2 p) => Math.Atan2(middle.Cross(p), middle.Dot(p));

    // The part of a convex area inside a polygon around the limit ellipse.
    private static List<Point2> ClipToLimit(List<Point2> area, LimitMetric metric, double within)
    {
        for (var i = 0; i < SidesOfLimit && area.Count >= 3; i++)
        {
            var angle = 2 * Math.PI * i / SidesOfLimit;
            var normal = new Point2(Math.Cos(angle), Math.Sin(angle));
            // The extent of the ellipse in this direction.
            var determinant = metric.Xx * metric.Yy - metric.Xy * metric.Xy;
            var inverse = (metric.Yy * normal.X * normal.X - 2 * metric.Xy * normal.X * normal.Y
                + metric.Xx * normal.Y * normal.Y) / determinant;
            area = ClipToHalfPlane(area, normal, within * Math.Sqrt(inverse));
        }

        return area;
    }

    private static List<Point2> ClipToHalfPlane(List<Point2> area, Point2 normal, double distance)
    {
        var kept = new List<Point2>(area.Count + 1);
        for (var i = 0; i < area.Count; i++)
        {
            Point2 a = area[i], b = area[(i + 1) % area.Count];
            double beyondA = normal.Dot(a) - distance, beyondB = normal.Dot(b) - distance;
            if (beyondA <= 0)
            {
                kept.Add(a);
            }

            if (beyondA > 0 != beyondB > 0)
            {
                kept.Add(a + (b - a) * (beyondA / (beyondA - beyondB)));
            }
        }

        return kept;
    }

    // Whether an edge comes into the convex area (touching counts).
    private static bool Crosses(Blind edge, List<Point2> area)
    {
        double enter = 0, leave = 1;
        var along = edge.B - edge.A;
        for (var i = 0; i < area.Count; i++)
        {
            Point2 side = area[(i + 1) % area.Count] - area[i];
            double inside = side.Cross(edge.A - area[i]), change = side.Cross(along);
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

    // The angles in which an edge stands before the area; null when it stands beside or behind it.
    private static (double From, double To)? ShadowOf(
        Blind edge, Point2 middle, List<Point2> area, double areaFrom, double areaTo)
    {
        double a = Angle(middle, edge.A), b = Angle(middle, edge.B);
        double from = Math.Min(a, b), to = Math.Max(a, b);
        // An edge that spans the direction opposite to the area has its angles on both sides of the cut at half a turn.
        if (to - from >= Math.PI)
        {
            return null;
        }

        double lower = Math.Max(from, areaFrom), upper = Math.Min(to, areaTo);
        if (lower >= upper)
        {
            return null;
        }

        var direction = Turn.FromDegrees((lower + upper) / 2 * 180 / Math.PI).Apply(middle);
        return Hit(direction, edge.A, edge.B) < Entry(direction, area) ? (from, to) : null;
    }

    private static double Hit(Point2 direction, Point2 a, Point2 b) => a.Cross(b - a) / direction.Cross(b - a);

    private static double Entry(Point2 direction, List<Point2> area)
    {
        var nearest = double.PositiveInfinity;
        for (var i = 0; i < area.Count; i++)
        {
            Point2 a = area[i], b = area[(i + 1) % area.Count];
            if (direction.Cross(a) > 0 != direction.Cross(b) > 0)
            {
                nearest = Math.Min(nearest, Hit(direction, a, b));
            }
        }

        return nearest;
    }
}

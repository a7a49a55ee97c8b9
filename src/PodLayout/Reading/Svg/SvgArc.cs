using PodLayout.Reading.Curves;

namespace PodLayout.Reading.Svg;

/// <summary>Elliptical arcs given by their ends (SVG 2, appendix B.2.4 and B.2.5).</summary>
internal static class SvgArc
{
    /// <summary>The arc; null when it is a straight line (a radius of 0) or nothing (equal ends).</summary>
    public static EllipticArc? Between(Point3 a, Point3 b, double rx, double ry, double degrees, bool large, bool sweep)
    {
        (rx, ry) = (Math.Abs(rx), Math.Abs(ry));
        if (a == b || rx == 0 || ry == 0)
            return null;
        var turn = Geometry.Turn.FromDegrees(degrees);
        var half = turn.Inverse.Apply(new((a.X - b.X) / 2, (a.Y - b.Y) / 2));
        double x = half.X / rx, y = half.Y / ry;
        var squared = x * x + y * y;
        // Radii too small to reach are enlarged until they just do.
        if (squared > 1)
            (rx, ry, x, y, squared) = (rx * Math.Sqrt(squared), ry * Math.Sqrt(squared), x / Math.Sqrt(squared), y / Math.Sqrt(squared), 1);
        var root = Math.Sqrt(Math.Max(0, 1 - squared) / squared) * (large == sweep ? -1 : 1);
        // Centre and ends on the unit circle.
        double cx = root * y, cy = -root * x;
        var from = Math.Atan2(y - cy, x - cx);
        var span = Math.Atan2(-y - cy, -x - cx) - from;
        if (sweep && span < 0)
            span += Math.Tau;
        else if (!sweep && span > 0)
            span -= Math.Tau;
        var centre = turn.Apply(new(cx * rx, cy * ry));
        return new(
            new((a.X + b.X) / 2 + centre.X, (a.Y + b.Y) / 2 + centre.Y, 0),
            new(turn.Cos * rx, turn.Sin * rx, 0), new(-turn.Sin * ry, turn.Cos * ry, 0), from, from + span);
    }
}

using PodLayout.Geometry;
using PodLayout.Layouts;
using PodLayout.Shops;

namespace PodLayout.Checking;

/// <summary>A rectangle along the board's axes, or a disc: a pod's body, or one of its seals.</summary>
/// <param name="Centre">Its centre.</param>
/// <param name="HalfX">Half its extent along X, mm.</param>
/// <param name="HalfY">Half its extent along Y, mm.</param>
/// <param name="IsRound">Whether it is a disc of radius <paramref name="HalfX"/>.</param>
internal readonly record struct StandingBody(Point2 Centre, double HalfX, double HalfY, bool IsRound)
{
    /// <summary>What a pod covers, drawn in on all sides.</summary>
    public static StandingBody Of(PlacedPod pod, double insetMm) => new(
        pod.Centre, Math.Max(0, pod.ExtentXMm / 2 - insetMm), Math.Max(0, pod.ExtentYMm / 2 - insetMm),
        pod.Type.Footprint is PodFootprint.Round);

    /// <summary>
    /// How far it lies inside a ring (or outside, for a hole): the distance to the ring; negative, by how much it would have to
    /// be drawn in on all sides until it only touched.
    /// </summary>
    /// <param name="ring">The ring.</param>
    /// <param name="inside">Whether it should lie inside.</param>
    public (double Mm, Point2 At) Clear(RingOnBoard ring, bool inside)
    {
        var (mm, at) = (double.PositiveInfinity, Centre);
        foreach (var line in ring.Rings)
        {
            var found = ToLine(line);
            (mm, at) = found.Mm < mm ? found : (mm, at);
        }

        return ring.Area.Contains(Centre) == inside ? (mm, at)
            // Wholly on the wrong side, or its centre is: no drawing in would do.
            : (-(Math.Min(HalfX, HalfY) + Math.Max(0, mm)), at);
    }

    /// <summary>How far it reaches from its centre in a direction of length 1, mm.</summary>
    public double ReachAlong(Point2 direction) => IsRound ? HalfX : HalfX * Math.Abs(direction.X) + HalfY * Math.Abs(direction.Y);

    // Distance to the line of a ring, or, negative, the depth of the line's deepest point in the body; and that point.
    private (double Mm, Point2 At) ToLine(Ring ring)
    {
        var best = (Mm: double.PositiveInfinity, At: default(Point2));
        var points = ring.Points;
        for (var i = 0; i < points.Length; i++)
        {
            var found = ToSegment(points[i] - Centre, points[(i + 1) % points.Length] - Centre);
            if (found.Mm < best.Mm)
            {
                best = (found.Mm, found.At + Centre);
            }
        }

        return best;
    }

    private (double Mm, Point2 At) ToSegment(Point2 a, Point2 b)
    {
        if (IsRound)
        {
            var nearest = Nearest(default, a, b);
            return (nearest.Length - HalfX, nearest);
        }

        var (depth, deepest) = Deepest(a, b);
        if (depth >= 0)
        {
            return (-depth, deepest);
        }

        var best = (Mm: double.PositiveInfinity, At: default(Point2));
        foreach (var end in (ReadOnlySpan<Point2>)[a, b])
        {
            var mm = new Point2(Math.Max(0, Math.Abs(end.X) - HalfX), Math.Max(0, Math.Abs(end.Y) - HalfY)).Length;
            best = mm < best.Mm ? (mm, end) : best;
        }

        foreach (var corner in (ReadOnlySpan<Point2>)[new(-HalfX, -HalfY), new(HalfX, -HalfY), new(HalfX, HalfY), new(-HalfX, HalfY)])
        {
            var near = Nearest(corner, a, b);
            var mm = (near - corner).Length;
            best = mm < best.Mm ? (mm, near) : best;
        }

        return best;
    }

    // The depth in the rectangle is the least distance to its four sides: along a segment a concave function of straight
    // pieces, so that its greatest value stands at an end or where two of the pieces meet.
    private (double Depth, Point2 At) Deepest(Point2 a, Point2 b)
    {
        var step = b - a;
        var best = (Depth: double.NegativeInfinity, At: a);
        var self = this;
        Try(0);
        Try(1);
        Try(-a.X / step.X);
        Try(-a.Y / step.Y);
        foreach (var (signX, signY) in (ReadOnlySpan<(int, int)>)[(1, 1), (1, -1), (-1, 1), (-1, -1)])
        {
            // HalfX - signX x = HalfY - signY y
            Try((HalfX - HalfY - signX * a.X + signY * a.Y) / (signX * step.X - signY * step.Y));
        }

        return best;

        void Try(double t)
        {
            if (t is >= 0 and <= 1)
            {
                var p = a + step * t;
                var depth = Math.Min(self.HalfX - Math.Abs(p.X), self.HalfY - Math.Abs(p.Y));
                best = depth > best.Depth ? (depth, p) : best;
            }
        }
    }

    private static Point2 Nearest(Point2 p, Point2 a, Point2 b)
    {
        var step = b - a;
        var whole = step.Dot(step);
        return whole == 0 ? a : a + step * Math.Clamp((p - a).Dot(step) / whole, 0, 1);
    }
}

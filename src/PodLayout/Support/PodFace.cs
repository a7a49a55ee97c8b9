using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using PodLayout.Geometry;
using PodLayout.Seats;

namespace PodLayout.Support;

/// <summary>
/// A pod's upper face about its centre, as a convex polygon; or all the places that the face may take while its centre moves
/// in a box.
/// </summary>
public sealed class PodFace
{
    // A round face is held to be the polygon inside it: 0.07 mm on a pod of 120 mm, on the side of less support.
    private const int SidesOfRound = 64;

    private PodFace(ImmutableArray<Point2> corners, double halfX, double halfY, bool isRectangle)
    {
        Corners = corners;
        HalfXMm = halfX;
        HalfYMm = halfY;
        IsRectangle = isRectangle;
    }

    /// <summary>Corners, counter-clockwise, about the centre.</summary>
    public ImmutableArray<Point2> Corners { get; }

    /// <summary>Half the extent along X, mm.</summary>
    public double HalfXMm { get; }

    /// <summary>Half the extent along Y, mm.</summary>
    public double HalfYMm { get; }

    private bool IsRectangle { get; }

    /// <summary>The face of a pod.</summary>
    /// <param name="pose">The pod.</param>
    /// <param name="spreadXMm">How far its centre may move to either side along X, mm.</param>
    /// <param name="spreadYMm">The same along Y.</param>
    /// <param name="insetMm">How far the face lies in from the body's edge on all sides, mm.</param>
    public static PodFace Of(PodPose pose, double spreadXMm = 0, double spreadYMm = 0, double insetMm = 0)
    {
        double x = pose.ExtentXMm / 2 - insetMm + spreadXMm, y = pose.ExtentYMm / 2 - insetMm + spreadYMm;
        if (!pose.IsRound)
        {
            return new([new(-x, -y), new(x, -y), new(x, y), new(-x, y)], x, y, true);
        }

        // The sum of a polygon and a box: each corner goes out to the corner of the box in its own quadrant.
        var corners = Enumerable.Range(0, SidesOfRound).Select(i =>
        {
            var angle = 2 * Math.PI * (i + 0.5) / SidesOfRound;
            var corner = new Point2(Math.Cos(angle), Math.Sin(angle)) * (pose.ExtentXMm / 2 - insetMm);
            return corner + new Point2(Math.Sign(corner.X) * spreadXMm, Math.Sign(corner.Y) * spreadYMm);
        });
        return new([.. corners], x, y, false);
    }

    /// <summary>How far the face reaches from its centre in a direction of length 1, mm.</summary>
    public double ReachAlong(Point2 direction) => Corners.Max(direction.Dot);

    /// <summary>The point of the face that is nearest to a point, both about the centre, in a limit metric.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public Point2 Nearest(Point2 p, LimitMetric metric)
    {
        if (!IsRectangle)
        {
            return NearestOfPolygon(p, metric);
        }

        var clamped = new Point2(Math.Clamp(p.X, -HalfXMm, HalfXMm), Math.Clamp(p.Y, -HalfYMm, HalfYMm));
        if (metric.Xy == 0 || clamped == p)
        {
            return clamped;
        }

        // Only a side that faces the point can hold the nearest point, in any metric.
        var best = clamped;
        var bestLength = metric.Length(clamped - p);
        if (clamped.X != p.X)
        {
            var y = Math.Clamp(p.Y - metric.Xy * (clamped.X - p.X) / metric.Yy, -HalfYMm, HalfYMm);
            Improve(new(clamped.X, y));
        }

        if (clamped.Y != p.Y)
        {
            var x = Math.Clamp(p.X - metric.Xy * (clamped.Y - p.Y) / metric.Xx, -HalfXMm, HalfXMm);
            Improve(new(x, clamped.Y));
        }

        return best;

        void Improve(Point2 candidate)
        {
            var length = metric.Length(candidate - p);
            if (length < bestLength)
            {
                (best, bestLength) = (candidate, length);
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private Point2 NearestOfPolygon(Point2 p, LimitMetric metric)
    {
        var best = p;
        var bestLength = double.PositiveInfinity;
        for (var i = 0; i < Corners.Length; i++)
        {
            Point2 a = Corners[i], side = Corners[(i + 1) % Corners.Length] - a, toPoint = p - a;
            if (side.Cross(toPoint) >= 0)
            {
                continue;
            }

            var along = metric.Xx * side.X * toPoint.X + metric.Yy * side.Y * toPoint.Y
                + metric.Xy * (side.X * toPoint.Y + side.Y * toPoint.X);
            var whole = metric.Length(side);
            var candidate = a + side * Math.Clamp(along / (whole * whole), 0, 1);
            var length = metric.Length(candidate - p);
            if (length < bestLength)
            {
                (best, bestLength) = (candidate, length);
            }
        }

        return best;
    }
}

using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Layouts;
using PodLayout.Shops;

namespace PodLayout.Tests.Independent;

/// <summary>A rectangle along the axes or a disc on the board.</summary>
/// <param name="X">Centre.</param>
/// <param name="Y">Centre.</param>
/// <param name="HalfX">Half the extent along X.</param>
/// <param name="HalfY">Half the extent along Y.</param>
/// <param name="IsRound">A disc of radius <paramref name="HalfX"/>.</param>
public sealed record Stand(double X, double Y, double HalfX, double HalfY, bool IsRound)
{
    public static Stand BodyOf(PlacedPod pod)
    {
        var (x, y, isRound) = pod.Type.Footprint switch
        {
            PodFootprint.Rectangle r => pod.Turned ? (r.LengthMm, r.WidthMm, false) : (r.WidthMm, r.LengthMm, false),
            PodFootprint.Round r => (r.DiameterMm, r.DiameterMm, true),
            _ => throw new InvalidOperationException("Unknown footprint."),
        };
        return new(pod.Centre.X, pod.Centre.Y, x / 2, y / 2, isRound);
    }

    public static Stand Of(ObstacleShape shape) => shape switch
    {
        ObstacleShape.Disc d => new(d.Centre.X, d.Centre.Y, d.DiameterMm / 2, d.DiameterMm / 2, true),
        ObstacleShape.Rectangle r => new(
            (r.Extent.MinX + r.Extent.MaxX) / 2, (r.Extent.MinY + r.Extent.MaxY) / 2, (r.Extent.MaxX - r.Extent.MinX) / 2,
            (r.Extent.MaxY - r.Extent.MinY) / 2, false),
        _ => throw new InvalidOperationException("Unknown shape."),
    };

    public Stand Inset(double by) => this with { HalfX = HalfX - by, HalfY = HalfY - by };

    /// <summary>How deep a point lies inside; negative: how far outside.</summary>
    public double Depth(Point2 p)
    {
        double dx = Math.Abs(p.X - X), dy = Math.Abs(p.Y - Y);
        if (IsRound)
        {
            return HalfX - Math.Sqrt(dx * dx + dy * dy);
        }

        double outX = Math.Max(0, dx - HalfX), outY = Math.Max(0, dy - HalfY);
        return outX > 0 || outY > 0 ? -Math.Sqrt(outX * outX + outY * outY) : Math.Min(HalfX - dx, HalfY - dy);
    }

    /// <summary>Distance to another one; negative when they overlap.</summary>
    public double Apart(Stand other)
    {
        if (IsRound)
        {
            return -other.Depth(new(X, Y)) - HalfX;
        }

        if (other.IsRound)
        {
            return -Depth(new(other.X, other.Y)) - other.HalfX;
        }

        double gapX = Math.Abs(X - other.X) - HalfX - other.HalfX, gapY = Math.Abs(Y - other.Y) - HalfY - other.HalfY;
        return gapX > 0 && gapY > 0 ? Math.Sqrt(gapX * gapX + gapY * gapY) : Math.Max(gapX, gapY);
    }

    /// <summary>Distance to the line of a ring; negative when the line passes through.</summary>
    public double ToLine(ImmutableArray<Point2> ring)
    {
        var nearest = double.PositiveInfinity;
        for (var i = 0; i < ring.Length; i++)
        {
            nearest = Math.Min(nearest, ToSegment(ring[i], ring[(i + 1) % ring.Length]));
        }

        return nearest;
    }

    /// <summary>The outline as a polygon; a disc as 360 chords (0.002 mm on a disc of 120 mm).</summary>
    public ImmutableArray<Point2> Polygon() => IsRound
        ? [.. Enumerable.Range(0, 360).Select(i => new Point2(
            X + HalfX * Math.Cos(i * Math.PI / 180), Y + HalfX * Math.Sin(i * Math.PI / 180)))]
        : [new(X - HalfX, Y - HalfY), new(X + HalfX, Y - HalfY), new(X + HalfX, Y + HalfY), new(X - HalfX, Y + HalfY)];

    private double ToSegment(Point2 a, Point2 b)
    {
        if (IsRound)
        {
            return Plane.PointToSegment(a, b, new(X, Y)) - HalfX;
        }

        if (PieceInside(a, b) is var (from, to))
        {
            var middle = new Point2(a.X + (b.X - a.X) * (from + to) / 2, a.Y + (b.Y - a.Y) * (from + to) / 2);
            return -Math.Max(Depth(middle), Math.Max(Depth(a), Depth(b)));
        }

        var corners = Polygon();
        return Enumerable.Range(0, 4).Min(i => Plane.SegmentToSegment(corners[i], corners[(i + 1) % 4], a, b));
    }

    // The part of a segment that lies in the rectangle, by clipping it at the four sides in turn.
    private (double From, double To)? PieceInside(Point2 a, Point2 b)
    {
        double from = 0, to = 1;
        foreach (var (start, step, low, high) in new[] { (a.X, b.X - a.X, X - HalfX, X + HalfX), (a.Y, b.Y - a.Y, Y - HalfY, Y + HalfY) })
        {
            if (step == 0)
            {
                if (start < low || start > high)
                {
                    return null;
                }

                continue;
            }

            double enter = (low - start) / step, leave = (high - start) / step;
            from = Math.Max(from, Math.Min(enter, leave));
            to = Math.Min(to, Math.Max(enter, leave));
        }

        return from <= to ? (from, to) : null;
    }
}

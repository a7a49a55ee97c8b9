namespace PodLayout.Geometry;

/// <summary>A closed rectangle along the axes, in millimetres.</summary>
/// <param name="MinX">Left edge.</param>
/// <param name="MinY">Lower edge.</param>
/// <param name="MaxX">Right edge.</param>
/// <param name="MaxY">Upper edge.</param>
public readonly record struct Box2(double MinX, double MinY, double MaxX, double MaxY)
{
    /// <summary>Extent along X, mm.</summary>
    public double Width => MaxX - MinX;

    /// <summary>Extent along Y, mm.</summary>
    public double Height => MaxY - MinY;

    /// <summary>Middle of the box.</summary>
    public Point2 Centre => new((MinX + MaxX) / 2, (MinY + MaxY) / 2);

    /// <summary>The smallest box around the points; throws when there are none.</summary>
    public static Box2 Around(IEnumerable<Point2> points)
    {
        double minX = double.PositiveInfinity, minY = double.PositiveInfinity;
        double maxX = double.NegativeInfinity, maxY = double.NegativeInfinity;
        foreach (var p in points)
        {
            minX = Math.Min(minX, p.X);
            minY = Math.Min(minY, p.Y);
            maxX = Math.Max(maxX, p.X);
            maxY = Math.Max(maxY, p.Y);
        }

        return minX <= maxX ? new(minX, minY, maxX, maxY) : throw new ArgumentException("No points.", nameof(points));
    }

    /// <summary>The box grown by the same distance on all sides (shrunk when negative).</summary>
    public Box2 Grow(double byMm) => new(MinX - byMm, MinY - byMm, MaxX + byMm, MaxY + byMm);

    /// <summary>The box moved.</summary>
    public Box2 Moved(Point2 by) => new(MinX + by.X, MinY + by.Y, MaxX + by.X, MaxY + by.Y);

    /// <summary>Whether the point lies in the closed box.</summary>
    public bool Contains(Point2 p) => p.X >= MinX && p.X <= MaxX && p.Y >= MinY && p.Y <= MaxY;

    /// <summary>Whether the other box lies in this closed box.</summary>
    public bool Contains(Box2 other) =>
        other.MinX >= MinX && other.MaxX <= MaxX && other.MinY >= MinY && other.MaxY <= MaxY;

    /// <summary>Whether the two closed boxes share a point.</summary>
    public bool Touches(Box2 other) =>
        other.MinX <= MaxX && other.MaxX >= MinX && other.MinY <= MaxY && other.MaxY >= MinY;
}

using System.Collections.Immutable;

namespace PodLayout.Geometry;

/// <summary>A closed polygon line: the last point joins the first, which is not repeated. Millimetres.</summary>
/// <param name="Points">At least three points.</param>
public sealed record Ring(ImmutableArray<Point2> Points)
{
    /// <summary>Area, mm²: positive when the ring runs counter-clockwise.</summary>
    public double SignedAreaMm2
    {
        get
        {
            // About the first point: far from the origin the plain sum loses digits.
            var origin = Points[0];
            double twice = 0;
            for (var i = 1; i + 1 < Points.Length; i++)
            {
                twice += (Points[i] - origin).Cross(Points[i + 1] - origin);
            }

            return twice / 2;
        }
    }

    /// <summary>Area without sign, mm².</summary>
    public double AreaMm2 => Math.Abs(SignedAreaMm2);

    /// <summary>Centre of the area inside.</summary>
    public Point2 Centroid
    {
        get
        {
            var origin = Points[0];
            var (sum, twice) = (default(Point2), 0.0);
            for (var i = 1; i + 1 < Points.Length; i++)
            {
                Point2 a = Points[i] - origin, b = Points[i + 1] - origin;
                sum += (a + b) * a.Cross(b);
                twice += a.Cross(b);
            }

            return twice == 0 ? origin : origin + sum * (1 / (3 * twice));
        }
    }

    /// <summary>Length of the closed line, mm.</summary>
    public double PerimeterMm
    {
        get
        {
            double sum = 0;
            for (var i = 0; i < Points.Length; i++)
            {
                sum += (Points[(i + 1) % Points.Length] - Points[i]).Length;
            }

            return sum;
        }
    }

    /// <summary>The smallest box around the ring.</summary>
    public Box2 Bounds => Box2.Around(Points);

    /// <summary>The same ring, counter-clockwise.</summary>
    public Ring CounterClockwise() => SignedAreaMm2 >= 0 ? this : new([.. Points.Reverse()]);

    /// <summary>Whether a point lies inside (points of the line: either answer).</summary>
    public bool Contains(Point2 p)
    {
        var isInside = false;
        for (var i = 0; i < Points.Length; i++)
        {
            Point2 a = Points[i], b = Points[(i + 1) % Points.Length];
            // Half-open in Y, so that a ray through a corner counts it once.
            if (a.Y > p.Y != b.Y > p.Y && p.X < a.X + (p.Y - a.Y) / (b.Y - a.Y) * (b.X - a.X))
            {
                isInside = !isInside;
            }
        }

        return isInside;
    }

    /// <summary>The ring turned about the origin by an angle (degrees, counter-clockwise), then moved.</summary>
    public Ring Laid(Turn turn, Point2 offset) => new([.. Points.Select(p => turn.Apply(p) + offset)]);

    /// <inheritdoc/>
    public bool Equals(Ring? other) => other is not null && Points.SequenceEqual(other.Points);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Points.Length, Points.Length > 0 ? Points[0] : default);
}

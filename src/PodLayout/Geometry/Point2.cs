namespace PodLayout.Geometry;

/// <summary>A point or a vector in the plane, in millimetres.</summary>
/// <param name="X">X in mm.</param>
/// <param name="Y">Y in mm.</param>
public readonly record struct Point2(double X, double Y)
{
    /// <summary>Length as a vector, mm.</summary>
    public double Length => Math.Sqrt(X * X + Y * Y);

    /// <summary>Sum of two vectors.</summary>
    public static Point2 operator +(Point2 a, Point2 b) => new(a.X + b.X, a.Y + b.Y);

    /// <summary>Difference of two vectors.</summary>
    public static Point2 operator -(Point2 a, Point2 b) => new(a.X - b.X, a.Y - b.Y);

    /// <summary>A vector scaled.</summary>
    public static Point2 operator *(Point2 a, double scale) => new(a.X * scale, a.Y * scale);

    /// <summary>Cross product: twice the signed area of the triangle (0, this, other), mm².</summary>
    public double Cross(Point2 other) => X * other.Y - Y * other.X;

    /// <summary>Dot product, mm².</summary>
    public double Dot(Point2 other) => X * other.X + Y * other.Y;
}

namespace PodLayout.Geometry;

/// <summary>A turn about the origin, counter-clockwise. Quarter turns are exact.</summary>
public readonly record struct Turn
{
    private Turn(double degrees, double cos, double sin)
    {
        Degrees = degrees;
        Cos = cos;
        Sin = sin;
    }

    /// <summary>No turn.</summary>
    public static Turn None { get; } = FromDegrees(0);

    /// <summary>The angle in degrees, as given.</summary>
    public double Degrees { get; }

    /// <summary>Cosine of the angle.</summary>
    public double Cos { get; }

    /// <summary>Sine of the angle.</summary>
    public double Sin { get; }

    /// <summary>The turn back.</summary>
    public Turn Inverse => new(-Degrees, Cos, -Sin);

    /// <summary>A turn by an angle in degrees; multiples of 90 are free of rounding.</summary>
    public static Turn FromDegrees(double degrees)
    {
        var reduced = degrees % 360;
        reduced = reduced < 0 ? reduced + 360 : reduced;
        return reduced switch
        {
            0 => new(degrees, 1, 0),
            90 => new(degrees, 0, 1),
            180 => new(degrees, -1, 0),
            270 => new(degrees, 0, -1),
            _ => new(degrees, Math.Cos(reduced * Math.PI / 180), Math.Sin(reduced * Math.PI / 180)),
        };
    }

    /// <summary>The point turned about the origin.</summary>
    public Point2 Apply(Point2 p) => new(Cos * p.X - Sin * p.Y, Sin * p.X + Cos * p.Y);
}

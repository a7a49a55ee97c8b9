namespace PodLayout.Reading.Curves;

/// <summary>An affine map of space: the images of the three axes, and of the origin.</summary>
internal readonly record struct Affine3(Point3 X, Point3 Y, Point3 Z, Point3 Origin)
{
    public static Affine3 Identity { get; } = Scale(1, 1, 1);

    public static Affine3 Scale(double x, double y, double z) =>
        new(new(x, 0, 0), new(0, y, 0), new(0, 0, z), default);

    public static Affine3 Move(Point3 by) => Identity with { Origin = by };

    public static Affine3 TurnAboutZ(double degrees)
    {
        // Geometry.Turn keeps quarter turns exact, so that a turned block stays square.
        var turn = Geometry.Turn.FromDegrees(degrees);
        return new(new(turn.Cos, turn.Sin, 0), new(-turn.Sin, turn.Cos, 0), new(0, 0, 1), default);
    }

    /// <summary>From object coordinates to the world's, by the arbitrary axis rule of the DXF reference ("Object coordinate systems").</summary>
    public static Affine3 FromExtrusion(Point3 extrusion)
    {
        var length = extrusion.Length;
        if (length == 0 || !double.IsFinite(length) || extrusion is { X: 0, Y: 0, Z: > 0 })
            return Identity;
        var n = extrusion * (1 / length);
        var nearZ = Math.Abs(n.X) < 1.0 / 64 && Math.Abs(n.Y) < 1.0 / 64;
        var ax = nearZ ? new Point3(0, 1, 0).Cross(n) : new Point3(0, 0, 1).Cross(n);
        ax *= 1 / ax.Length;
        var ay = n.Cross(ax);
        return new(ax, ay * (1 / ay.Length), n, default);
    }

    public Point3 Apply(Point3 p) => Turn(p) + Origin;

    /// <summary>The map of a direction: without the move.</summary>
    public Point3 Turn(Point3 v) => X * v.X + Y * v.Y + Z * v.Z;

    /// <summary>This map after the other.</summary>
    public Affine3 After(Affine3 first) => new(Turn(first.X), Turn(first.Y), Turn(first.Z), Apply(first.Origin));
}

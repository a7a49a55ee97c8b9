namespace PodLayout.Reading.Curves;

/// <summary>
/// An arc of a circle or ellipse, in the one form that every affine map keeps:
/// centre + u cos t + v sin t for t from <paramref name="From"/> to <paramref name="To"/> (radians).
/// </summary>
internal sealed record EllipticArc(Point3 Centre, Point3 U, Point3 V, double From, double To)
{
    /// <summary>More chords than a circle of the largest radius that is read needs at the program's tolerance (about 70,000).</summary>
    private const double MostChords = 200_000;

    /// <summary>Whether the arc is the whole ellipse. Writers round 2π, so nearly whole is whole.</summary>
    public bool IsWhole => Math.Abs(Math.Abs(To - From) - Math.Tau) < 1e-6;

    public static EllipticArc Circle(Point3 centre, double radius) =>
        new(centre, new(radius, 0, 0), new(0, radius, 0), 0, Math.Tau);

    public EllipticArc Mapped(Affine3 map) => new(map.Apply(Centre), map.Turn(U), map.Turn(V), From, To);

    public Point3 At(double t) => Centre + U * Math.Cos(t) + V * Math.Sin(t);

    /// <summary>Points on the arc, even by parameter, both ends included (the last left out when whole).</summary>
    public IEnumerable<Point3> Chords(double tolerance)
    {
        IEnumerable<Point3> points = InnerChords(tolerance).Prepend(At(From));
        return IsWhole ? points : points.Append(At(To));
    }

    /// <summary>Points on the arc without its ends, even by parameter.</summary>
    public IEnumerable<Point3> InnerChords(double tolerance)
    {
        var count = Count(tolerance);
        for (var i = 1; i < count; i++)
            yield return At(From + (To - From) * i / count);
    }

    /// <summary>Adds what the curve encloses and is long beyond its chords.</summary>
    public void AddExcess(double tolerance, CurveExcess excess)
    {
        var count = Count(tolerance);
        var step = (To - From) / count;
        // Sector less triangle of each chord, in the affine picture of the unit circle: exact.
        var area = (U.X * V.Y - U.Y * V.X) / 2 * (To - From - count * Math.Sin(step));
        double length = 0;
        for (var i = 0; i < count; i++)
        {
            double t = From + step * i;
            // Simpson's rule on the speed; a circle's is even.
            var (chord, end) = (At(t + step) - At(t), t + step);
            length += Math.Abs(step) / 6 * (Speed(t) + 4 * Speed(t + step / 2) + Speed(end)) - Math.Sqrt(chord.X * chord.X + chord.Y * chord.Y);
        }

        excess.Add(area, length);
    }

    private double Speed(double t)
    {
        double x = V.X * Math.Cos(t) - U.X * Math.Sin(t), y = V.Y * Math.Cos(t) - U.Y * Math.Sin(t);
        return Math.Sqrt(x * x + y * y);
    }

    private int Count(double tolerance)
    {
        // The greatest stretch of the unit circle is at most this; the sagitta of a chord over dt is
        // 2 r sin²(dt/4), and an affine map stretches it by no more than the largest radius.
        var radius = Math.Max(LargestRadius(), double.Epsilon);
        var half = Math.Sqrt(Math.Min(1, tolerance / (2 * radius)));
        var step = Math.Min(4 * Math.Asin(half), Math.PI / 4);
        return Math.Max(1, (int)Math.Min(MostChords, Math.Ceiling(Math.Abs(To - From) / step - 1e-9)));
    }

    /// <summary>Largest semi-axis of the projection on the XY plane: the larger singular value of (u, v).</summary>
    public double LargestRadius()
    {
        double a = U.X * U.X + U.Y * U.Y, b = V.X * V.X + V.Y * V.Y, c = U.X * V.X + U.Y * V.Y;
        return Math.Sqrt((a + b) / 2 + Math.Sqrt((a - b) * (a - b) / 4 + c * c));
    }
}

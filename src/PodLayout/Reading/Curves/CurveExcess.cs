namespace PodLayout.Reading.Curves;

/// <summary>What curves enclose and are long beyond their chords, added up along a line; chords lie inside a bulging curve.</summary>
internal sealed class CurveExcess
{
    /// <summary>Area between curves and chords, mm²: positive where a line that runs counter-clockwise bulges outwards.</summary>
    public double AreaMm2 { get; private set; }

    /// <summary>Length of the curves beyond that of their chords, mm.</summary>
    public double LengthMm { get; private set; }

    /// <summary>A stretch of a smooth curve between two points near each other, by its middle: the segment of a parabola is 4/3 of its triangle (Archimedes).</summary>
    public void AddNearParabola(Point3 a, Point3 middle, Point3 b)
    {
        double ax = middle.X - a.X, ay = middle.Y - a.Y, bx = b.X - a.X, by = b.Y - a.Y;
        AreaMm2 += 2.0 / 3 * (ax * by - ay * bx);
        LengthMm += 4.0 / 3 * (Length(ax, ay) + Length(b.X - middle.X, b.Y - middle.Y) - Length(bx, by));
    }

    public void Add(double areaMm2, double lengthMm)
    {
        AreaMm2 += areaMm2;
        LengthMm += lengthMm;
    }

    private static double Length(double x, double y) => Math.Sqrt(x * x + y * y);
}

namespace PodLayout.Programs;

/// <summary>Where the tool's tip is, in the program's own coordinates with all its offsets worked in, mm.</summary>
/// <param name="XMm">X in mm.</param>
/// <param name="YMm">Y in mm.</param>
/// <param name="ZMm">Z in mm.</param>
public readonly record struct TipPoint(double XMm, double YMm, double ZMm)
{
    /// <summary>Distance to another point, mm.</summary>
    public double DistanceTo(TipPoint other)
    {
        double x = XMm - other.XMm, y = YMm - other.YMm, z = ZMm - other.ZMm;
        return Math.Sqrt(x * x + y * y + z * z);
    }
}

using PodLayout.Shops;

namespace PodLayout.Floors;

/// <summary>The opening under the wood over which a pod's vacuum pulls: all that lies inside its upper seal.</summary>
/// <param name="ShortMm">Its shorter side.</param>
/// <param name="LongMm">Its longer side.</param>
public sealed record PodCavity(double ShortMm, double LongMm)
{
    /// <summary>The cavity of a kind of pod, out to the outer edge of its seal; a round one as the square around it.</summary>
    public static PodCavity Of(PodType type)
    {
        double x = type.Footprint.ExtentXMm - 2 * type.SealInsetAboveMm, y = type.Footprint.ExtentYMm - 2 * type.SealInsetAboveMm;
        return new(Math.Min(x, y), Math.Max(x, y));
    }
}

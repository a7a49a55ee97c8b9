using PodLayout.Parts;

namespace PodLayout.Holding;

/// <summary>One force that the cutter may put on the part, about the part's middle.</summary>
/// <param name="X">Where, mm.</param>
/// <param name="Y">Where, mm.</param>
/// <param name="HeightMm">How high above the underside, mm.</param>
/// <param name="Force">The force.</param>
/// <param name="Point">Index of the point of the path it belongs to.</param>
public readonly record struct CutterForce(double X, double Y, double HeightMm, Force Force, int Point)
{
    /// <summary>What it does to the part.</summary>
    public Wrench Wrench => Wrench.Of(Force, X, Y, HeightMm);
}

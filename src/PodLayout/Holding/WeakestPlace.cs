using PodLayout.Geometry;
using PodLayout.Parts;

namespace PodLayout.Holding;

/// <summary>Where a layout holds least.</summary>
/// <param name="OnPart">The place of the cutter, in the drawing's coordinates, mm.</param>
/// <param name="HeightMm">Its height above the part's underside, mm.</param>
/// <param name="Force">The force that does it, at the upper end of its band.</param>
/// <param name="Pass">The pass of the cutter, in the shop's words.</param>
/// <param name="Mode">How the part moves.</param>
/// <param name="FactorAtLeastForce">The factor there when the force is at the lower end of its band.</param>
public sealed record WeakestPlace(
    Point2 OnPart, double HeightMm, Force Force, string Pass, FailureMode Mode, double FactorAtLeastForce);

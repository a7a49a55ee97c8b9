using PodLayout.Geometry;

namespace PodLayout.Parts;

/// <summary>Wood that cuts take out of the part beside its outline and holes.</summary>
/// <param name="VolumeMm3">How much, mm³.</param>
/// <param name="Centroid">Where its middle lies, in the drawing's coordinates.</param>
/// <param name="IsGone">Whether it is gone before the part is laid down, as grooves in the underside are.</param>
public sealed record CutAway(double VolumeMm3, Point2 Centroid, bool IsGone);

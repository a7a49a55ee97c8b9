namespace PodLayout.Handover.Format;

/// <summary>Distances and limits that the layout keeps.</summary>
/// <param name="SealMarginMm">From the upper seal to the edge of sound wood.</param>
/// <param name="CutClearanceMm">From a pod's body to the outline and the holes.</param>
/// <param name="OverhangAlongGrainMm">Greatest distance through the wood from an edge point to a pod, along the grain.</param>
/// <param name="OverhangAcrossGrainMm">The same across the grain; between the two the limit is an ellipse.</param>
/// <param name="InteriorSpanMm">Greatest distance from an interior point to a pod; null for no such rule.</param>
/// <param name="EdgeStepMm">Edge points are at most this far apart.</param>
/// <param name="InteriorStepMm">Step of the interior points' lattice.</param>
/// <param name="ThinFloorSpanMm">Greatest distance from a point of a thin floor to a pod.</param>
/// <param name="MustSupportAll">Whether there was to be no layout where not all can be supported; absent for false.</param>
public sealed record RulesEntry(
    double SealMarginMm,
    double CutClearanceMm,
    double OverhangAlongGrainMm,
    double OverhangAcrossGrainMm,
    double? InteriorSpanMm,
    double EdgeStepMm,
    double InteriorStepMm,
    double ThinFloorSpanMm,
    bool? MustSupportAll = null);

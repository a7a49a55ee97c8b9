namespace PodLayout.Jobs;

/// <summary>How far the part may reach beyond its pods.</summary>
/// <param name="OverhangAlongGrainMm">Greatest distance through the wood from an edge point to a pod, along the grain.</param>
/// <param name="OverhangAcrossGrainMm">The same across the grain; between the two the limit is an ellipse.</param>
/// <param name="InteriorSpanMm">Greatest distance through the wood from any interior point to a pod; null for no such rule.</param>
/// <param name="EdgeStepMm">Edge points are at most this far apart; every corner is one.</param>
/// <param name="InteriorStepMm">Interior points stand on a square lattice of this step.</param>
public sealed record SupportRules(
    double OverhangAlongGrainMm,
    double OverhangAcrossGrainMm,
    double? InteriorSpanMm,
    double EdgeStepMm,
    double InteriorStepMm)
{
    /// <summary>
    /// Greatest distance through the wood from any point of a thin floor to a pod, mm. The default is that of the overhang: common
    /// practice, no source.
    /// </summary>
    public double ThinFloorSpanMm { get; init; } = 60;

    /// <summary>
    /// Whether there is to be no layout at all where not every point can be supported; else the layout that leaves least unsupported.
    /// </summary>
    public bool MustSupportAll { get; init; }

    /// <summary>Step of the points on thin floors, mm: a quarter of their span, so that little can sag between two.</summary>
    public double FloorStepMm => Math.Min(InteriorStepMm, ThinFloorSpanMm / 4);
}

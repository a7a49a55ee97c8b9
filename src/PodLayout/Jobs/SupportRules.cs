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
    double InteriorStepMm);

namespace PodLayout.Holding;

/// <summary>How firmly a layout holds the part while every seal is whole.</summary>
/// <param name="Factor">As in <see cref="HoldingReport.Factor"/>.</param>
/// <param name="Weakest">Where it holds least; null when the factor is infinite.</param>
/// <param name="StandMm">As in <see cref="HoldingReport.StandMm"/>, mm.</param>
/// <param name="Pieces">As in <see cref="HoldingReport.Pieces"/>.</param>
public sealed record HoldingStrength(
    double Factor, WeakestPlace? Weakest, double StandMm, System.Collections.Immutable.ImmutableArray<PieceHold> Pieces);

namespace PodLayout.Holding;

/// <summary>How firmly the pods under a loose piece of the blank hold it, against the cuts along it in its last layer.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Factor">As <see cref="HoldingReport.Factor"/>.</param>
/// <param name="FactorByPulls">The figure by pulls.</param>
/// <param name="FactorBySprings">The figure by springs.</param>
/// <param name="Weakest">Where it is held least; null when the factor is infinite.</param>
public sealed record PieceHold(string Name, double Factor, double FactorByPulls, double FactorBySprings, WeakestPlace? Weakest);

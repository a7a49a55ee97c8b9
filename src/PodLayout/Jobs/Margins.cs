namespace PodLayout.Jobs;

/// <summary>How far pods keep from what would spoil them.</summary>
/// <param name="SealMarginMm">From the upper seal to the edge of sound wood.</param>
/// <param name="CutClearanceMm">From a pod's body to the finished line of a through-cut (outline and holes).</param>
public sealed record Margins(double SealMarginMm, double CutClearanceMm);

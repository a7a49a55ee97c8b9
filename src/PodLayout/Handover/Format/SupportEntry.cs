using System.Collections.Immutable;

namespace PodLayout.Handover.Format;

/// <summary>How well the part is supported.</summary>
/// <param name="WorstShareOfLimit">The worst overhang as a share of its limit.</param>
/// <param name="WorstAtMm">Where, in the drawing's coordinates; null when there are no points.</param>
/// <param name="Points">Every point that must be supported.</param>
public sealed record SupportEntry(double WorstShareOfLimit, XyMm? WorstAtMm, ImmutableArray<SupportPointEntry> Points);

using System.Collections.Immutable;

namespace PodLayout.Handover.Format;

/// <summary>A spot of the part under which no pod's body may stand.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="RingMm">Its extent: a closed ring, counter-clockwise, the first point not repeated.</param>
public sealed record SpotEntry(string Name, ImmutableArray<XyMm> RingMm);

using System.Collections.Immutable;

namespace PodLayout.Handover.Format;

/// <summary>A spot of the part where a cut from the face leaves little wood.</summary>
/// <param name="Name">What makes it.</param>
/// <param name="Source">Where that comes from.</param>
/// <param name="LeastMm">The least thickness that is left.</param>
/// <param name="RingsMm">Its extent, ring by ring: an outer one counter-clockwise, its holes clockwise after it, then the next.</param>
public sealed record FloorEntry(string Name, string Source, double LeastMm, ImmutableArray<ImmutableArray<XyMm>> RingsMm);

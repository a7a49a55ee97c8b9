using System.Collections.Immutable;

namespace PodLayout.Handover.Format;

/// <summary>A region that pods keep clear of, and why: a cut, a pocket in the underside.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="KeepsBodiesOff">Whether pods' bodies keep the cut clearance from it.</param>
/// <param name="KeepsSealsOff">Whether upper seals keep the seal margin from it.</param>
/// <param name="RingsMm">Its extent, ring by ring: an outer one counter-clockwise, its holes clockwise after it, then the next.</param>
public sealed record HazardEntry(
    string Name, string Source, bool KeepsBodiesOff, bool KeepsSealsOff, ImmutableArray<ImmutableArray<XyMm>> RingsMm);

using System.Collections.Immutable;

namespace PodLayout.Handover.Format;

/// <summary>
/// What was asked: where the part should lie (at a given placement, or to be searched at some angles), and which pods to keep.
/// </summary>
/// <param name="Given">The placement that was given; null when it was to be searched.</param>
/// <param name="SearchAnglesDeg">Angles at which every offset was open; empty when the placement was given, or an interval.</param>
/// <param name="SearchAngle">The interval of angles that was open; null when none was asked for.</param>
/// <param name="Keep">Pods that must stand in the layout.</param>
public sealed record AskedEntry(
    PlacementEntry? Given,
    ImmutableArray<double> SearchAnglesDeg,
    AngleIntervalEntry? SearchAngle,
    ImmutableArray<KeptPodEntry> Keep);

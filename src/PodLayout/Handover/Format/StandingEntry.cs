using System.Collections.Immutable;

namespace PodLayout.Handover.Format;

/// <summary>What stood on the board before.</summary>
/// <param name="Placement">Where the part lay.</param>
/// <param name="Pods">The pods.</param>
/// <param name="OpenPorts">Names of the ports that were open.</param>
public sealed record StandingEntry(PlacementEntry Placement, ImmutableArray<StandingPodEntry> Pods, ImmutableArray<string> OpenPorts);

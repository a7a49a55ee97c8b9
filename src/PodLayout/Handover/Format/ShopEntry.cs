using System.Collections.Immutable;

namespace PodLayout.Handover.Format;

/// <summary>The shop.</summary>
/// <param name="Name">What it calls itself.</param>
/// <param name="PodGapMm">Least distance between the bodies of two pods.</param>
/// <param name="Board">The grid board.</param>
/// <param name="PodTypes">The pod types in stock.</param>
public sealed record ShopEntry(
    string Name, double PodGapMm, BoardEntry Board, ImmutableArray<PodTypeEntry> PodTypes);

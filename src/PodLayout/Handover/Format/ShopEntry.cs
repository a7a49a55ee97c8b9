using System.Collections.Immutable;

namespace PodLayout.Handover.Format;

/// <summary>The shop.</summary>
/// <param name="Name">What it calls itself.</param>
/// <param name="PodGapMm">Least distance between the bodies of two pods.</param>
/// <param name="Board">The grid board.</param>
/// <param name="PodTypes">The pod types in stock.</param>
/// <param name="Zones">The table's zones under the board; empty where the shop file names none.</param>
/// <param name="WorksInInches">Whether the shop works in inches; lengths in this file are in millimetres all the same.</param>
public sealed record ShopEntry(
    string Name, double PodGapMm, BoardEntry Board, ImmutableArray<PodTypeEntry> PodTypes, ImmutableArray<ZoneEntry> Zones, bool WorksInInches);

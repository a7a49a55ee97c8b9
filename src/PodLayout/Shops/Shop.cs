using System.Collections.Immutable;

namespace PodLayout.Shops;

/// <summary>What the shop has: a grid board and pods.</summary>
/// <param name="Name">What it calls itself.</param>
/// <param name="Board">The board on the table.</param>
/// <param name="Pods">The pod types in stock; at least one.</param>
/// <param name="PodGapMm">Least distance between the bodies of two pods, mm; 0 lets them touch.</param>
public sealed record Shop(string Name, GridBoard Board, ImmutableArray<PodType> Pods, double PodGapMm)
{
    /// <summary>How parts are to be held here.</summary>
    public HoldingRules Holding { get; init; } = HoldingRules.Default;

    /// <summary>The table's zones under the board; empty where the shop file names none.</summary>
    public ImmutableArray<ValveZone> Zones { get; init; } = [];

    /// <summary>Whether the shop works in inches: its file gives the size of the board in inches.</summary>
    public bool WorksInInches { get; init; }

    /// <summary>The vacuum there is here.</summary>
    public VacuumSupply Vacuum { get; init; } = VacuumSupply.Default;
}

using System.Collections.Immutable;
using System.ComponentModel;
using PodLayout.JsonFiles;

namespace PodLayout.Shops.Written;

/// <summary>The vacuum ports as written: on a lattice of their own, listed one by one, or both.</summary>
[InchesToo]
internal sealed record WrittenPorts
{
    [Description("Diameter of a port's hole at the board's face, mm.")]
    [Bounds(From = 0.01, To = 1000)]
    public required double DiameterMm { get; init; }

    [Description("A port's hole must lie at least this far inside a pod's lower seal, mm; 2 when not given.")]
    [Bounds(From = 0, To = 1000)]
    public double MarginMm { get; init; } = 2;

    [Description("Ports that stand on a lattice over the whole board; those that would lie beyond its edge are not made.")]
    public WrittenPortLattice? Lattice { get; init; }

    [Description("Ports one by one, alone or beside the lattice.")]
    [ListOf<WrittenPort>]
    public ImmutableArray<WrittenPort> List { get; init; } = [];

    [Description("Ports of the lattice that were never drilled, by name (\"5-3\": column and row of the groove cell, from 1) or place [x, y].")]
    [ListOf<WrittenPortMark>]
    public ImmutableArray<WrittenPortMark> Missing { get; init; } = [];

    [Description("Ports that bring no vacuum and stay plugged, by name or place [x, y].")]
    [ListOf<WrittenPortMark>]
    public ImmutableArray<WrittenPortMark> Dead { get; init; } = [];

    [Description("Ports that cannot be plugged, so that no lower seal may stand on them, by name or place [x, y].")]
    [ListOf<WrittenPortMark>]
    public ImmutableArray<WrittenPortMark> StuckOpen { get; init; } = [];
}

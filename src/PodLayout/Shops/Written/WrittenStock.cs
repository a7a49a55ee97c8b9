using System.ComponentModel;
using PodLayout.JsonFiles;

namespace PodLayout.Shops.Written;

/// <summary>The sheet the board is cut from, as written.</summary>
[InchesToo]
internal sealed record WrittenStock
{
    [Description("What it is, for instance birch plywood.")]
    public required string Material { get; init; }

    [Description("Thickness as measured, mm.")]
    [Bounds(From = 0.01, To = 1000)]
    public required double ThicknessMm { get; init; }

    [Description("Size of a sheet along the grain of its face, mm.")]
    [Bounds(From = 0.01, To = 100_000)]
    public required double SheetAlongGrainMm { get; init; }

    [Description("Size of a sheet across the grain of its face, mm.")]
    [Bounds(From = 0.01, To = 100_000)]
    public required double SheetAcrossGrainMm { get; init; }

    [Description("How the grain of the face runs on the board: alongX, alongY, or none.")]
    public required GrainRun Grain { get; init; }
}

/// <summary>How a port is bored, as written.</summary>
[InchesToo]
internal sealed record WrittenPortBore
{
    [Description("Diameter of the drill, mm; at most the counterbore's.")]
    [Bounds(From = 0.01, To = 1000)]
    public required double DrillDiameterMm { get; init; }

    [Description("Depth of the drilled hole from the face at its full diameter, mm; less than the stock's thickness.")]
    [Bounds(From = 0.01, To = 1000)]
    public required double DrillDepthMm { get; init; }

    [Description("Depth of the counterbore for the plug, mm; 0 for none.")]
    [Bounds(From = 0, To = 1000)]
    public required double CounterboreDepthMm { get; init; }

    [Description("What plugs a port, for the list of things to buy.")]
    public string? Plug { get; init; }

    [Description("Where the port lattice lies: asGiven ($.board.ports.lattice.firstMm), or search for the offset that leaves the fewest dead seats.")]
    public PortOffset Offset { get; init; }
}

/// <summary>The channels in the back, as written.</summary>
[InchesToo]
internal sealed record WrittenChannels
{
    [Description("Width of a channel, cut in one pass of a tool of this diameter, mm.")]
    [Bounds(From = 0.01, To = 1000)]
    public required double WidthMm { get; init; }

    [Description("Depth of a channel, mm.")]
    [Bounds(From = 0.01, To = 1000)]
    public required double DepthMm { get; init; }

    [Description("How they are laid: rows, columns, combOfRows, combOfColumns; or best for the one the checks prefer.")]
    public ChannelWish Layout { get; init; }
}

/// <summary>The gasket groove in the back, as written.</summary>
[InchesToo]
internal sealed record WrittenGasket
{
    [Description("Width of the groove, cut in one pass of a tool of this diameter, mm.")]
    [Bounds(From = 0.01, To = 1000)]
    public required double WidthMm { get; init; }

    [Description("Depth of the groove, mm.")]
    [Bounds(From = 0.01, To = 1000)]
    public required double DepthMm { get; init; }

    [Description("From the edge of the zone (or of the board, where that is nearer) to the groove, mm.")]
    [Bounds(From = 0.01, To = 10_000)]
    public required double InsetMm { get; init; }

    [Description("Diameter of the gasket cord, mm.")]
    [Bounds(From = 0.01, To = 1000)]
    public required double CordDiameterMm { get; init; }

    [Description("Cord to buy beyond its length, per cent; 10 when not given.")]
    [Bounds(From = 0, To = 1000)]
    public double WastePercent { get; init; } = 10;
}

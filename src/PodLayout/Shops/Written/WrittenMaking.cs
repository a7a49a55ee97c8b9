using System.Collections.Immutable;
using System.ComponentModel;
using PodLayout.JsonFiles;

namespace PodLayout.Shops.Written;

/// <summary>How the grid board is made, as written. Everything is in the board's coordinates.</summary>
[InchesToo]
internal sealed record WrittenMaking
{
    [Description("The table the board lies on, and the machine over it.")]
    public required WrittenTable Table { get; init; }

    [Description("What the board is cut from.")]
    public required WrittenStock Stock { get; init; }

    [Description("How a port is bored. Its hole at the face ($.board.ports.diameterMm) is the counterbore that holds the plug flush.")]
    public required WrittenPortBore PortBore { get; init; }

    [Description("The channels in the board's back that join the ports to the table's vacuum.")]
    public required WrittenChannels Channels { get; init; }

    [Description("A gasket groove in the board's back around each zone; none when not given.")]
    public WrittenGasket? Gasket { get; init; }

    [Description("Seams across X, where the board is made in several pieces: their X, mm. Each lies on a boundary of zones.")]
    [ListOf<double>]
    public ImmutableArray<double> SeamsXMm { get; init; } = [];

    [Description("Seams across Y: their Y, mm. Each lies on a boundary of zones.")]
    [ListOf<double>]
    public ImmutableArray<double> SeamsYMm { get; init; } = [];

    [Description("The axis about which a piece is turned over for its back: alongX (front edge to rear) or alongY (left edge to right).")]
    public required FlipAxis FlipAxis { get; init; }

    [Description("Light chamfer on the grooves' edges, mm across; 0 for none, 0.5 when not given.")]
    [Bounds(From = 0, To = 10)]
    public double ChamferMm { get; init; } = 0.5;

    [Description("How far past the board's edge a groove's pass runs, mm; the groove's width when not given.")]
    [Bounds(From = 0, To = 200)]
    public double? RunOutMm { get; init; }

    [Description("What is left between cuts, at least; and how much vacuum the channels may lose.")]
    public WrittenMakingLimits Limits { get; init; } = new();

    [Description("What flows through the ports.")]
    public WrittenPortFlow Flow { get; init; } = new();

    [Description("Tools and feeds.")]
    public WrittenCutting Cutting { get; init; } = new();
}

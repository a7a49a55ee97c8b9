using System.ComponentModel;
using PodLayout.JsonFiles;

namespace PodLayout.Shops.Written;

/// <summary>What must be left between cuts, as written.</summary>
[InchesToo]
internal sealed record WrittenMakingLimits
{
    [Description("How far port and channel overlap in depth, at least, mm; 1 when not given.")]
    [Bounds(From = 0.01, To = 1000)]
    public double OverlapMm { get; init; } = 1;

    [Description("Stock left between a groove in the face and a channel in the back, at least, mm; 4 when not given.")]
    [Bounds(From = 0.01, To = 1000)]
    public double FloorMm { get; init; } = 4;

    [Description("Stock left between two cuts in the face (counterbore and groove, groove and pin hole or edge), at least, mm; 1 when not given.")]
    [Bounds(From = 0, To = 1000)]
    public double WallMm { get; init; } = 1;

    [Description("Stock left between two channels, or a channel and a pin hole or gasket groove, at least, mm; 5 when not given.")]
    [Bounds(From = 0, To = 1000)]
    public double WebMm { get; init; } = 5;

    [Description("From a channel or the table's grooves to the edge of the zone or board where there is no gasket, at least, mm; 15 when not given.")]
    [Bounds(From = 0, To = 10_000)]
    public double EdgeMm { get; init; } = 15;

    [Description("Vacuum that the channels may lose on the way to a port, Pa; 500 when not given.")]
    [Bounds(From = 0.001, To = 100_000)]
    public double PressureLossPa { get; init; } = 500;
}

/// <summary>What flows through the ports, as written.</summary>
internal sealed record WrittenPortFlow
{
    [Description("Air that leaks in at one open port with a pod on it, litres a minute at the channel's pressure; 2 when not given. An assumption: measure yours.")]
    [Bounds(From = 0, To = 100_000)]
    public double PerOpenPortLPerMin { get; init; } = 2;

    [Description("How many ports can be open at once; as many as the pods in stock need when not given.")]
    [Bounds(From = 1, To = 100_000)]
    public int? OpenAtOnce { get; init; }
}

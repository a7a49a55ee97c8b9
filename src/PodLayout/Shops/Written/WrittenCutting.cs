using System.ComponentModel;
using PodLayout.JsonFiles;

namespace PodLayout.Shops.Written;

/// <summary>Tools and feeds as written. Where the width of a cut is the tool's, the tool is not named again.</summary>
[InchesToo]
internal sealed record WrittenCutting
{
    [Description("The perimeter, cut outside the line.")]
    public WrittenRouted Perimeter { get; init; } = new() { ToolDiameterMm = 12, FeedMmPerMin = 4000, StepDownMm = 8 };

    [Description("The pin holes, milled round by a tool smaller than the hole.")]
    public WrittenRouted PinHoles { get; init; } = new() { ToolDiameterMm = 6, FeedMmPerMin = 1500, StepDownMm = 4 };

    [Description("The counterbores, milled round or plunged by a tool no wider than they are.")]
    public WrittenRouted Counterbores { get; init; } = new() { ToolDiameterMm = 6, FeedMmPerMin = 1500, StepDownMm = 4 };

    [Description("The grooves: one pass of a tool of their width.")]
    public WrittenPass Grooves { get; init; } = new() { FeedMmPerMin = 4000, StepDownMm = 8 };

    [Description("The chamfer on the grooves: one pass of a 90 degree cutter along each groove.")]
    public WrittenRouted Chamfer { get; init; } = new() { ToolDiameterMm = 16, FeedMmPerMin = 4000, StepDownMm = 20 };

    [Description("The drilled ports; the feed is the drill's downwards.")]
    public WrittenPass Ports { get; init; } = new() { FeedMmPerMin = 600, StepDownMm = 12 };

    [Description("Row and column numbers: depth below the face is the step down.")]
    public WrittenRouted Numbers { get; init; } = new() { ToolDiameterMm = 1, FeedMmPerMin = 1500, StepDownMm = 0.4 };

    [Description("The back channels: one pass of a tool of their width.")]
    public WrittenPass Channels { get; init; } = new() { FeedMmPerMin = 4000, StepDownMm = 6 };

    [Description("The gasket groove: one pass of a tool of its width.")]
    public WrittenPass Gasket { get; init; } = new() { FeedMmPerMin = 3000, StepDownMm = 6 };

    [Description("How far through-cuts go into the waste board under the stock, mm; 0.5 when not given.")]
    [Bounds(From = 0, To = 20)]
    public double ThroughMm { get; init; } = 0.5;
}

/// <summary>A cut whose tool is as wide as the cut, as written.</summary>
[InchesToo]
internal sealed record WrittenPass
{
    [Description("Feed, mm a minute.")]
    [Bounds(From = 0.001, To = 100_000)]
    public required double FeedMmPerMin { get; init; }

    [Description("Greatest depth of one pass, mm.")]
    [Bounds(From = 0.01, To = 1000)]
    public required double StepDownMm { get; init; }
}

/// <summary>A cut with a tool of its own, as written.</summary>
[InchesToo]
internal sealed record WrittenRouted
{
    [Description("Diameter of the tool, mm.")]
    [Bounds(From = 0.01, To = 1000)]
    public required double ToolDiameterMm { get; init; }

    [Description("Feed, mm a minute.")]
    [Bounds(From = 0.001, To = 100_000)]
    public required double FeedMmPerMin { get; init; }

    [Description("Greatest depth of one pass, mm.")]
    [Bounds(From = 0.01, To = 1000)]
    public required double StepDownMm { get; init; }
}

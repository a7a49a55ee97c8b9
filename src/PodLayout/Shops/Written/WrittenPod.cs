using System.ComponentModel;
using PodLayout.JsonFiles;

namespace PodLayout.Shops.Written;

/// <summary>A pod type as written: widthMm and lengthMm, or diameterMm.</summary>
[InchesToo]
internal sealed record WrittenPod
{
    [Description("What the shop calls this pod type.")]
    public required string Name { get; init; }

    [Description("Free remark; not used.")]
    [LongestText(LongestTextAttribute.Remark)]
    public string? Note { get; init; }

    [Description("Size of a rectangular pod along X when not turned, mm: a whole number of pitches.")]
    [Bounds(From = 0.01, To = 100_000)]
    public double? WidthMm { get; init; }

    [Description("Size of a rectangular pod along Y when not turned, mm: a whole number of pitches.")]
    [Bounds(From = 0.01, To = 100_000)]
    public double? LengthMm { get; init; }

    [Description("Diameter of a round pod, mm: a whole number of pitches; instead of widthMm and lengthMm.")]
    [Bounds(From = 0.01, To = 100_000)]
    public double? DiameterMm { get; init; }

    [Description("From the body's edge to the outer edge of the upper seal, mm.")]
    [Bounds(From = 0, To = 100_000)]
    public required double SealInsetAboveMm { get; init; }

    [Description("From the body's edge to the inner edge of the lower seal, mm: a port must lie inside it.")]
    [Bounds(From = 0, To = 100_000)]
    public required double SealInsetBelowMm { get; init; }

    [Description("How stiff the upper seal is: what each mm of its length pushes back with for each mm that it is pressed, N/mm2; 1 when not given, which is from memory. How pods share what presses on them depends on it where kinds of pods differ: lay a weight on one pod, read how far it sinks, and divide the weight by that and by the seal's length.")]
    [Bounds(From = 0.001, To = 10_000)]
    public double? SealStiffnessNPerMm2 { get; init; }

    [Description("From the board's face to the part's underside, mm; pods of several heights may be listed, but a layout uses pods of one height only, since the part lies flat on all of them.")]
    [Bounds(From = 0.01, To = 10_000)]
    public required double HeightMm { get; init; }

    [Description("Whether it may stand turned by a quarter; true when not given.")]
    public bool MayTurn { get; init; } = true;

    [Description("How many there are.")]
    [Bounds(From = 0, To = 100_000)]
    public required int Stock { get; init; }

    [Description("How many open ports it needs; 1 when not given.")]
    [Bounds(From = 1, To = 100)]
    public int PortsNeeded { get; init; } = 1;
}

using System.ComponentModel;
using PodLayout.JsonFiles;

namespace PodLayout.Jobs.Written;

/// <summary>An operation as written.</summary>
internal sealed record WrittenCut
{
    [Description("What is done: throughProfile, drill, pocketFromFace, pocketInUnderside, grooveInUnderside, edgeProfile or defect.")]
    public required CutKind Operation { get; init; }

    [Description("What the shop calls it.")]
    public string? Name { get; init; }

    [Description("Free remark; not used.")]
    [LongestText(LongestTextAttribute.Remark)]
    public string? Note { get; init; }

    [Description("Layer of the drawing whose lines it follows (any case; * stands for any characters); instead of along.")]
    public string? Layer { get; init; }

    [Description("Instead of layer: the part's own outline, or its holes.")]
    public WrittenEdges? Along { get; init; }

    [Description("throughProfile: whether the tool runs outside or inside the closed line, or on it.")]
    public CutSide? Side { get; init; }

    [Description("throughProfile, grooveInUnderside, edgeProfile: diameter of the tool, mm.")]
    [Bounds(From = 0.01, To = 1000)]
    public double? ToolDiameterMm { get; init; }

    [Description("drill: diameter of the hole about the middle of each ring, mm; the ring itself when not given.")]
    [Bounds(From = 0.01, To = 1000)]
    public double? DiameterMm { get; init; }

    [Description("throughProfile, drill, edgeProfile: how far the tool's tip goes below the part's underside, mm; 0 when not given.")]
    [Bounds(From = 0, To = 1000)]
    public double? DepthBelowUndersideMm { get; init; }

    [Description("throughProfile, drill: wood left at the bottom, mm, instead of depthBelowUndersideMm: then it does not cut through.")]
    [Bounds(From = 0.01, To = 1000)]
    public double? SkinMm { get; init; }

    [Description("throughProfile: number of holding tabs; stated, but pods keep clear as if there were none.")]
    [Bounds(From = 0, To = 1000)]
    public int Tabs { get; init; }

    [Description("pocketFromFace: thickness of the floor that is left, mm.")]
    [Bounds(From = 0, To = 1000)]
    public double? FloorLeftMm { get; init; }

    [Description("grooveInUnderside, pocketInUnderside: how deep it is, mm; for the part's mass half the thickness when not given.")]
    [Bounds(From = 0.01, To = 1000)]
    public double? DepthMm { get; init; }

    [Description("What is particular to this operation's cutter, for the forces on the part.")]
    public WrittenCutter? Cutter { get; init; }

    [Description("edgeProfile: how far the tool reaches under the part from the edge, mm; 0 when not given.")]
    [Bounds(From = 0, To = 1000)]
    public double? ReachMm { get; init; }
}

/// <summary>The part's own edges, as written.</summary>
internal enum WrittenEdges
{
    Outline,
    Holes,
}

using System.Collections.Immutable;
using System.ComponentModel;
using PodLayout.Geometry;
using PodLayout.JsonFiles;

namespace PodLayout.Shops.Written;

/// <summary>The grid board as written.</summary>
[InchesToo]
internal sealed record WrittenBoard
{
    [Description("What the shop calls the board.")]
    public required string Name { get; init; }

    [Description("Free remark; not used.")]
    [LongestText(LongestTextAttribute.Remark)]
    public string? Note { get; init; }

    [Description("Size of the board along X, mm.")]
    [Bounds(From = 0.01, To = 100_000)]
    public required double WidthMm { get; init; }

    [Description("Size of the board along Y, mm.")]
    [Bounds(From = 0.01, To = 100_000)]
    public required double LengthMm { get; init; }

    [Description("Distance from groove to groove, both ways, centre to centre, mm.")]
    [Bounds(From = 0.01, To = 10_000)]
    public required double PitchMm { get; init; }

    [Description("Width of a groove, mm; less than the pitch.")]
    [Bounds(From = 0.01, To = 1000)]
    public required double GrooveWidthMm { get; init; }

    [Description("Depth of a groove, mm.")]
    [Bounds(From = 0.01, To = 1000)]
    public required double GrooveDepthMm { get; init; }

    [Description("A point where two grooves cross (any one), [x, y] in mm; [0, 0] when not given.")]
    public Point2 LatticeOriginMm { get; init; }

    [Description("Pods' bodies stay inside this area; the whole board when neither this nor usableMarginMm is given.")]
    public WrittenArea? UsableArea { get; init; }

    [Description("The same as a margin from all four edges of the board, mm; instead of usableArea.")]
    [Bounds(From = 0, To = 100_000)]
    public double? UsableMarginMm { get; init; }

    [Description("The vacuum ports.")]
    public required WrittenPorts Ports { get; init; }

    [Description("Pins, stops and damaged spots that pods keep clear of.")]
    [ListOf<WrittenObstacle>]
    public ImmutableArray<WrittenObstacle> Obstacles { get; init; } = [];
}

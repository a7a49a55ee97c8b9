using System.ComponentModel;
using PodLayout.Geometry;
using PodLayout.JsonFiles;

namespace PodLayout.Shops.Written;

/// <summary>A spot to stay clear of, as written: a disc or a rectangle.</summary>
[InchesToo]
internal sealed record WrittenObstacle
{
    [Description("What the shop calls it.")]
    public required string Name { get; init; }

    [Description("What it is: pin (locator pin), stop (stop or clamp) or damage (the board no longer seals there).")]
    public required WrittenObstacleKind Kind { get; init; }

    [Description("Centre of a round one, [x, y] in mm; with diameterMm.")]
    public Point2? CentreMm { get; init; }

    [Description("Diameter of a round one, mm; with centreMm.")]
    [Bounds(From = 0.01)]
    public double? DiameterMm { get; init; }

    [Description("Extent of a rectangular one; instead of centreMm and diameterMm.")]
    public WrittenArea? Area { get; init; }

    [Description("How far a pod's body must stay away, mm; 0 when not given.")]
    [Bounds(From = 0, To = 1000)]
    public double ClearanceMm { get; init; }
}

/// <summary>What a shop's obstacle can be, as written.</summary>
internal enum WrittenObstacleKind
{
    Pin,
    Stop,
    Damage,
}

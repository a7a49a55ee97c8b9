using System.ComponentModel;
using PodLayout.Geometry;
using PodLayout.JsonFiles;
using PodLayout.Shops.Written;

namespace PodLayout.Jobs.Written;

/// <summary>An area in which no pod may stand, as written: a disc or a rectangle.</summary>
internal sealed record WrittenAvoid
{
    [Description("What it is called.")]
    public required string Name { get; init; }

    [Description("Centre of a round one, [x, y] in mm; with diameterMm.")]
    public Point2? CentreMm { get; init; }

    [Description("Diameter of a round one, mm; with centreMm.")]
    [Bounds(From = 0.01)]
    public double? DiameterMm { get; init; }

    [Description("Extent of a rectangular one; instead of centreMm and diameterMm.")]
    public WrittenArea? Area { get; init; }
}

using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.JsonFiles;

namespace PodLayout.Shops.Written;

/// <summary>From a written disc or rectangle to its shape.</summary>
internal static class AreaMaking
{
    /// <summary>The shape, or what is wrong with it.</summary>
    /// <param name="what">What it is the shape of, with its article.</param>
    /// <param name="centre">As written.</param>
    /// <param name="diameterMm">As written.</param>
    /// <param name="area">As written.</param>
    /// <param name="path">Where it stands.</param>
    /// <param name="refusals">The file.</param>
    public static (ObstacleShape? Shape, Finding? Refusal) Of(
        string what, Point2? centre, double? diameterMm, WrittenArea? area, string path, FileRefusals refusals)
    {
        if (area is not null && centre is null && diameterMm is null)
        {
            Box2 box = new(area.MinXMm, area.MinYMm, area.MaxXMm, area.MaxYMm);
            var refusal = NoArea(box, path + ".area", refusals);
            return (refusal is null ? new ObstacleShape.Rectangle(box) : null, refusal);
        }

        if (area is null && centre is { } at && diameterMm is { } diameter)
        {
            return (new ObstacleShape.Disc(at, diameter), null);
        }

        return (null, refusals.At(
            "obstacle-shape",
            path,
            $"found {ShopMaking.Members(("centreMm", centre is not null), ("diameterMm", diameterMm is not null), ("area", area is not null))}; expected the shape of {what}.",
            "Give centreMm and diameterMm for a round one, or area for a rectangular one."));
    }

    /// <summary>Whether a box has no area.</summary>
    public static Finding? NoArea(Box2 box, string path, FileRefusals refusals) => box.Width > 0 && box.Height > 0 ? null : refusals.At(
        "area-empty", path, $"found {Said(box)}, which has no area.", "Give the lower left corner as minXMm, minYMm and the upper right as maxXMm, maxYMm.");

    /// <summary>A box in words.</summary>
    public static string Said(Box2 box) =>
        $"({JsonWords.Number(box.MinX)}, {JsonWords.Number(box.MinY)}) to ({JsonWords.Number(box.MaxX)}, {JsonWords.Number(box.MaxY)}) mm";
}

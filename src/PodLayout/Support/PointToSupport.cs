using PodLayout.Geometry;
using PodLayout.Layouts;

namespace PodLayout.Support;

/// <summary>A point of the part that must have a pod near it.</summary>
/// <param name="OnPart">In the drawing's coordinates, mm.</param>
/// <param name="Limit">Which limit holds there.</param>
/// <param name="Ring">0 for the outline, 1.. for the holes, -1 for interior points, -2 and below for those of each thin floor.</param>
public readonly record struct PointToSupport(Point2 OnPart, SupportLimit Limit, int Ring)
{
    /// <summary>Whether it lies on the outline or on a hole.</summary>
    public bool IsEdge => Limit == SupportLimit.Edge;
}

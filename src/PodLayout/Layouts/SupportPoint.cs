using PodLayout.Geometry;

namespace PodLayout.Layouts;

/// <summary>How well one point of the part is supported.</summary>
/// <param name="OnPart">The point in the drawing's coordinates, mm.</param>
/// <param name="Limit">Which limit holds there.</param>
/// <param name="ShareOfLimit">Distance through the wood to the nearest pod as a share of the limit: at most 1 when supported.</param>
/// <param name="Pod">Index of that pod in the layout.</param>
public sealed record SupportPoint(Point2 OnPart, SupportLimit Limit, double ShareOfLimit, int Pod)
{
    /// <summary>Whether it lies on the outline or a hole.</summary>
    public bool IsEdge => Limit == SupportLimit.Edge;
}

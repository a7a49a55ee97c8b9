using PodLayout.Geometry;

namespace PodLayout.Support;

/// <summary>A point of the part that must have a pod near it.</summary>
/// <param name="OnPart">In the drawing's coordinates, mm.</param>
/// <param name="IsEdge">Whether it lies on the outline or on a hole.</param>
/// <param name="Ring">0 for the outline, 1.. for the holes, -1 for interior points.</param>
public readonly record struct PointToSupport(Point2 OnPart, bool IsEdge, int Ring);

using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Reading;

/// <summary>A line that does not close.</summary>
/// <param name="Layer">Layer it is drawn on.</param>
/// <param name="Points">Its points from one end to the other, mm.</param>
/// <param name="NearestToStart">The nearest other free end seen from the first point; null when there is none.</param>
/// <param name="NearestToEnd">The nearest other free end seen from the last point; null when there is none.</param>
public sealed record OpenContour(
    string Layer, ImmutableArray<Point2> Points, Point2? NearestToStart, Point2? NearestToEnd)
{
    /// <summary>Whether it hangs by one end on a point where other lines go on.</summary>
    public bool IsTail { get; init; }
}

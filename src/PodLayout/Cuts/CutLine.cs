using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Cuts;

/// <summary>A line that an operation follows.</summary>
/// <param name="Points">Its points; a closed line does not repeat the first.</param>
/// <param name="IsClosed">Whether it is closed.</param>
public sealed record CutLine(ImmutableArray<Point2> Points, bool IsClosed);

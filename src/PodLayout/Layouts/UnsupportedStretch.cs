using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Layouts;

/// <summary>A stretch of an edge (or spots of the interior) beyond the limit of every pod.</summary>
/// <param name="From">First point, in the drawing's coordinates, mm.</param>
/// <param name="To">Last point; the same as <paramref name="From"/> for a single spot.</param>
/// <param name="LengthMm">Length along the edge that is nearer to its points than to others; 0 inside.</param>
/// <param name="Limit">Which limit holds there.</param>
/// <param name="Cause">Why, in one sentence.</param>
/// <param name="OverhangThatWouldDoMm">The across-grain overhang limit at which the stretch could be supported (the along-grain limit growing in proportion), or inside the span limit,; null when none would do.</param>
public sealed record UnsupportedStretch(
    Point2 From, Point2 To, double LengthMm, SupportLimit Limit, string Cause, double? OverhangThatWouldDoMm)
{
    /// <summary>
    /// The greatest overhang there with the pods of the layout (across the grain; inside, the span), mm; null where there is no layout, or
    /// where no pod is anywhere near.
    /// </summary>
    public double? OverhangNowMm { get; init; }

    /// <summary>All its points, in the drawing's coordinates, mm: what a check of the layout passes over, and nothing else.</summary>
    public ImmutableArray<Point2> Points { get; init; } = [];

    /// <summary>Whether it lies on the outline or a hole.</summary>
    public bool IsEdge => Limit == SupportLimit.Edge;
}

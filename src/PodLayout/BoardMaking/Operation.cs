using System.Collections.Immutable;
using PodLayout.Handover.Picture;

namespace PodLayout.BoardMaking;

/// <summary>One operation of the work: what is cut with one tool to one depth.</summary>
/// <param name="Title">What it is.</param>
/// <param name="Side">Which side is up.</param>
/// <param name="Layer">Its layer in the drawing: operation, tool, depth.</param>
/// <param name="Tool">The tool, in words.</param>
/// <param name="DepthMm">Depth below the side that is up.</param>
/// <param name="Shapes">Lines of the tool's middle, circles of holes; the perimeter as its finished line.</param>
/// <param name="Count">How many holes or lines.</param>
/// <param name="CutMm">Length of cut over all passes; for drilled holes their depth.</param>
/// <param name="FeedMmPerMin">Feed.</param>
public sealed record Operation(
    string Title,
    BoardSide Side,
    string Layer,
    string Tool,
    double DepthMm,
    ImmutableArray<Primitive> Shapes,
    int Count,
    double CutMm,
    double FeedMmPerMin)
{
    /// <summary>Time at the feed, minutes; without ways between cuts and changes of tools.</summary>
    public double Minutes => CutMm / FeedMmPerMin;
}

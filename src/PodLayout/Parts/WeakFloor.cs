using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Parts;

/// <summary>A floor that the vacuum of some kinds of pod would bend too far or break: none of those may have any of it inside its upper seal.</summary>
/// <param name="Name">What makes it, in the shop's words.</param>
/// <param name="Source">Where that comes from.</param>
/// <param name="Area">Its extent.</param>
/// <param name="LeftMm">Thickness of the wood there, mm.</param>
/// <param name="Pulls">The kinds of pod that it does not bear.</param>
public sealed record WeakFloor(string Name, string Source, Region Area, double LeftMm, ImmutableArray<FloorPull> Pulls)
{
    /// <summary>Its place in the job, for messages.</summary>
    public string Path { get; init; } = "$.thicknessMm";

    /// <summary>The floor turned about the drawing's zero, then moved.</summary>
    public WeakFloor Laid(Turn turn, Point2 offset) => this with { Area = Area.Laid(turn, offset) };
}

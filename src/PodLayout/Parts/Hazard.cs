using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Parts;

/// <summary>A region that pods must keep clear of, and why: a cut, a pocket, a weak spot.</summary>
/// <param name="Name">What it is, in the shop's words.</param>
/// <param name="Source">Where it comes from, for instance <c>part.nc lines 120 to 480, tool 3</c> or <c>layer CUT</c>.</param>
/// <param name="Area">The region itself, without any margin.</param>
/// <param name="KeepsBodiesOff">Whether pods' bodies keep the cut clearance from it: what is cut there reaches below the underside.</param>
/// <param name="KeepsSealsOff">Whether upper seals keep the seal margin from it: no seal holds there.</param>
public sealed record Hazard(string Name, string Source, Region Area, bool KeepsBodiesOff, bool KeepsSealsOff)
{
    /// <summary>Where the tip of a tool runs below the underside; for the picture.</summary>
    public ImmutableArray<ImmutableArray<Point2>> TipPaths { get; init; } = [];

    /// <summary>All that is cut, also beside the part; for the picture.</summary>
    public Region Shown { get; init; } = Area;

    /// <summary>The hazard turned about the drawing's zero, then moved.</summary>
    public Hazard Laid(Turn turn, Point2 offset) => this with
    {
        Area = Area.Laid(turn, offset),
        Shown = ReferenceEquals(Shown, Area) ? Area.Laid(turn, offset) : Shown.Laid(turn, offset),
        TipPaths = [.. TipPaths.Select(path => path.Select(p => turn.Apply(p) + offset).ToImmutableArray())],
    };
}

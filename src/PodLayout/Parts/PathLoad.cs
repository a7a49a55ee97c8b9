using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Parts;

/// <summary>A point of the cutter's path, and the forces that the cutter may put on the part there.</summary>
/// <param name="OnPart">Where the force acts, in the drawing's coordinates, mm.</param>
/// <param name="HeightMm">Where it acts above the part's underside, mm.</param>
/// <param name="Forces">
/// The forces that may act there, one at a time: the corners of the set of all of them, so that what holds against each corner
/// holds against every force between.
/// </param>
/// <param name="Pass">Index of the pass in <see cref="CutterLoads.Passes"/>.</param>
public sealed record PathLoad(Point2 OnPart, double HeightMm, ImmutableArray<Force> Forces, int Pass)
{
    /// <summary>
    /// Depth of the cut there, mm: the forces are proportional to it, and it reaches as far below and above the place where they
    /// act. 0 where they do not depend on a depth, or it is not known.
    /// </summary>
    public double DepthMm { get; init; }
}

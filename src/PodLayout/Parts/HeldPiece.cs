using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Parts;

/// <summary>A piece of the blank that comes loose when the part is cut out, and that pods of its own are to hold.</summary>
/// <param name="Name">Its name: offcut 1 is the largest.</param>
/// <param name="Outline">Its outer edge, counter-clockwise, in the drawing's coordinates.</param>
/// <param name="Holes">What is cut out of it, counter-clockwise.</param>
/// <param name="MassKg">Its mass.</param>
/// <param name="IsDemanded">Whether a layout that does not hold it is none.</param>
public sealed record HeldPiece(string Name, Ring Outline, ImmutableArray<Ring> Holes, double MassKg, bool IsDemanded)
{
    // So many that the centre of mass may lie beyond the pods by a twentieth of their distance at most.
    private const int DirectionCount = 72;

    /// <summary>
    /// Whether its pods are to lie about its centre of mass, so that it rests on them by its weight alone: in each of
    /// <see cref="Directions"/> some pod of its own reaches at least as far as the centre of mass.
    /// </summary>
    public bool IsBalanced { get; init; } = true;

    /// <summary>What the cutter does to it when the last layer of wood that joins it to the rest is cut.</summary>
    public CutterLoads Loads { get; init; } = CutterLoads.None;

    /// <summary>Directions of the drawing in which balance is asked for.</summary>
    public static ImmutableArray<Point2> Directions { get; } =
        [.. Enumerable.Range(0, DirectionCount).Select(i => Turn.FromDegrees(360.0 * i / DirectionCount).Apply(new(1, 0)))];

    /// <summary>Its centre of mass, in the drawing's coordinates.</summary>
    public Point2 CentreOfMass
    {
        get
        {
            var moment = Outline.Centroid * Outline.AreaMm2;
            var area = Outline.AreaMm2;
            foreach (var hole in Holes)
            {
                moment -= hole.Centroid * hole.AreaMm2;
                area -= hole.AreaMm2;
            }

            return moment * (1 / area);
        }
    }

    /// <summary>Whether a point lies in the piece.</summary>
    public bool Contains(Point2 p) => Outline.Contains(p) && !Holes.Any(h => h.Contains(p));

    /// <summary>The piece turned about the drawing's zero, then moved.</summary>
    public HeldPiece Laid(Turn turn, Point2 offset) => this with
    {
        Outline = Outline.Laid(turn, offset),
        Holes = [.. Holes.Select(h => h.Laid(turn, offset))],
    };
}

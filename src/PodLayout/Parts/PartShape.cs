using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Parts;

/// <summary>
/// The finished part as drawn, in millimetres in the drawing's own coordinates, seen from above as it lies on the pods.
/// </summary>
/// <param name="Outline">The outer edge, counter-clockwise, simple.</param>
/// <param name="Holes">Through holes, counter-clockwise, simple, inside the outline and apart from each other.</param>
/// <param name="Defects">Marked spots where a seal will not hold (knots, voids, bark); counter-clockwise; may cross the outline.</param>
public sealed record PartShape(Ring Outline, ImmutableArray<Ring> Holes, ImmutableArray<Ring> Defects)
{
    /// <summary>Spots under which no pod's body may stand, whatever the wood is like.</summary>
    public ImmutableArray<AvoidedSpot> Avoided { get; init; } = [];

    /// <summary>What else pods keep clear of: cuts by operation and by the program, pockets and grooves in the underside.</summary>
    public ImmutableArray<Hazard> Hazards { get; init; } = [];

    /// <summary>Spots where a cut from the face leaves little wood: pods stand nearer to each other there.</summary>
    public ImmutableArray<ThinFloor> Floors { get; init; } = [];

    /// <summary>Floors that do not bear the vacuum of some kinds of pod, which keep off them.</summary>
    public ImmutableArray<WeakFloor> WeakFloors { get; init; } = [];

    /// <summary>
    /// Rings whose cut leaves a skin at the underside: 0 for the outline, 1.. for the holes. No tool comes through there, so that
    /// pods' bodies may reach beyond them; their seals keep the seal margin all the same.
    /// </summary>
    public ImmutableArray<int> Skinned { get; init; } = [];

    /// <summary>Loose pieces of the blank that pods of their own hold.</summary>
    public ImmutableArray<HeldPiece> Held { get; init; } = [];

    /// <summary>
    /// Edges of the blank that the part is cut out of, where it reaches beyond the part; empty where it does not, or no blank is given.
    /// An outer one is counter-clockwise, its holes clockwise after it, then the next.
    /// </summary>
    public ImmutableArray<Ring> Blank { get; init; } = [];

    /// <summary>Lines of the drawing that do not close and were left out, as no edge of the part: shown in pictures, nothing more.</summary>
    public ImmutableArray<ImmutableArray<Point2>> LeftOutLines { get; init; } = [];

    /// <summary>Area of the wood: outline less holes, mm².</summary>
    public double AreaMm2 => Outline.AreaMm2 - Holes.Sum(h => h.AreaMm2);

    /// <summary>The shape turned about the drawing's zero, then moved.</summary>
    public PartShape Laid(Turn turn, Point2 offset) => new(
        Outline.Laid(turn, offset),
        [.. Holes.Select(h => h.Laid(turn, offset))],
        [.. Defects.Select(d => d.Laid(turn, offset))])
    {
        Avoided = [.. Avoided.Select(a => a with { Ring = a.Ring.Laid(turn, offset) })],
        Hazards = [.. Hazards.Select(h => h.Laid(turn, offset))],
        Floors = [.. Floors.Select(f => f.Laid(turn, offset))],
        WeakFloors = [.. WeakFloors.Select(f => f.Laid(turn, offset))],
        Skinned = Skinned,
        Held = [.. Held.Select(p => p.Laid(turn, offset))],
        Blank = [.. Blank.Select(r => r.Laid(turn, offset))],
        LeftOutLines = [.. LeftOutLines.Select(l => l.Select(p => turn.Apply(p) + offset).ToImmutableArray())],
    };
}

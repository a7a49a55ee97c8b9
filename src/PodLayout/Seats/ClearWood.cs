using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Parts;

namespace PodLayout.Seats;

/// <summary>What pods may use of a part: made once, since turning the part only turns it.</summary>
/// <param name="ForBodies">Where bodies may be: clear of every through-cut, off the areas that the user forbids.</param>
/// <param name="ForSeals">Where upper seals may be, as far as edges and holes go.</param>
/// <param name="Unsound">Where no seal may be: marked defects and the margin around them.</param>
/// <param name="SealIsLooser">By how much more bodies keep from an edge than seals must, mm; negative when seals must keep more.</param>
public sealed record ClearWood(Region ForBodies, Region ForSeals, Region Unsound, double SealIsLooser)
{
    /// <summary>By kind of pod the floors that do not bear its vacuum: nothing inside its upper seal may be one of them.</summary>
    public ImmutableSortedDictionary<string, Region> TooThin { get; init; } = ImmutableSortedDictionary<string, Region>.Empty;

    // No board reaches farther beyond its part, mm.
    private const double AnywhereMm = 20_000;

    /// <summary>What pods may use of each ground of a part.</summary>
    public static ImmutableArray<ClearWood> OfGrounds(PartShape shape, Margins margins) =>
        [.. SeatGround.Of(shape).Select(g => g.IsOverSkin ? OverSkin(g.Wood, margins) : Of(g.Wood, margins))];

    /// <summary>Finds it for a shape all of whose edges are cut through.</summary>
    /// <param name="shape">The part.</param>
    /// <param name="margins">Distances to keep.</param>
    public static ClearWood Of(PartShape shape, Margins margins) => Of(shape, margins, []);

    // Bodies pass the edges where a skin is left, seals do not.
    private static ClearWood OverSkin(PartShape shape, Margins margins) =>
        Of(shape, margins, shape.Skinned) with { SealIsLooser = double.NegativeInfinity };

    private static ClearWood Of(PartShape shape, Margins margins, ImmutableArray<int> skinned)
    {
        var wood = Region.Inside(shape.Outline);
        var holes = Region.UnionOf(shape.Holes.Select(h => Region.Inside(h)));
        var defects = Region.UnionOf([
            .. shape.Defects.Select(d => Region.Inside(d)), .. shape.Hazards.Where(h => h.KeepsSealsOff).Select(h => h.Area)]);
        var cuts = Region.UnionOf(shape.Hazards.Where(h => h.KeepsBodiesOff).Select(h => h.Area));
        var avoided = Region.UnionOf(shape.Avoided.Select(a => Region.Inside(a.Ring)));
        var within = skinned.Contains(0)
            ? Region.Inside(shape.Outline.Bounds.Grow(AnywhereMm)) : wood.Shrink(margins.CutClearanceMm);
        var cutHoles = skinned.IsEmpty ? holes : Region.UnionOf(
            shape.Holes.Where((_, i) => !skinned.Contains(i + 1)).Select(h => Region.Inside(h)));
        return new(
            within.Minus(Grown(cutHoles, margins.CutClearanceMm)).Minus(avoided).Minus(Grown(cuts, margins.CutClearanceMm)),
            wood.Shrink(margins.SealMarginMm).Minus(Grown(holes, margins.SealMarginMm)),
            Grown(defects, margins.SealMarginMm),
            margins.CutClearanceMm - margins.SealMarginMm)
        {
            TooThin = shape.WeakFloors.SelectMany(f => f.Pulls.Select(p => (p.Pod, f.Area))).GroupBy(f => f.Pod, StringComparer.Ordinal)
                .ToImmutableSortedDictionary(g => g.Key, g => Region.UnionOf(g.Select(f => f.Area)), StringComparer.Ordinal),
        };
    }

    // Hundreds of drilled holes would come out with hundreds of corners each: piece by piece with few, then all together.
    private static Region Grown(Region area, double byMm) => !area.IsIntricate ? area.Grow(byMm)
        : Region.UnionOf(area.Pieces.Select(p => p.Grow(byMm, isCoarse: true)));

    /// <summary>The same wood turned about a point, which becomes the zero.</summary>
    public ClearWood Turned(Turn turn, Point2 pivot) => this with
    {
        ForBodies = ForBodies.Turned(turn, pivot),
        ForSeals = ForSeals.Turned(turn, pivot),
        Unsound = Unsound.Turned(turn, pivot),
        TooThin = TooThin.Count == 0 ? TooThin : TooThin.ToImmutableSortedDictionary(f => f.Key, f => f.Value.Turned(turn, pivot), StringComparer.Ordinal),
    };
}

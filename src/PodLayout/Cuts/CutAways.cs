using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Parts;

namespace PodLayout.Cuts;

/// <summary>What cuts take off the part's mass.</summary>
/// <remarks>
/// Height by height: above each thickness that is left the wood is gone over all areas that leave no more. Two cuts over the same
/// place are counted once. Where a thickness was rounded it was rounded down, so that the part comes out rather too light.
/// </remarks>
public static class CutAways
{
    private const double NothingMm3 = 1;

    /// <summary>What is taken off.</summary>
    /// <param name="shape">The part.</param>
    /// <param name="thicknessMm">Its thickness.</param>
    /// <param name="fromFace">What cuts from the face leave.</param>
    /// <param name="through">What is cut through.</param>
    /// <param name="underside">Grooves and pockets in the underside, and their depth.</param>
    public static ImmutableArray<CutAway> Of(
        PartShape shape, double thicknessMm, IReadOnlyList<ThinnedArea> fromFace, Region through, IEnumerable<(Region Area, double DepthMm)> underside)
    {
        var part = Region.Inside(shape.Outline, shape.Holes);
        List<(Region Area, double HeightMm)> gone = [];
        // A hair off within, as a cut along the edge reaches into the part by the chords of its line.
        List<(Region Area, double LeftMm)> thin = [(Within(through, part.Shrink(Tolerances.ContactMm)), 0), .. fromFace.Select(a => (Within(a.Area, part), a.LeftMm))];
        var levels = thin.Where(a => !a.Area.IsEmpty && a.LeftMm < thicknessMm).GroupBy(a => a.LeftMm).OrderBy(g => g.Key).ToList();
        var all = Region.Empty;
        for (var i = 0; i < levels.Count; i++)
        {
            all = Region.UnionOf([all, .. levels[i].Select(a => a.Area)]);
            gone.Add((all, (i + 1 < levels.Count ? levels[i + 1].Key : thicknessMm) - levels[i].Key));
        }

        return
        [
            .. Sum(gone, isGone: false),
            .. Sum(underside.Select(u => (Within(u.Area, part), u.DepthMm)), isGone: true),
        ];
    }

    private static Region Within(Region area, Region part)
    {
        if (area.IsEmpty || part.IsEmpty)
        {
            return Region.Empty;
        }

        var near = area.Near(part.Bounds);
        return (near.IsIntricate ? near.SimplifiedOutward(Tolerances.ContactMm) : near).Intersect(part);
    }

    private static IEnumerable<CutAway> Sum(IEnumerable<(Region Area, double HeightMm)> slices, bool isGone)
    {
        double volume = 0;
        var moment = new Point2(0, 0);
        foreach (var (area, height) in slices.Where(s => !s.Area.IsEmpty))
        {
            volume += area.AreaMm2 * height;
            moment += area.Centroid * (area.AreaMm2 * height);
        }

        return volume < NothingMm3 ? [] : [new CutAway(volume, moment * (1 / volume), isGone)];
    }
}

using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Parts;

namespace PodLayout.Cuts;

/// <summary>What cuts take off the part's mass.</summary>
/// <remarks>
/// In strips along X: wherever several cuts lie over each other the deepest counts. Where a thickness was rounded it was rounded
/// down, so that the part comes out rather too light.
/// </remarks>
public static class CutAways
{
    private const double NothingMm3 = 1;

    // Edges are straight within a strip and the cuts in it take what they take at its middle: exact where no two edges cross, and
    // so low that what is left out where they do cannot be weighed.
    private const double HighestStripMm = 1;

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
        // A hair off within, as a cut along the edge reaches into the part by the chords of its line.
        Cut[] gone = [new(through, part.Shrink(Tolerances.ContactMm), thicknessMm)];
        return
        [
            .. Sum([.. gone, .. fromFace.Select(a => new Cut(a.Area, part, thicknessMm - a.LeftMm))], isGone: false),
            .. Sum([.. underside.Select(u => new Cut(u.Area, part, u.DepthMm))], isGone: true),
        ];
    }

    private static IEnumerable<CutAway> Sum(Cut[] cuts, bool isGone)
    {
        cuts = [.. cuts.Where(c => c.DepthMm > 0 && !c.Area.IsEmpty && !c.Within.IsEmpty)];
        ImmutableArray<Region> bounds = [.. cuts.Select(c => c.Within).Distinct()];
        // Each cut's area, then what bounds them.
        var edges = cuts.Select(c => c.Area.Near(c.Within.Bounds)).Concat(bounds).SelectMany(Edges).OrderBy(e => e.Low.Y).ToArray();
        double volume = 0;
        var moment = new Point2(0, 0);
        var isIn = new bool[cuts.Length + bounds.Length];
        int[] boundOf = [.. cuts.Select(c => cuts.Length + bounds.IndexOf(c.Within))];
        List<Edge> across = [];
        var next = 0;
        foreach (var (low, high) in Strips(edges))
        {
            var y = (low + high) / 2;
            across.RemoveAll(e => e.High.Y <= y);
            for (; next < edges.Length && edges[next].Low.Y < y; next++)
            {
                if (edges[next].High.Y > y)
                {
                    across.Add(edges[next]);
                }
            }

            // An area begins and ends at every second of its edges.
            Array.Clear(isIn);
            var (from, depth) = (0.0, 0.0);
            foreach (var (x, owner) in across.Select(e => (X: e.XAt(y), e.Owner)).OrderBy(c => c.X))
            {
                volume += depth * (x - from) * (high - low);
                moment += new Point2((from + x) / 2, y) * (depth * (x - from) * (high - low));
                isIn[owner] = !isIn[owner];
                (from, depth) = (x, 0);
                for (var c = 0; c < cuts.Length; c++)
                {
                    depth = isIn[c] && isIn[boundOf[c]] ? Math.Max(depth, cuts[c].DepthMm) : depth;
                }
            }
        }

        return volume < NothingMm3 ? [] : [new CutAway(volume, moment * (1 / volume), isGone)];
    }

    private static IEnumerable<Edge> Edges(Region area, int owner) =>
        from ring in area.Boundary
        from i in Enumerable.Range(0, ring.Points.Length)
        let a = ring.Points[i]
        let b = ring.Points[(i + 1) % ring.Points.Length]
        where a.Y != b.Y
        select a.Y < b.Y ? new Edge(a, b, owner) : new Edge(b, a, owner);

    // From corner to corner, and none higher than a millimetre.
    private static IEnumerable<(double LowMm, double HighMm)> Strips(Edge[] edges)
    {
        var heights = edges.SelectMany(e => new[] { e.Low.Y, e.High.Y }).Distinct().Order().ToArray();
        for (var i = 1; i < heights.Length; i++)
        {
            var count = (int)Math.Ceiling((heights[i] - heights[i - 1]) / HighestStripMm);
            for (var k = 0; k < count; k++)
            {
                yield return (Between(k), Between(k + 1));
            }

            double Between(int k) => heights[i - 1] + (heights[i] - heights[i - 1]) * k / count;
        }
    }

    private sealed record Cut(Region Area, Region Within, double DepthMm);

    private readonly record struct Edge(Point2 Low, Point2 High, int Owner)
    {
        public double XAt(double y) => Low.X + (y - Low.Y) / (High.Y - Low.Y) * (High.X - Low.X);
    }
}

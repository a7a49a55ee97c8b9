using System.Collections.Immutable;
using PodLayout.Findings;
using PodLayout.Geometry;

namespace PodLayout.Reading.Rings;

/// <summary>Makes rings of the lines of a drawing, layer by layer, then across layers.</summary>
internal static class RingMaking
{
    /// <summary>Gaps named one by one; the rest are counted.</summary>
    private const int MostNamed = 10;

    /// <summary>Gaps up to this are far below what is joined by default, and no reason to warn, mm.</summary>
    private const double WidestSilentGapMm = Tolerances.JoinGapMm / 10;

    public static Drawing Make(DrawnPaths drawn, ReadingOptions options, DrawingFindings findings)
    {
        var paths = PathCleaning.Clean(drawn.Paths, findings);
        var rings = new List<DrawnPath>(paths.Where(p => p.Closed));
        var open = new List<DrawnPath>();
        var branches = new List<Branch>();
        var gaps = new List<Gap>();
        foreach (var layer in paths.Where(p => !p.Closed).GroupBy(p => p.Layer, StringComparer.OrdinalIgnoreCase).OrderBy(g => g.Key, StringComparer.Ordinal))
        {
            var joined = Overlaps.Mended(Joining.Join([.. layer], layer.Key, options.JoinGapMm, gaps), rings, layer.Key, options.JoinGapMm, gaps, findings);
            rings.AddRange(joined.Rings);
            open.AddRange(joined.Open);
            branches.AddRange(joined.Branches);
        }

        JoinAcrossLayers(rings, ref open, options.JoinGapMm, gaps, findings);
        ReportGaps(gaps, findings);
        rings = RingMending.Mended(rings, open, gaps.SelectMany(g => new[] { g.From, g.To }).ToHashSet(), findings);
        var drawnRings = rings.Where(r => r.Points.Length > 2)
            .Select(r => Drawn(r))
            .OrderByDescending(r => r.Ring.AreaMm2).ThenBy(r => r.Ring.Bounds.MinX).ThenBy(r => r.Ring.Bounds.MinY)
            .ThenBy(r => r.Layer, StringComparer.Ordinal);
        var contours = WithNearest(open);
        ImmutableArray<DrawnRing> all = [.. drawnRings];
        return new(
            findings.FileName, drawn.Format, drawn.Unit.Name, drawn.Unit.MmPerUnit, options.JoinGapMm,
            all, contours, [.. branches.OrderBy(b => b.Point.X).ThenBy(b => b.Point.Y)], Layers(drawn, all, contours))
        { Lengths = drawn.Lengths };
    }

    private static DrawnRing Drawn(DrawnPath path)
    {
        var asDrawn = new Ring(path.Points);
        return new(path.Layer, InStandardForm(path.Points))
        {
            CoversPage = path.CoversPage,
            TrueAreaMm2 = Math.Abs(asDrawn.SignedAreaMm2 + path.CurveAreaMm2),
            TrueLengthMm = asDrawn.PerimeterMm + path.CurveLengthMm,
        };
    }

    /// <summary>Counter-clockwise, from the leftmost (then lowest) point on, so that the order of lines in the file does not show.</summary>
    private static Ring InStandardForm(ImmutableArray<Point2> points)
    {
        var ring = new Ring(points).CounterClockwise().Points;
        var first = 0;
        for (var i = 1; i < ring.Length; i++)
        {
            if (ring[i].X < ring[first].X || (ring[i].X == ring[first].X && ring[i].Y < ring[first].Y))
                first = i;
        }

        return new([.. ring.Skip(first), .. ring.Take(first)]);
    }

    /// <summary>Lines left open on their own layers may close with those of others: an outline with its arcs on one layer and its lines on another.</summary>
    private static void JoinAcrossLayers(
        List<DrawnPath> rings, ref List<DrawnPath> open, double gapMm, List<Gap> gaps, DrawingFindings findings)
    {
        if (open.Select(o => o.Layer).Distinct(StringComparer.OrdinalIgnoreCase).Count() < 2)
            return;
        var trial = new List<Gap>();
        var joined = Joining.Join(open, "", gapMm, trial);
        var used = new HashSet<DrawnPath>(ReferenceEqualityComparer.Instance);
        foreach (var (ring, members) in joined.Rings.Zip(joined.Members))
        {
            used.UnionWith(members);
            var ends = members.SelectMany(m => new[] { m.Points[0], m.Points[^1] }).ToHashSet();
            var layers = members.GroupBy(m => m.Layer, StringComparer.OrdinalIgnoreCase)
                .OrderByDescending(g => g.Sum(LengthMm)).ThenBy(g => g.Key, StringComparer.Ordinal).ToList();
            rings.Add(ring with { Layer = layers[0].Key });
            gaps.AddRange(trial.Where(g => ends.Contains(g.From) && ends.Contains(g.To)));
            findings.AddAt(
                Severity.Warning, "joined-across-layers",
                $"A ring is drawn on {layers.Count} layers ({string.Join(", ", layers.Select(l => l.Key))}); it was taken to be on {layers[0].Key}.", ring.Points[0]);
        }

        open = [.. open.Where(o => !used.Contains(o))];
    }

    private static double LengthMm(DrawnPath path)
    {
        double sum = 0;
        for (var i = 1; i < path.Points.Length; i++)
            sum += (path.Points[i] - path.Points[i - 1]).Length;
        return sum;
    }

    private static void ReportGaps(List<Gap> gaps, DrawingFindings findings)
    {
        var l = findings.Lengths;
        var sorted = gaps.OrderByDescending(g => g.WidthMm).ThenBy(g => Math.Min(g.From.X, g.To.X)).ThenBy(g => Math.Min(g.From.Y, g.To.Y)).ToList();
        var small = sorted.FindAll(g => g.WidthMm <= WidestSilentGapMm);
        sorted.RemoveAll(g => g.WidthMm <= WidestSilentGapMm);
        if (small.Count > 0)
            findings.AddAt(Severity.Note, "gap-joined", $"{Counted.Of(small.Count, "gap")} of at most {l.Length(small[0].WidthMm)} {(small.Count == 1 ? "was" : "were")} closed, the widest here.", small[0].From);
        foreach (var gap in sorted.Take(MostNamed))
            findings.AddAt(Severity.Warning, "gap-joined", $"A gap of {l.Length(gap.WidthMm)} was closed.", gap.From, "Close it in the drawing if it is not meant.");
        if (sorted.Count > MostNamed)
            findings.Warn("gap-joined", $"{Counted.Of(sorted.Count - MostNamed, "more gap")} {(sorted.Count == MostNamed + 1 ? "was" : "were")} closed, none wider than {l.Length(sorted[MostNamed].WidthMm)}.");
    }

    private static ImmutableArray<OpenContour> WithNearest(List<DrawnPath> open)
    {
        // Naming the nearest end matters for a handful; a drawing of thousands of loose lines is not near to being a part.
        const int mostSearched = 500;
        var contours = ImmutableArray.CreateBuilder<OpenContour>(open.Count);
        var ends = open.SelectMany(o => new[] { o.Points[0], o.Points[^1] }).ToList();
        for (var i = 0; i < open.Count; i++)
        {
            Point2? start = null, end = null;
            if (open.Count <= mostSearched)
            {
                start = Nearest(ends, 2 * i);
                end = Nearest(ends, 2 * i + 1);
            }

            contours.Add(new(open[i].Layer, open[i].Points, start, end) { IsTail = open[i].IsTail });
        }

        return [.. contours.OrderBy(c => c.Points[0].X).ThenBy(c => c.Points[0].Y)];
    }

    private static Point2? Nearest(List<Point2> ends, int of)
    {
        Point2? best = null;
        for (var i = 0; i < ends.Count; i++)
        {
            if (i != of && (best is not { } b || (ends[i] - ends[of]).Length < (b - ends[of]).Length))
                best = ends[i];
        }

        return best;
    }

    private static ImmutableArray<LayerContent> Layers(
        DrawnPaths drawn, ImmutableArray<DrawnRing> rings, ImmutableArray<OpenContour> contours)
    {
        var names = drawn.Paths.Select(p => p.Layer).Concat(drawn.HiddenLayers).Concat(drawn.EmptyLayers)
            .Distinct(StringComparer.OrdinalIgnoreCase).Order(StringComparer.Ordinal);
        bool Is(string a, string b) => a.Equals(b, StringComparison.OrdinalIgnoreCase);
        return [.. names.Select(n => new LayerContent(
            n, drawn.Paths.Count(p => Is(p.Layer, n)), rings.Count(r => Is(r.Layer, n)),
            contours.Count(c => Is(c.Layer, n)), drawn.HiddenLayers.Any(h => Is(h, n))) { Texts = drawn.Texts.GetValueOrDefault(n) })];
    }
}

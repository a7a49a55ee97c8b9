using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Findings;
using PodLayout.Geometry;

namespace PodLayout.Reading.Rings;

/// <summary>Drops what adds nothing: repeated vertices, lines of no length, lines drawn twice.</summary>
internal static class PathCleaning
{
    /// <summary>Places that a finding lists.</summary>
    private const int MostPlaces = 12;

    private const double Same = Tolerances.SamePointMm;

    public static List<DrawnPath> Clean(ImmutableArray<DrawnPath> paths, DrawingFindings findings)
    {
        var kept = new List<DrawnPath>(paths.Length);
        List<DrawnPath> empty = [], repeated = [];
        var vanishing = new List<DrawnPath>();
        foreach (var path in paths)
        {
            var points = WithoutRepeats(path.Points);
            var closed = path.Closed;
            var isRepeated = points.Count < path.Points.Length && points.Count > 1;
            if (points.Count > 3 && (points[^1] - points[0]).Length <= Same)
            {
                // First = last closes a line whether it is flagged closed or not; flagged, the last is one too many.
                points.RemoveAt(points.Count - 1);
                closed = true;
            }

            if (points.Count < 2)
            {
                (path.RadiusMm > Same ? vanishing : empty).Add(path);
                continue;
            }

            if (isRepeated)
                repeated.Add(path);

            // Out and back along the same line encloses nothing, so two points never make a ring.
            kept.Add(path with { Points = [.. points], Closed = closed && points.Count > 2 });
        }

        Tell(empty, Severity.Warning, "zero-length", n => $"{Counted.Of(n, "line")} of no length {(n == 1 ? "was" : "were")} dropped", findings);
        Tell(repeated, Severity.Mended, "vertex-repeated", n => $"Repeated vertices were dropped from {Counted.Of(n, "line")}", findings);
        var lasting = WithoutDoubles(kept, findings);
        TellVanishing(vanishing, lasting, findings);
        return lasting;
    }

    // In one finding, with the place of each.
    private static void Tell(List<DrawnPath> paths, Severity severity, string code, Func<int, string> what, DrawingFindings findings)
    {
        if (paths.Count == 0)
            return;
        var places = paths.Select(p => findings.Lengths.At(p.Points[0])).Distinct().ToList();
        var more = places.Count > MostPlaces ? $" and at {places.Count - MostPlaces} more places" : "";
        var where = places.Count == 1 ? "" : $" at {string.Join(", ", places.Take(MostPlaces))} {findings.Lengths.Unit}{more}";
        findings.AddAt(severity, code, $"{what(paths.Count)}{where}; the first is {paths[0].Origin}.", paths[0].Points[0]);
    }

    /// <summary>
    /// An arc without length between the ends of two lines is a rounding of a corner to nothing. Standing alone it was most likely a
    /// whole circle or ellipse, so that the drawing is refused.
    /// </summary>
    private static void TellVanishing(List<DrawnPath> vanishing, List<DrawnPath> kept, DrawingFindings findings)
    {
        if (vanishing.Count == 0)
            return;
        var ends = new PointGrid(Tolerances.JoinGapMm);
        var points = kept.SelectMany(k => k.Points).ToList();
        for (var i = 0; i < points.Count; i++)
            ends.Add(points[i], i);
        foreach (var arc in vanishing)
        {
            var isLink = ends.Near(arc.Points[0]).Any(i => (points[i] - arc.Points[0]).Length <= Tolerances.JoinGapMm);
            var what = string.Create(CultureInfo.InvariantCulture, $"{arc.Origin} has a radius of {arc.RadiusMm:0.###} mm, but begins and ends at one point");
            if (isLink)
                findings.AddAt(Severity.Mended, "curve-vanishing", $"{what}, where other lines end too; it was dropped.", arc.Points[0]);
            else
                findings.AddAt(Severity.Refused, "curve-vanishing", $"{what}: a whole circle or ellipse may be meant.", arc.Points[0], "Draw it as a whole circle or ellipse, or delete it.");
        }
    }

    private static List<Point2> WithoutRepeats(ImmutableArray<Point2> points)
    {
        var result = new List<Point2>(points.Length);
        foreach (var p in points)
        {
            if (result.Count == 0 || (p - result[^1]).Length > Same)
                result.Add(p);
        }

        // The end of a line is where others meet it: keep it rather than its neighbour.
        if (result.Count > 1)
            result[^1] = points[^1];
        return result;
    }

    private static List<DrawnPath> WithoutDoubles(List<DrawnPath> paths, DrawingFindings findings)
    {
        var kept = new List<DrawnPath>(paths.Count);
        var grid = new PointGrid(1);
        var keys = new List<Point2>();
        var doubles = new List<DrawnPath>();
        foreach (var path in paths)
        {
            var key = path.Closed ? Mean(path.Points) : (path.Points[0] + path.Points[^1]) * 0.5;
            if (grid.Near(key).Any(i => (keys[i] - key).Length <= 2 * Same && IsSame(kept[i], path)))
            {
                doubles.Add(path);
                continue;
            }

            grid.Add(key, kept.Count);
            keys.Add(key);
            kept.Add(path);
        }

        Tell(doubles, Severity.Warning, "duplicate", n => $"{Counted.Of(n, "line")} that {(n == 1 ? "is" : "are")} drawn twice {(n == 1 ? "was" : "were")} dropped once", findings);
        return kept;
    }

    private static Point2 Mean(ImmutableArray<Point2> points)
    {
        // About the first point, so that a ring far from zero and its double agree to the last digits.
        var sum = default(Point2);
        foreach (var p in points)
            sum += p - points[0];
        return points[0] + sum * (1.0 / points.Length);
    }

    /// <summary>Whether two lines are the same, whichever way they run and, when closed, wherever they begin.</summary>
    private static bool IsSame(DrawnPath a, DrawnPath b)
    {
        if (a.Closed != b.Closed || a.Points.Length != b.Points.Length || a.Layer != b.Layer)
            return false;
        var n = a.Points.Length;
        if (!a.Closed)
            return Matches(a.Points, b.Points, 0, 1) || Matches(a.Points, b.Points, n - 1, -1);
        for (var start = 0; start < n; start++)
        {
            if ((b.Points[start] - a.Points[0]).Length <= Same && (Matches(a.Points, b.Points, start, 1) || Matches(a.Points, b.Points, start, -1)))
                return true;
        }

        return false;
    }

    private static bool Matches(ImmutableArray<Point2> a, ImmutableArray<Point2> b, int start, int step)
    {
        var n = a.Length;
        for (int i = 0, j = start; i < n; i++, j += step)
        {
            if ((a[i] - b[((j % n) + n) % n]).Length > Same)
                return false;
        }

        return true;
    }
}

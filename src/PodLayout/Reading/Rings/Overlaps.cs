using PodLayout.Findings;
using PodLayout.Geometry;

namespace PodLayout.Reading.Rings;

/// <summary>
/// Straight lines that lie partly on each other, and lines that lie wholly on a ring: drawn twice in different pieces. They are looked
/// for only among lines that did not close, so that two parts that share an edge stay two.
/// </summary>
internal static class Overlaps
{
    /// <summary>More lines than this that do not close are no slip, and no part.</summary>
    private const int MostSearched = 2000;

    /// <summary>Points of a line on a curve lie on the chord of another within this, mm.</summary>
    private const double OnRingMm = 2 * Tolerances.ChordMm;

    public static Joined Mended(Joined joined, List<DrawnPath> rings, string layer, double gapMm, List<Gap> gaps, DrawingFindings findings)
    {
        var members = joined.OpenMembers.SelectMany(m => m).ToList();
        if (members.Count is 0 or > MostSearched)
            return joined;
        var merged = Merge(members, out var places);
        if (places.Count > 0)
        {
            var again = Joining.Join(merged, layer, gapMm, gaps);
            if (again.Rings.Count > 0)
            {
                findings.AddAt(
                    Severity.Mended, "lines-overlap", $"{Counted.Of(places.Count, "line")} on layer {layer} that {(places.Count == 1 ? "lies" : "lie")} partly on {(places.Count == 1 ? "another was" : "others were")} merged with {(places.Count == 1 ? "it" : "them")}, first here.", places[0]);
                joined = new([.. joined.Rings, .. again.Rings], [.. joined.Members, .. again.Members], again.Open, again.OpenMembers, again.Branches);
            }
        }

        var around = joined.Rings.Concat(rings.Where(r => r.Layer.Equals(layer, StringComparison.OrdinalIgnoreCase))).ToList();
        for (var i = joined.Open.Count - 1; i >= 0; i--)
        {
            if (!around.Exists(r => LiesOn(joined.Open[i], r)))
                continue;
            findings.AddAt(Severity.Mended, "lines-overlap", $"A line on layer {layer} that lies on a closed one was dropped.", joined.Open[i].Points[0]);
            joined.Open.RemoveAt(i);
            joined.OpenMembers.RemoveAt(i);
        }

        return joined;
    }

    private static List<DrawnPath> Merge(List<DrawnPath> paths, out List<Point2> places)
    {
        var result = paths.Where(p => p.Points.Length != 2).ToList();
        places = [];
        // Lines of one direction and distance from zero lie on one straight line; rounding may split a group, so neighbours are tried too.
        var straight = paths.Where(p => p.Points.Length == 2).OrderBy(p => p.Points[0].X).ThenBy(p => p.Points[0].Y).ToList();
        for (var i = 0; i < straight.Count; i++)
        {
            for (var j = i + 1; j < straight.Count; j++)
            {
                if (Union(straight[i], straight[j]) is not { } union)
                    continue;
                places.Add(straight[j].Points[0]);
                straight[i] = union;
                straight.RemoveAt(j);
                // The longer line may now reach one that was passed before.
                j = i;
            }
        }

        result.AddRange(straight);
        return result;
    }

    /// <summary>The line that covers both, where they lie on one straight line and share more than an end.</summary>
    private static DrawnPath? Union(DrawnPath a, DrawnPath b)
    {
        Point2 from = a.Points[0], along = a.Points[1] - from;
        var length = along.Length;
        Point2 p = b.Points[0] - from, q = b.Points[1] - from;
        if (Math.Abs(along.Cross(p)) > Tolerances.FlawMm * length || Math.Abs(along.Cross(q)) > Tolerances.FlawMm * length)
            return null;
        double tp = along.Dot(p) / length, tq = along.Dot(q) / length;
        double low = Math.Min(tp, tq), high = Math.Max(tp, tq);
        if (Math.Min(high, length) - Math.Max(low, 0) <= Tolerances.FlawMm)
            return null;
        return a with
        {
            Points = [low < 0 ? (tp < tq ? b.Points[0] : b.Points[1]) : a.Points[0], high > length ? (tp < tq ? b.Points[1] : b.Points[0]) : a.Points[1]],
        };
    }

    private static bool LiesOn(DrawnPath line, DrawnPath ring)
    {
        var box = Box2.Around(ring.Points).Grow(OnRingMm);
        if (!box.Contains(Box2.Around(line.Points)))
            return false;
        for (var i = 0; i < line.Points.Length; i++)
        {
            if (!IsOn(ring, line.Points[i]) || (i > 0 && !IsOn(ring, (line.Points[i] + line.Points[i - 1]) * 0.5)))
                return false;
        }

        return true;
    }

    private static bool IsOn(DrawnPath ring, Point2 p)
    {
        for (var i = 0; i < ring.Points.Length; i++)
        {
            Point2 a = ring.Points[i], along = ring.Points[(i + 1) % ring.Points.Length] - a;
            var squared = along.Dot(along);
            var t = squared > 0 ? Math.Clamp((p - a).Dot(along) / squared, 0, 1) : 0;
            if ((p - a - along * t).Length <= OnRingMm)
                return true;
        }

        return false;
    }
}

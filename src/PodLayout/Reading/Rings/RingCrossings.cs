using PodLayout.Geometry;

namespace PodLayout.Reading.Rings;

/// <summary>Finds where rings cross or touch themselves and each other, by a grid over the segments.</summary>
internal static class RingCrossings
{
    /// <summary>One crossing for each ring that meets itself and each pair that meets, in the order of the rings.</summary>
    public static List<RingCrossing> Find(IReadOnlyList<Ring> rings)
    {
        var segments = new List<(int Ring, int Index)>();
        for (var r = 0; r < rings.Count; r++)
        {
            for (var i = 0; i < rings[r].Points.Length; i++)
                segments.Add((r, i));
        }

        if (segments.Count == 0)
            return [];
        var found = new SortedDictionary<(int, int), RingCrossing>();
        var box = Box2.Around(rings.SelectMany(r => r.Points));
        // As many cells as segments, so that a cell holds a few.
        var size = Math.Max(Math.Sqrt(Math.Max(box.Width, 1e-3) * Math.Max(box.Height, 1e-3) / segments.Count), Math.Max(box.Width, box.Height) / 4096);
        var cells = new Dictionary<(int, int), List<int>>();
        for (var s = 0; s < segments.Count; s++)
        {
            foreach (var cell in CellsOf(rings, segments[s], box, size))
            {
                if (!cells.TryGetValue(cell, out var list))
                    cells[cell] = list = [];
                foreach (var other in list)
                    Test(rings, segments[other], segments[s], found);
                list.Add(s);
            }
        }

        return [.. found.Values];
    }

    private static IEnumerable<(int X, int Y)> CellsOf(IReadOnlyList<Ring> rings, (int Ring, int Index) segment, Box2 box, double size)
    {
        var (a, b) = Ends(rings, segment);
        double low = Math.Min(a.Y, b.Y) - box.MinY, high = Math.Max(a.Y, b.Y) - box.MinY;
        var pad = Math.Max(1e-6, size * 1e-6);
        for (var row = (int)Math.Floor((low - pad) / size); row <= (int)Math.Floor((high + pad) / size); row++)
        {
            // The stretch of the segment inside the row, so that a long slanting line fills a band of cells and no square.
            double x0 = a.X, x1 = b.X;
            if (a.Y != b.Y)
            {
                var t0 = Math.Clamp((row * size - pad + box.MinY - a.Y) / (b.Y - a.Y), 0, 1);
                var t1 = Math.Clamp(((row + 1) * size + pad + box.MinY - a.Y) / (b.Y - a.Y), 0, 1);
                (x0, x1) = (a.X + (b.X - a.X) * t0, a.X + (b.X - a.X) * t1);
            }

            var from = (int)Math.Floor((Math.Min(x0, x1) - pad - box.MinX) / size);
            var to = (int)Math.Floor((Math.Max(x0, x1) + pad - box.MinX) / size);
            for (var column = from; column <= to; column++)
                yield return (column, row);
        }
    }

    private static (Point2 A, Point2 B) Ends(IReadOnlyList<Ring> rings, (int Ring, int Index) segment)
    {
        var points = rings[segment.Ring].Points;
        return (points[segment.Index], points[(segment.Index + 1) % points.Length]);
    }

    private static void Test(
        IReadOnlyList<Ring> rings, (int Ring, int Index) s, (int Ring, int Index) t,
        SortedDictionary<(int, int), RingCrossing> found)
    {
        var key = (Math.Min(s.Ring, t.Ring), Math.Max(s.Ring, t.Ring));
        if (found.ContainsKey(key))
            return;
        var (a, b) = Ends(rings, s);
        var (c, d) = Ends(rings, t);
        var count = rings[s.Ring].Points.Length;
        Point2? at;
        if (s.Ring == t.Ring && (s.Index + 1) % count == t.Index)
            at = FoldsBack(a, b, d);
        else if (s.Ring == t.Ring && (t.Index + 1) % count == s.Index)
            at = FoldsBack(c, d, b);
        else
            at = Meeting(a, b, c, d);
        if (at is { } point)
            found[key] = s.Ring <= t.Ring ? new(s.Ring, t.Ring, point, s.Index, t.Index) : new(t.Ring, s.Ring, point, t.Index, s.Index);
    }

    /// <summary>Whether the line a-b-c runs back over itself at b.</summary>
    private static Point2? FoldsBack(Point2 a, Point2 b, Point2 c)
    {
        Point2 back = a - b, on = c - b;
        if (back.Dot(on) <= 0)
            return null;
        var longer = Math.Max(back.Length, on.Length);
        return Math.Abs(back.Cross(on)) / longer <= Tolerances.TouchMm ? b : null;
    }

    private static Point2? Meeting(Point2 a, Point2 b, Point2 c, Point2 d)
    {
        const double touch = Tolerances.TouchMm;
        if (Math.Max(a.X, b.X) + touch < Math.Min(c.X, d.X) || Math.Max(c.X, d.X) + touch < Math.Min(a.X, b.X)
            || Math.Max(a.Y, b.Y) + touch < Math.Min(c.Y, d.Y) || Math.Max(c.Y, d.Y) + touch < Math.Min(a.Y, b.Y))
            return null;
        double c1 = (b - a).Cross(c - a), d1 = (b - a).Cross(d - a), a1 = (d - c).Cross(a - c), b1 = (d - c).Cross(b - c);
        if (((c1 > 0 && d1 < 0) || (c1 < 0 && d1 > 0)) && ((a1 > 0 && b1 < 0) || (a1 < 0 && b1 > 0)))
            return a + (b - a) * (a1 / (a1 - b1));
        return On(a, b, c) ? c : On(a, b, d) ? d : On(c, d, a) ? a : On(c, d, b) ? b : null;
    }

    /// <summary>Whether the point lies on the segment.</summary>
    private static bool On(Point2 a, Point2 b, Point2 p)
    {
        var along = b - a;
        var squared = along.Dot(along);
        var t = squared > 0 ? Math.Clamp((p - a).Dot(along) / squared, 0, 1) : 0;
        return (p - a - along * t).Length <= Tolerances.TouchMm;
    }
}

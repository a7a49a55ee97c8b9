namespace PodLayout.Geometry;

/// <summary>A ring with fewer corners that only grows.</summary>
/// <remarks>
/// Two steps, repeated while they stay within the limit: a corner that turns inward is dropped, and an edge between two corners
/// that turn outward is taken away by lengthening its neighbours until they meet. Either adds a triangle to the inside and takes
/// nothing from it, so that what is clear of the simpler ring is clear of the true one. A disc of n chords that touch its circle
/// becomes one of n / 2, n / 4 and so on, whose chords still touch it.
/// </remarks>
internal static class FewerCorners
{
    // Neighbours that meet under a sharper angle than this are left as they are: sine of the turn, and no turn back.
    private const double LeastSine = 1e-9;

    /// <summary>The simpler ring; it may cross itself where two of its stretches lie nearer to each other than the limit.</summary>
    /// <param name="ring">A simple ring with the inside to the left.</param>
    /// <param name="limitMm">How far it may reach beyond the ring, mm.</param>
    public static Ring Of(Ring ring, double limitMm)
    {
        // Corner i stands at the start of edge i; movedMm says how far edge i may have moved from the true line.
        var points = ring.Points.ToList();
        var movedMm = Enumerable.Repeat(0.0, points.Count).ToList();
        while (points.Count > 4 && Round(points, movedMm, limitMm) is { } fewer && fewer.Points.Count < points.Count)
        {
            (points, movedMm) = fewer;
        }

        return points.Count == ring.Points.Length ? ring : new([.. points]);
    }

    // Once round the ring. Every second edge at most goes, so that a curve stays even.
    private static (List<Point2> Points, List<double> MovedMm) Round(List<Point2> points, List<double> movedMm, double limitMm)
    {
        var n = points.Count;
        List<Point2> kept = new(n);
        List<double> keptMoved = new(n);
        var left = n;
        var i = 0;
        for (; i + 2 < n; i++)
        {
            // Corners a, b, c, d and the edges between them; the first corner of the list and its edge stay as they are.
            Point2 a = kept.Count > 0 ? kept[^1] : points[n - 1], b = points[i], c = points[i + 1], d = points[i + 2];
            var ahead = kept.Count > 0 ? keptMoved[^1] : double.PositiveInfinity;
            if (left > 4 && Cross(a, b, c) <= 0)
            {
                var moved = Math.Max(ahead, movedMm[i]) + FromLine(b, a, c);
                if (moved <= limitMm && (b - a).Dot(c - b) > 0)
                {
                    // The edge a-c takes the place of a-b and b-c; b is not kept, and c is not looked at in this round.
                    keptMoved[^1] = moved;
                    Keep(i + 1);
                    i++;
                    left--;
                    continue;
                }
            }
            else if (left > 4 && Meeting(a, b, c, d) is { } x)
            {
                var moved = movedMm[i] + FromLine(x, b, c);
                if (Math.Max(moved, Math.Max(ahead, movedMm[i + 1])) <= limitMm)
                {
                    keptMoved[^1] = Math.Max(ahead, moved);
                    kept.Add(x);
                    keptMoved.Add(Math.Max(moved, movedMm[i + 1]));
                    Keep(i + 2);
                    i += 2;
                    left--;
                    continue;
                }
            }

            Keep(i);
        }

        for (; i < n; i++)
        {
            Keep(i);
        }

        // The next round starts elsewhere, since this one left the corners at its start and end alone.
        var third = kept.Count / 3;
        return ([.. kept.Skip(third), .. kept.Take(third)], [.. keptMoved.Skip(third), .. keptMoved.Take(third)]);

        void Keep(int index)
        {
            kept.Add(points[index]);
            keptMoved.Add(movedMm[index]);
        }
    }

    // Where the lines a-b and d-c meet beyond b and c; null when b and c do not both turn outward, or by half a turn together.
    private static Point2? Meeting(Point2 a, Point2 b, Point2 c, Point2 d)
    {
        if (Cross(b, c, d) <= 0)
        {
            return null;
        }

        Point2 arriving = b - a, leaving = d - c;
        var cross = arriving.Cross(leaving);
        return cross <= LeastSine * arriving.Length * leaving.Length || arriving.Dot(leaving) <= 0
            ? null : b + arriving * ((c - b).Cross(leaving) / cross);
    }

    private static double Cross(Point2 a, Point2 b, Point2 c) => (b - a).Cross(c - b);

    private static double FromLine(Point2 p, Point2 a, Point2 b)
    {
        var along = b - a;
        return along.Length == 0 ? (p - a).Length : Math.Abs(along.Cross(p - a)) / along.Length;
    }
}

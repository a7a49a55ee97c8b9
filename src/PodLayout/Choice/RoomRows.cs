using System.Collections.Immutable;
using PodLayout.Seats;

namespace PodLayout.Choice;

/// <summary>Which seats share room: at most one of them can be filled.</summary>
public static class RoomRows
{
    private const double RoundingMm = 1e-6;

    /// <summary>
    /// The rows for seats on one board. All bodies over a common point exclude each other; the points are the middles of groove
    /// cells and the groove crossings between them, at every half pitch. For rectangles on the pitch that finds every pair that
    /// overlaps (the strip that two bodies share, grown by half the gap, always holds such a point); a pair with a round body
    /// that does not share a point gets a row of its own.
    /// </summary>
    /// <param name="poses">The pods.</param>
    /// <param name="seats">Pose, column and row of each seat.</param>
    /// <param name="pitchMm">Groove pitch.</param>
    /// <param name="gapMm">Least distance between bodies.</param>
    public static ImmutableArray<int[]> Of(
        ImmutableArray<PodPose> poses, IReadOnlyList<(int Pose, int Column, int Row)> seats, double pitchMm, double gapMm)
    {
        var over = new Dictionary<(int X, int Y), List<int>>();
        var points = poses.Select(pose => PointsUnder(pose, pitchMm, gapMm)).ToArray();
        for (var s = 0; s < seats.Count; s++)
        {
            foreach (var (x, y) in points[seats[s].Pose])
            {
                var at = (x + 2 * seats[s].Column, y + 2 * seats[s].Row);
                if (!over.TryGetValue(at, out var list))
                {
                    over.Add(at, list = []);
                }

                list.Add(s);
            }
        }

        var rows = over.Where(o => o.Value.Count > 1).OrderBy(o => o.Key.Y).ThenBy(o => o.Key.X)
            .Select(o => o.Value.ToArray()).ToList();
        return [.. rows, .. poses.Any(p => p.IsRound) ? PairsLeft(poses, seats, pitchMm, gapMm, rows) : []];
    }

    // Half-pitch points strictly inside the body grown by half the gap, counted from the seat's corner.
    private static List<(int X, int Y)> PointsUnder(PodPose pose, double pitchMm, double gapMm)
    {
        double half = pitchMm / 2, grow = gapMm / 2;
        var beyond = (int)Math.Ceiling(grow / half);
        double centreX = pose.ExtentXMm / 2, centreY = pose.ExtentYMm / 2;
        // Without a gap the middles of cells find every overlap of rectangles; half the points, half the work.
        var step = gapMm <= RoundingMm && !pose.IsRound ? 2 : 1;
        var start = step == 2 ? 1 : -beyond;
        var inside = new List<(int, int)>();
        for (var y = start; y <= 2 * pose.Rows + beyond; y += step)
        {
            for (var x = start; x <= 2 * pose.Columns + beyond; x += step)
            {
                double dx = Math.Abs(x * half - centreX), dy = Math.Abs(y * half - centreY);
                var isUnder = pose.IsRound
                    ? Math.Sqrt(dx * dx + dy * dy) < centreX + grow - RoundingMm
                    : dx < centreX + grow - RoundingMm && dy < centreY + grow - RoundingMm;
                if (isUnder)
                {
                    inside.Add((x, y));
                }
            }
        }

        return inside;
    }

    private static IEnumerable<int[]> PairsLeft(
        ImmutableArray<PodPose> poses,
        IReadOnlyList<(int Pose, int Column, int Row)> seats,
        double pitchMm,
        double gapMm,
        List<int[]> rows)
    {
        var covered = new HashSet<(int, int)>(rows.SelectMany(row =>
            from i in Enumerable.Range(0, row.Length) from j in Enumerable.Range(i + 1, row.Length - i - 1) select (row[i], row[j])));
        for (var i = 0; i < seats.Count; i++)
        {
            for (var j = i + 1; j < seats.Count; j++)
            {
                PodPose a = poses[seats[i].Pose], b = poses[seats[j].Pose];
                if ((a.IsRound || b.IsRound) && !covered.Contains((i, j))
                    && Clearance.BetweenPods(a, Body(a, i), b, Body(b, j)) < gapMm - RoundingMm)
                {
                    yield return [i, j];
                }
            }
        }

        Geometry.Box2 Body(PodPose pose, int s)
        {
            double x = seats[s].Column * pitchMm, y = seats[s].Row * pitchMm;
            return new(x, y, x + pose.ExtentXMm, y + pose.ExtentYMm);
        }
    }
}

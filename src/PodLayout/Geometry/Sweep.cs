using System.Collections.Immutable;

namespace PodLayout.Geometry;

/// <summary>What a rectangle sweeps when its centre runs along a line (Minkowski sum of the line and the rectangle).</summary>
internal static class Sweep
{
    /// <summary>
    /// Simple polygons whose union is the sweep of a rectangle along the rings.
    /// </summary>
    /// <remarks>
    /// Each ring is cut into runs along which neither X nor Y turns back. The sweep along such a run is one simple polygon:
    /// the run shifted to two opposite corners of the rectangle, closed at the ends. (A rising run cannot meet itself
    /// shifted up and to the left.) So a smooth outline of a thousand chords gives about four polygons to unite, where a
    /// hexagon for each chord would give a thousand.
    /// </remarks>
    public static IEnumerable<Ring> OfRectangle(IEnumerable<Ring> rings, double halfWidth, double halfHeight) =>
        rings.SelectMany(MonotoneRuns).Select(run => SweepRun(run, halfWidth, halfHeight));

    private static IEnumerable<IReadOnlyList<Point2>> MonotoneRuns(Ring ring)
    {
        var points = ring.Points;
        var start = FirstTurn(points);
        var run = new List<Point2> { points[start] };
        int signX = 0, signY = 0;
        for (var i = 0; i < points.Length; i++)
        {
            var next = points[(start + i + 1) % points.Length];
            var step = next - run[^1];
            int x = Math.Sign(step.X), y = Math.Sign(step.Y);
            if (signX * x < 0 || signY * y < 0)
            {
                yield return run;
                run = [points[(start + i) % points.Length]];
                (signX, signY) = (0, 0);
            }

            signX = x == 0 ? signX : x;
            signY = y == 0 ? signY : y;
            run.Add(next);
        }

        yield return run;
    }

    // A ring may start in the middle of a run; starting where X turns back saves one polygon.
    private static int FirstTurn(ImmutableArray<Point2> points)
    {
        var leftmost = 0;
        for (var i = 1; i < points.Length; i++)
        {
            leftmost = points[i].X < points[leftmost].X ? i : leftmost;
        }

        return leftmost;
    }

    private static Ring SweepRun(IReadOnlyList<Point2> either, double w, double h)
    {
        var run = either[^1].X < either[0].X ? [.. either.Reverse()] : either;
        Point2 first = run[0], last = run[^1];
        var rising = last.Y >= first.Y;
        // Rising: the corners lower right and upper left bound the sweep. Falling: lower left and upper right.
        var lower = rising ? new Point2(w, -h) : new Point2(-w, -h);
        var startCorner = rising ? new Point2(-w, -h) : new Point2(-w, h);
        var points = ImmutableArray.CreateBuilder<Point2>(2 * run.Count + 2);
        points.Add(first + startCorner);
        points.AddRange(run.Select(p => p + lower));
        points.Add(last - startCorner);
        points.AddRange(run.Reverse().Select(p => p - lower));
        return new(points.ToImmutable());
    }
}

using System.Collections.Immutable;

namespace PodLayout.Geometry;

/// <summary>The strip between a curved stretch of a line and its offset, on the side where the offset is longer.</summary>
/// <remarks>
/// The polygon engine leaves out the arc at a vertex where its ends would lie nearer than a twentieth of the distance, which
/// is at every joint between the chords of a curve: on a pod of radius 60 mm that moves the edge by up to 0.07 mm. These strips
/// put the arcs back.
/// </remarks>
internal static class OffsetStrips
{
    // The engine's twentieth, and a little more.
    public const double SmallTurnRad = 0.06;

    /// <summary>Strips along all stretches of small turns away from a side.</summary>
    /// <param name="rings">Rings with the inside to the left.</param>
    /// <param name="distance">Offset, mm: positive to the right (outward), negative to the left (inward).</param>
    /// <param name="chordsOfQuarter">Chords to a quarter of a circle.</param>
    public static IEnumerable<Ring> Of(IEnumerable<Ring> rings, double distance, int chordsOfQuarter) =>
        rings.SelectMany(ring => Stretches(ring.Points, 0, ring.Points.Length - 1, Math.Sign(distance)).Select(s => Strip(ring.Points, s, distance, chordsOfQuarter)));

    /// <summary>Strips along all stretches of small turns of an open line, on both sides of it.</summary>
    /// <param name="points">The line; one that ends where it begins has no joint there.</param>
    /// <param name="distance">Offset, mm.</param>
    /// <param name="chordsOfQuarter">Chords to a quarter of a circle.</param>
    public static IEnumerable<Ring> Beside(ImmutableArray<Point2> points, double distance, int chordsOfQuarter) =>
        new[] { 1, -1 }.SelectMany(side => Stretches(points, 1, points.Length - 2, side).Select(s => Strip(points, s, side * distance, chordsOfQuarter)));

    // Runs of vertices first..last that each turn a little, away from the offset's side.
    private static IEnumerable<(int First, int Last)> Stretches(ImmutableArray<Point2> points, int begin, int end, int side)
    {
        // A stretch of half a turn at most, so that its strip cannot meet itself.
        const double MostRad = Math.PI / 2;
        int? first = null;
        double turned = 0;
        for (var i = begin; i <= end; i++)
        {
            var turn = side * TurnAt(points, i);
            var isSmall = turn is > 0 and < SmallTurnRad;
            if (first is { } from && (!isSmall || turned + turn > MostRad))
            {
                yield return (from, i - 1);
                first = null;
            }

            if (isSmall)
            {
                turned = first is null ? turn : turned + turn;
                first ??= i;
            }
        }

        if (first is { } open)
        {
            yield return (open, end);
        }
    }

    private static double TurnAt(ImmutableArray<Point2> points, int i)
    {
        var n = points.Length;
        Point2 arriving = points[i] - points[(i + n - 1) % n], leaving = points[(i + 1) % n] - points[i];
        return Math.Atan2(arriving.Cross(leaving), arriving.Dot(leaving));
    }

    private static Ring Strip(ImmutableArray<Point2> points, (int First, int Last) stretch, double distance, int chordsOfQuarter)
    {
        var n = points.Length;
        var near = new List<Point2> { points[(stretch.First + n - 1) % n] };
        var far = new List<Point2> { near[0] + Offset(near[0], points[stretch.First % n], distance) };
        for (var i = stretch.First; i <= stretch.Last; i++)
        {
            Point2 before = points[(i + n - 1) % n], at = points[i], after = points[(i + 1) % n];
            Point2 from = Offset(before, at, distance), to = Offset(at, after, distance);
            near.Add(at);
            var turn = Math.Abs(Math.Atan2(from.Cross(to), from.Dot(to)));
            var chords = Math.Max(1, (int)Math.Ceiling(turn / (Math.PI / 2 / chordsOfQuarter)));
            far.AddRange(Enumerable.Range(0, chords + 1).Select(k =>
                at + Turn.FromDegrees(Math.Sign(from.Cross(to)) * turn * k / chords * 180 / Math.PI).Apply(from)));
        }

        var end = points[(stretch.Last + 1) % n];
        near.Add(end);
        far.Add(end + Offset(points[stretch.Last], end, distance));
        far.Reverse();
        return new([.. near, .. far]);
    }

    // To the right of the step by the distance.
    private static Point2 Offset(Point2 from, Point2 to, double distance)
    {
        var step = to - from;
        return new Point2(step.Y, -step.X) * (distance / step.Length);
    }
}

namespace PodLayout.Geometry;

/// <summary>Cuts a line into pieces for the polygon engine, and tells what the engine misses along one.</summary>
internal static class PathPieces
{
    // The engine takes its time to the square of the crossings that a line's two sides make; short lines have few.
    private const int PointsOfPiece = 32;

    // Beside a line of no more points than this, what the engine misses is put back; on longer ones the disc is taken larger.
    private const int FewPoints = 256;

    /// <summary>Whether strips are worth their while beside a line: see <see cref="OffsetStrips"/>.</summary>
    public static bool AreFew(IReadOnlyList<Point2> points) => points.Count is > 2 and <= FewPoints;

    /// <summary>First and last point of each piece; the last of one is the first of the next.</summary>
    public static IEnumerable<(int First, int Last)> Of(IReadOnlyList<Point2> points)
    {
        var first = 0;
        for (var i = 1; i < points.Count - 1; i++)
        {
            if (i - first >= PointsOfPiece)
            {
                yield return (first, i);
                first = i;
            }
        }

        yield return (first, points.Count - 1);
    }

    /// <summary>How much of the radius the engine may miss beside a piece, as a share of it.</summary>
    /// <remarks>
    /// Where a line turns by less than about a twentieth, the engine makes no arc: it goes on from the end of the first offset
    /// straight to the far end of the second, and so lies inside the second by 1 - cos(turn).
    /// </remarks>
    public static double MissedShare(IReadOnlyList<Point2> points, int first, int last)
    {
        double missed = 0;
        for (var i = first + 1; i < last; i++)
        {
            var turn = TurnAt(points, i);
            missed = turn < OffsetStrips.SmallTurnRad ? Math.Max(missed, 1 / Math.Cos(turn) - 1) : missed;
        }

        return missed;
    }

    private static double TurnAt(IReadOnlyList<Point2> points, int i)
    {
        Point2 arriving = points[i] - points[i - 1], leaving = points[i + 1] - points[i];
        return Math.Abs(Math.Atan2(arriving.Cross(leaving), arriving.Dot(leaving)));
    }
}

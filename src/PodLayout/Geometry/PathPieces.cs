namespace PodLayout.Geometry;

/// <summary>Cuts a line into pieces for the polygon engine, and tells what the engine misses along one.</summary>
internal static class PathPieces
{
    // The engine takes its time to the square of the crossings that a line's two sides make; short lines have few.
    private const int PointsOfPiece = 32;

    // A line of no more points than this is also cut where the engine would miss much; on longer ones the disc is taken larger.
    private const int FewPoints = 256;

    // A joint that turns by less than this is never worth a cut: it costs a ten-thousandth of the radius.
    private const double SmoothTurnRad = 0.0126;

    /// <summary>First and last point of each piece; the last of one is the first of the next.</summary>
    /// <param name="points">The line.</param>
    /// <param name="isCoarse">Whether the disc is taken larger on short lines too.</param>
    public static IEnumerable<(int First, int Last)> Of(IReadOnlyList<Point2> points, bool isCoarse)
    {
        var first = 0;
        for (var i = 1; i < points.Count - 1; i++)
        {
            var isMissed = !isCoarse && points.Count <= FewPoints && TurnAt(points, i) is > SmoothTurnRad and < OffsetStrips.SmallTurnRad;
            if (isMissed || i - first >= PointsOfPiece)
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

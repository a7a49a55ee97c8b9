using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using PodLayout.Geometry;
using PodLayout.Support;

namespace PodLayout.Placing;

/// <summary>Moves the part under given pods: to where all of them fit, and to where the worst overhang is least.</summary>
internal static class OffsetFitting
{
    /// <summary>An offset of a box at which all seats are possible together; null when there is none.</summary>
    public static Point2? FittingAll(PlacingFrame frame, ImmutableArray<FrameSeat> seats, OffsetBox box)
    {
        if (frame.ArePossible(seats, box.Centre))
        {
            return box.Centre;
        }

        // In steps from the middle of the box: a centre moves the other way when the part moves.
        var fitting = Region.Inside(new Box2(-box.HalfXMm, -box.HalfYMm, box.HalfXMm, box.HalfYMm));
        foreach (var seat in seats)
        {
            fitting = fitting.Intersect(frame.Centres[seat.Pose].Centres.Moved(frame.CentreOf(seat, box.Centre) * -1));
            if (fitting.IsEmpty)
            {
                return null;
            }
        }

        return fitting.PointInside() is { } step && frame.ArePossible(seats, box.Centre - step)
            ? box.Centre - step : null;
    }

    /// <summary>
    /// The worst overhang of some seats at an offset as a share of its limit; above 1, one for each point out of reach.
    /// </summary>
    /// <param name="frame">The part at its angle.</param>
    /// <param name="seats">The filled seats, possible at the offset.</param>
    /// <param name="offset">Where the pivot lies within its pitch.</param>
    public static double WorstShare(PlacingFrame frame, ImmutableArray<FrameSeat> seats, Point2 offset)
    {
        var shares = new double[frame.Reach.PointCount];
        int[] order = [.. Enumerable.Range(0, shares.Length)];
        return WorstShare(frame, Faces(frame, seats), seats, offset, order, double.PositiveInfinity, shares);
    }

    /// <summary>
    /// Steps from an offset to better ones while all seats stay possible, with steps halved from 4 mm down to a sixteenth, as a
    /// pattern search does.
    /// </summary>
    /// <param name="frame">The part at its angle.</param>
    /// <param name="seats">The filled seats.</param>
    /// <param name="start">An offset at which all are possible.</param>
    /// <param name="goodEnough">Stops at a worst share of at most this.</param>
    /// <returns>The best offset and the worst share there (above 1 where a point stays out of reach).</returns>
    public static (Point2 Offset, double Worst) Improve(
        PlacingFrame frame, ImmutableArray<FrameSeat> seats, Point2 start, double goodEnough)
    {
        var faces = Faces(frame, seats);
        var shares = new double[frame.Reach.PointCount];
        int[] order = [.. Enumerable.Range(0, shares.Length)];
        var best = (Offset: start, Worst: WorstShare(frame, faces, seats, start, order, double.PositiveInfinity, shares));
        for (var step = 4.0; step >= 0.0625; step /= 2)
        {
            var moved = true;
            while (moved && best.Worst > goodEnough)
            {
                // The points that are worst now are asked first: most steps that do not help are given up after a few.
                Array.Sort((double[])[.. order.Select(p => -shares[p])], order);
                moved = false;
                foreach (var direction in Directions)
                {
                    var offset = best.Offset + direction * step;
                    if (frame.ArePossible(seats, offset))
                    {
                        var tried = new double[shares.Length];
                        var worst = WorstShare(frame, faces, seats, offset, order, best.Worst - 1e-9, tried);
                        if (worst < best.Worst - 1e-9)
                        {
                            best = (offset, worst);
                            shares = tried;
                            moved = true;
                        }
                    }
                }
            }
        }

        return best;
    }

    // None for what stands under a loose piece: it supports nothing of the part.
    private static PodFace?[] Faces(PlacingFrame frame, ImmutableArray<FrameSeat> seats) =>
        [.. seats.Select(s => frame.PieceOver(s.Pose) is null ? frame.Faces[s.Pose] : null)];

    // Once the answer is sure to be at least giveUpAt, any such number is returned.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static double WorstShare(
        PlacingFrame frame,
        PodFace?[] faces,
        ImmutableArray<FrameSeat> seats,
        Point2 offset,
        int[] order,
        double giveUpAt,
        double[] shares)
    {
        var centres = new Point2[seats.Length];
        for (var s = 0; s < centres.Length; s++)
        {
            centres[s] = frame.CentreOf(seats[s], offset);
        }

        double worst = 0;
        var outOfReach = 0;
        foreach (var p in order)
        {
            var best = double.PositiveInfinity;
            for (var s = 0; s < centres.Length; s++)
            {
                if (faces[s] is { } face && frame.Reach.MayReach(p, face, centres[s]))
                {
                    best = Math.Min(best, frame.Reach.Share(p, face, centres[s]));
                }
            }

            shares[p] = best;
            outOfReach += best > 1 ? 1 : 0;
            worst = best > 1 ? worst : Math.Max(worst, best);
            if (outOfReach + worst >= giveUpAt)
            {
                break;
            }
        }

        return outOfReach + worst;
    }

    private static readonly ImmutableArray<Point2> Directions =
        [new(1, 0), new(-1, 0), new(0, 1), new(0, -1), new(1, 1), new(-1, 1), new(1, -1), new(-1, -1)];
}

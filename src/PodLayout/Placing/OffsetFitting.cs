using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Support;

namespace PodLayout.Placing;

/// <summary>Moves the part under given pods: to where all of them fit, and to where the worst overhang is least.</summary>
internal static class OffsetFitting
{
    /// <summary>An offset of a box at which all seats are possible together; null when there is none.</summary>
    public static Point2? FittingAll(PlacingFrame frame, ImmutableArray<FrameSeat> seats, OffsetBox box)
    {
        if (seats.All(s => frame.IsPossible(s, box.Centre)))
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

        return fitting.PointInside() is { } step && seats.All(s => frame.IsPossible(s, box.Centre - step))
            ? box.Centre - step : null;
    }

    /// <summary>
    /// The worst overhang of some seats at an offset as a share of its limit; infinite when a point is out of reach of all.
    /// </summary>
    public static double WorstShare(PlacingFrame frame, ImmutableArray<FrameSeat> seats, Point2 offset, double giveUpAt)
    {
        PodFace[] faces = [.. frame.Poses.Select(pose => PodFace.Of(pose))];
        Point2[] centres = [.. seats.Select(s => frame.CentreOf(s, offset))];
        double worst = 0;
        for (var p = 0; p < frame.Reach.PointCount && worst < giveUpAt; p++)
        {
            var best = double.PositiveInfinity;
            for (var s = 0; s < centres.Length; s++)
            {
                if (frame.Reach.MayReach(p, faces[seats[s].Pose], centres[s]))
                {
                    best = Math.Min(best, frame.Reach.Share(p, faces[seats[s].Pose], centres[s]));
                }
            }

            worst = Math.Max(worst, best);
        }

        return worst;
    }

    /// <summary>
    /// Steps from an offset to better ones while all seats stay possible, with steps halved from 4 mm down to a sixteenth, as a
    /// pattern search does.
    /// </summary>
    /// <returns>The best offset and the worst share there (infinite where a point stays out of reach).</returns>
    public static (Point2 Offset, double Worst) Improve(PlacingFrame frame, ImmutableArray<FrameSeat> seats, Point2 start)
    {
        var best = (Offset: start, Worst: WorstShare(frame, seats, start, double.PositiveInfinity));
        for (var step = 4.0; step >= 0.0625; step /= 2)
        {
            var moved = true;
            while (moved)
            {
                moved = false;
                foreach (var direction in Directions)
                {
                    var offset = best.Offset + direction * step;
                    if (seats.All(s => frame.IsPossible(s, offset)))
                    {
                        var worst = WorstShare(frame, seats, offset, best.Worst);
                        if (worst < best.Worst - 1e-9)
                        {
                            best = (offset, worst);
                            moved = true;
                        }
                    }
                }
            }
        }

        return best;
    }

    private static readonly ImmutableArray<Point2> Directions =
        [new(1, 0), new(-1, 0), new(0, 1), new(0, -1), new(1, 1), new(-1, 1), new(1, -1), new(-1, -1)];
}

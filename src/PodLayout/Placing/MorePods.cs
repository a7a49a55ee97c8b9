using System.Collections.Immutable;
using PodLayout.Choice;
using PodLayout.Geometry;
using PodLayout.Jobs;

namespace PodLayout.Placing;

/// <summary>
/// A layout that holds, though not with the fewest pods: to one that supports the part pods are added one by one, each where it helps
/// most.
/// </summary>
internal static class MorePods
{
    // Seats that are looked at closely for each pod.
    private const int Closely = 6;

    // So many pods may be added without any gain: two ways of giving way may be as weak as each other.
    private const int MostIdle = 2;

    /// <summary>The layout at an offset; null when none was found.</summary>
    /// <param name="job">The job.</param>
    /// <param name="ground">Seats to pick from, at one angle.</param>
    /// <param name="shift">The shift, with the seats of the ground that the board has.</param>
    /// <param name="offset">Where the pivot lies within its pitch.</param>
    /// <param name="atMost">Most pods of the layouts that matter.</param>
    /// <param name="cancellation">Cuts the work short.</param>
    public static FoundLayout? Of(Job job, SearchGround ground, ShiftClass shift, Point2 offset, int atMost, CancellationToken cancellation)
    {
        var frame = ground.Frame;
        if (frame.Holding is not { Grounds.Length: 1 } holding)
        {
            return null;
        }

        var model = PlacementModel.OfSupport(job, ground, shift, offset);
        var answer = FewestPods.Of(model.Within(1), ground.FirstPoints, atMost, cancellation, Wanted.AnyQuickly);
        if (!answer.HasChoice)
        {
            return null;
        }

        ImmutableArray<FrameSeat> layout = [.. answer.Filled.Select(s => model.Seats[s])];
        var (reached, idle) = (0.0, 0);
        while (!holding.Bodies.Holds(frame, layout, offset, shift.Columns, shift.Rows))
        {
            if (layout.Length >= atMost || cancellation.IsCancellationRequested
                || holding.Bodies.Strongest(
                    frame, layout, OneMore.Free(job, frame, model.Seats, layout), offset, shift.Columns, shift.Rows, Closely) is not var (seat, factor))
            {
                return null;
            }

            idle = factor > reached ? 0 : idle + 1;
            if (idle > MostIdle)
            {
                return null;
            }

            reached = Math.Max(reached, factor);
            layout = layout.Add(seat);
        }

        return new(frame, offset, shift.Columns, shift.Rows, layout, OffsetFitting.WorstShare(frame, layout, offset));
    }
}

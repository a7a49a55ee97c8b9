using System.Collections.Immutable;
using PodLayout.Choice;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Seats;

namespace PodLayout.Placing;

/// <summary>Among layouts with as few pods: the one that leaves most of the pods where they stand on the board now.</summary>
internal static class FewestMoves
{
    /// <summary>
    /// Looks at every whole-pitch shift of the part from where it was found, and at the place where it lay before. Shifts are
    /// taken in order of how many standing pods they could keep at most, so that the best of them is known when the next could
    /// not keep more.
    /// </summary>
    /// <param name="job">The job, with what stands on the board.</param>
    /// <param name="standing">What stands on the board.</param>
    /// <param name="board">What the board offers to each pose.</param>
    /// <param name="found">A layout with the fewest pods.</param>
    /// <param name="frames">Frames of the part.</param>
    /// <param name="cancellation">Cuts the work short.</param>
    public static FoundLayout Of(
        Job job,
        StandingLayout standing,
        ImmutableArray<BoardSeats> board,
        FoundLayout found,
        Frames frames,
        CancellationToken cancellation)
    {
        var best = (Layout: found, Staying: Staying(standing, found));
        foreach (var (ground, shift, offset, most) in Candidates(job, standing, board, found, frames).OrderByDescending(c => c.Most))
        {
            if (most <= best.Staying || cancellation.IsCancellationRequested)
            {
                break;
            }

            var model = PlacementModel.At(job, ground, shift, offset);
            ImmutableArray<int> preference =
                [.. model.Seats.Select(s => IsStanding(standing, ground.Frame, s, shift.Columns, shift.Rows) ? 0 : 1)];
            var answer = FewestPods.Preferred(model.Within(1), ground.FirstPoints, found.Seats.Length, preference, cancellation);
            if (answer.HasChoice && answer.Filled.Count(s => preference[s] == 0) is var staying && staying > best.Staying)
            {
                ImmutableArray<FrameSeat> seats = [.. answer.Filled.Select(s => model.Seats[s])];
                var worst = OffsetFitting.WorstShare(ground.Frame, seats, offset);
                best = (new(ground.Frame, offset, shift.Columns, shift.Rows, seats, worst), staying);
            }
        }

        return best.Layout;
    }

    private static IEnumerable<(SearchGround Ground, ShiftClass Shift, Point2 Offset, int Most)> Candidates(
        Job job, StandingLayout standing, ImmutableArray<BoardSeats> board, FoundLayout found, Frames frames)
    {
        var before = standing.LaidAt;
        if (Allows(job.Placement, before.AngleDeg))
        {
            var (offset, columns, rows) = GivenPlacement.Locate(job, before);
            var ground = SearchGround.At(frames.Of(before.AngleDeg, 0), board, new OffsetBox(offset, 0, 0), columns, rows);
            yield return (ground, ground.Classes[0], offset, Most(ground, ground.Classes[0]));
        }

        if (job.Placement is PlacementWish.Given)
        {
            var ground = SearchGround.At(found.Frame, board, new OffsetBox(found.Offset, 0, 0), found.Columns, found.Rows);
            yield return (ground, ground.Classes[0], found.Offset, Most(ground, ground.Classes[0]));
            yield break;
        }

        var over = SearchGround.Over(found.Frame, board, job, new OffsetBox(found.Offset, 0, 0), mergeEquals: false);
        foreach (var shift in over.Classes)
        {
            yield return (over, shift, found.Offset, Most(over, shift));
        }

        int Most(SearchGround ground, ShiftClass shift) => ground.Seats.Where((seat, s) => shift.Available[s]
            && IsStanding(standing, ground.Frame, seat, shift.Columns, shift.Rows)).Count();
    }

    private static bool Allows(PlacementWish wish, double angleDeg) => wish switch
    {
        PlacementWish.Search search => search.AnglesDeg.Contains(angleDeg),
        PlacementWish.SearchInterval interval => angleDeg >= interval.FromDeg && angleDeg <= interval.ToDeg,
        _ => false,
    };

    private static int Staying(StandingLayout standing, FoundLayout found) =>
        found.Seats.Count(s => IsStanding(standing, found.Frame, s, found.Columns, found.Rows));

    private static bool IsStanding(StandingLayout standing, PlacingFrame frame, FrameSeat seat, int columns, int rows)
    {
        var pose = frame.Poses[seat.Pose];
        return standing.Pods.Contains(new(pose.Type.Name, pose.Turned, seat.Column + columns, seat.Row + rows));
    }
}

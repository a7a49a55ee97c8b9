using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Seats;

namespace PodLayout.Placing;

/// <summary>The fewest pods where the placement is given.</summary>
internal static class GivenPlacement
{
    /// <summary>Where the pivot lies: within its pitch, and how many whole pitches from the board's zero.</summary>
    public static (Point2 Offset, int Columns, int Rows) Locate(Job job, PlacementWish.Given given)
    {
        var pitch = job.Shop.Board.PitchMm;
        var pivot = given.ZeroOnBoard + Turn.FromDegrees(given.AngleDeg).Apply(job.Part.Shape.Outline.Bounds.Centre);
        int columns = (int)Math.Floor(pivot.X / pitch), rows = (int)Math.Floor(pivot.Y / pitch);
        return (new(pivot.X - columns * pitch, pivot.Y - rows * pitch), columns, rows);
    }

    /// <summary>The best layout there.</summary>
    public static SearchEnd Search(
        Job job,
        Frames frames,
        PlacementWish.Given given,
        HoldingModel? holding,
        FoundLayout? toBeat,
        CancellationToken cancellation)
    {
        var (offset, columns, rows) = Locate(job, given);
        var frame = frames.Of(given.AngleDeg, 0).HeldBy(holding);
        ImmutableArray<BoardSeats> board = [.. frames.Poses.Select(pose => BoardSeats.Of(pose, job.Shop.Board))];
        var ground = SearchGround.At(frame, board, new OffsetBox(offset, 0, 0), columns, rows);
        var most = toBeat is null ? job.Shop.Pods.Sum(p => Math.Min(p.Stock, 10_000)) : toBeat.Seats.Length - 1;
        var (found, bound, isProven, work, shortBySprings) = NodeExamination.Solve(job, ground, ground.Classes[0], offset, most, cancellation);
        if (shortBySprings > 0)
        {
            // What was given up by springs bounds nothing: the bound is that by pulls alone.
            var byPulls = frame.HeldBy(holding?.ByPullsAlone());
            var again = NodeExamination.Solve(job, ground with { Frame = byPulls }, ground.Classes[0], offset, most, cancellation);
            (bound, isProven) = (again.Bound, isProven && again.IsProven);
        }

        return new(found ?? toBeat, isProven ? Math.Min(bound, toBeat?.Seats.Length ?? bound) : bound, 0, 1, !isProven)
        {
            Work = work,
            ShortBySprings = shortBySprings,
        };
    }
}

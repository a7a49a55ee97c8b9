using System.Collections.Immutable;
using PodLayout.Choice;
using PodLayout.Holding;
using PodLayout.Jobs;
using PodLayout.Seats;

namespace PodLayout.Placing;

/// <summary>What one more pod would give to a layout at its place.</summary>
internal static class OneMore
{
    // Seats that are looked at closely: those that bring most against the way in which the layout gives way now.
    private const int Closely = 24;

    /// <summary>The pod that gives most; null when no seat is left for one.</summary>
    /// <param name="job">The job.</param>
    /// <param name="holding">How the part is to be held.</param>
    /// <param name="board">What the board offers to each pose.</param>
    /// <param name="found">The layout.</param>
    public static OneMorePod? Of(Job job, HoldingModel holding, ImmutableArray<BoardSeats> board, FoundLayout found)
    {
        var free = Free(job, board, found);
        return holding.Strongest(found.Frame, found.Seats, free, found.Offset, found.Columns, found.Rows, Closely) is var (seat, factor)
            ? new(
                found.Frame.Poses[seat.Pose].Type.Name, found.Frame.Poses[seat.Pose].Turned, seat.Column + found.Columns,
                seat.Row + found.Rows, factor)
            : null;
    }

    // Seats of the placement that overlap no pod of the layout, of kinds that are left in stock.
    private static ImmutableArray<FrameSeat> Free(Job job, ImmutableArray<BoardSeats> board, FoundLayout found)
    {
        var frame = found.Frame;
        var ground = SearchGround.At(frame, board, new OffsetBox(found.Offset, 0, 0), found.Columns, found.Rows);
        ImmutableArray<FrameSeat> seats =
            [.. ground.Seats.Where((s, i) => ground.Classes[0].Available[i] && frame.IsPossible(s, found.Offset))];
        var taken = found.Seats.Select(s => seats.IndexOf(s)).ToHashSet();
        var blocked = RoomRows.Of(frame.Poses, [.. seats.Select(s => (s.Pose, s.Column, s.Row))], job.Shop.Board.PitchMm, job.Shop.PodGapMm)
            .Where(row => row.Any(taken.Contains)).SelectMany(row => row).ToHashSet();
        int Used(int type) => found.Seats.Count(s => frame.Poses[s.Pose].TypeIndex == type);
        return
        [
            .. seats.Where((s, i) => !taken.Contains(i) && !blocked.Contains(i) && frame.PieceOver(s.Pose) is null
                && Used(frame.Poses[s.Pose].TypeIndex) < frame.Poses[s.Pose].Type.Stock),
        ];
    }
}

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
        var ground = SearchGround.At(found.Frame, board, new OffsetBox(found.Offset, 0, 0), found.Columns, found.Rows);
        var free = Free(
            job, found.Frame, [.. ground.Seats.Where((s, i) => ground.Classes[0].Available[i] && found.Frame.IsPossible(s, found.Offset))], found.Seats);
        return holding.Bodies.Strongest(found.Frame, found.Seats, free, found.Offset, found.Columns, found.Rows, Closely) is var (seat, factor)
            ? new(
                found.Frame.Poses[seat.Pose].Type.Name, found.Frame.Poses[seat.Pose].Turned, seat.Column + found.Columns,
                seat.Row + found.Rows, factor)
            : null;
    }

    /// <summary>Of the seats of a placement those that overlap no pod of a layout, of kinds that are left in stock.</summary>
    public static ImmutableArray<FrameSeat> Free(Job job, PlacingFrame frame, ImmutableArray<FrameSeat> seats, ImmutableArray<FrameSeat> layout)
    {
        var taken = layout.Select(s => seats.IndexOf(s)).ToHashSet();
        var blocked = RoomRows.Of(frame.Poses, [.. seats.Select(s => (s.Pose, s.Column, s.Row))], job.Shop.Board.PitchMm, job.Shop.PodGapMm)
            .Where(row => row.Any(taken.Contains)).SelectMany(row => row).ToHashSet();
        int Used(int type) => layout.Count(s => frame.Poses[s.Pose].TypeIndex == type);
        return
        [
            .. seats.Where((s, i) => !taken.Contains(i) && !blocked.Contains(i) && frame.PieceOver(s.Pose) is null
                && Used(frame.Poses[s.Pose].TypeIndex) < frame.Poses[s.Pose].Type.Stock),
        ];
    }
}

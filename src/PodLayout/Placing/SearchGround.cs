using System.Collections.Immutable;
using PodLayout.Jobs;
using PodLayout.Seats;

namespace PodLayout.Placing;

/// <summary>What can stand where for one frame, over all offsets of a box: the search picks from this.</summary>
/// <param name="Frame">The part at its angle.</param>
/// <param name="Seats">Every seat possible at some offset.</param>
/// <param name="Supporters">For each point the seats that could support it from some offset.</param>
/// <param name="Classes">The whole-pitch shifts worth looking at.</param>
internal sealed record SearchGround(
    PlacingFrame Frame,
    ImmutableArray<FrameSeat> Seats,
    ImmutableArray<int[]> Supporters,
    ImmutableArray<ShiftClass> Classes)
{
    /// <summary>Over all offsets of a box and all shifts.</summary>
    public static SearchGround Over(PlacingFrame frame, ImmutableArray<BoardSeats> board, Job job, OffsetBox box)
    {
        var seats = frame.PossibleSeats(box);
        var supporters = frame.CouldSupport(seats, default, AllAlive(seats.Length), box);
        return new(frame, seats, supporters, ShiftClass.Of(frame, seats, supporters, board, job));
    }

    /// <summary>At one offset with one shift.</summary>
    public static SearchGround At(
        PlacingFrame frame, ImmutableArray<BoardSeats> board, OffsetBox spot, int columns, int rows)
    {
        var seats = frame.PossibleSeats(spot);
        bool[] available = [.. seats.Select(s => board[s.Pose].Allows(s.Column + columns, s.Row + rows))];
        return new(
            frame, seats, frame.CouldSupport(seats, default, AllAlive(seats.Length), spot), [new(columns, rows, available)]);
    }

    private static bool[] AllAlive(int count)
    {
        var alive = new bool[count];
        Array.Fill(alive, true);
        return alive;
    }
}

using System.Collections.Immutable;
using PodLayout.Jobs;
using PodLayout.Seats;

namespace PodLayout.Placing;

/// <summary>What can stand where for one frame, over all offsets of a box: the search picks from this.</summary>
/// <param name="Frame">The part at its angle.</param>
/// <param name="Seats">Every seat possible at some offset.</param>
/// <param name="Classes">The whole-pitch shifts worth looking at.</param>
/// <param name="FirstPoints">The points whose support rows every search begins with.</param>
internal sealed record SearchGround(
    PlacingFrame Frame,
    ImmutableArray<FrameSeat> Seats,
    ImmutableArray<ShiftClass> Classes,
    ImmutableArray<int> FirstPoints)
{
    /// <summary>The same without the frame, for sets of placements that wait.</summary>
    public WaitingGround Waiting => new(Seats, Classes);

    // Of the edge points a search begins with every so many: neighbours mostly ask for the same.
    private const int EveryPoint = 4;

    /// <summary>Over all offsets of a box and all shifts (of which those with no more seats than another are left out).</summary>
    public static SearchGround Over(
        PlacingFrame frame, ImmutableArray<BoardSeats> board, Job job, OffsetBox box, bool mergeEquals = true)
    {
        var seats = frame.PossibleSeats(box);
        return new(frame, seats, ShiftClass.Of(frame, seats, box, board, job, mergeEquals), First(frame));
    }

    /// <summary>At one offset with one shift.</summary>
    public static SearchGround At(
        PlacingFrame frame, ImmutableArray<BoardSeats> board, OffsetBox spot, int columns, int rows)
    {
        var seats = frame.PossibleSeats(spot);
        bool[] available = [.. seats.Select(s => board[s.Pose].Allows(s.Column + columns, s.Row + rows))];
        return new(frame, seats, [new(columns, rows, available)], First(frame));
    }

    internal static ImmutableArray<int> First(PlacingFrame frame)
    {
        ImmutableArray<int> some = [.. Enumerable.Range(0, frame.Reach.PointCount).Where(p => p % EveryPoint == 0)];
        ImmutableArray<int> edges = [.. some.Where(frame.Reach.IsEdge)];
        return edges.IsEmpty ? some : edges;
    }
}

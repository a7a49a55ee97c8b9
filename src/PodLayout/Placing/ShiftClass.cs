using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Seats;

namespace PodLayout.Placing;

/// <summary>
/// Whole-pitch shifts of the part that leave it the same seats: the board's ports, edges, pins and damage make the difference
/// between classes. One shift stands for all.
/// </summary>
/// <param name="Columns">Whole pitches along X.</param>
/// <param name="Rows">Whole pitches along Y.</param>
/// <param name="Available">For each seat of the frame, whether the board has it.</param>
public sealed record ShiftClass(int Columns, int Rows, bool[] Available)
{
    /// <summary>
    /// The classes worth looking at. A shift is left out when some point has no seat at all, and when another shift has all its
    /// seats and more: whatever can be laid there can be laid at the other. Among equals the one nearest to the middle of the
    /// usable area stays, then the lower, then the more to the left.
    /// </summary>
    /// <param name="frame">The part at its angle.</param>
    /// <param name="seats">Seats of the frame.</param>
    /// <param name="supporters">For each point the seats that could support it.</param>
    /// <param name="board">What the board offers, for each pose.</param>
    /// <param name="job">The job.</param>
    /// <param name="mergeEquals">Whether shifts with the same or fewer seats are left out; false keeps every shift.</param>
    public static ImmutableArray<ShiftClass> Of(
        PlacingFrame frame,
        ImmutableArray<FrameSeat> seats,
        ImmutableArray<int[]> supporters,
        ImmutableArray<BoardSeats> board,
        Job job,
        bool mergeEquals = true)
    {
        if (seats.IsEmpty)
        {
            return [];
        }

        int minColumn = seats.Min(s => s.Column), maxColumn = seats.Max(s => s.Column);
        int minRow = seats.Min(s => s.Row), maxRow = seats.Max(s => s.Row);
        int boardColumns = board.Max(b => b.Columns), boardRows = board.Max(b => b.Rows);
        var middle = job.Shop.Board.UsableArea.Centre;
        var shifts =
            from row in Enumerable.Range(-maxRow, Math.Max(0, boardRows + maxRow - minRow))
            from column in Enumerable.Range(-maxColumn, Math.Max(0, boardColumns + maxColumn - minColumn))
            let away = new Point2((column + 0.5) * job.Shop.Board.PitchMm, (row + 0.5) * job.Shop.Board.PitchMm) - middle
            orderby Math.Round(away.Length, 6), row, column
            select (column, row);
        var kept = new List<(ShiftClass Class, ulong[] Bits)>();
        foreach (var (column, row) in shifts)
        {
            var (available, bits) = Availability(seats, board, column, row);
            if (supporters.All(of => of.Any(s => available[s]))
                && !(mergeEquals && kept.Any(k => Contains(k.Bits, bits))))
            {
                kept.RemoveAll(k => mergeEquals && Contains(bits, k.Bits));
                kept.Add((new(column, row, available), bits));
            }
        }

        return [.. kept.Select(k => k.Class)];
    }

    private static (bool[] Available, ulong[] Bits) Availability(
        ImmutableArray<FrameSeat> seats, ImmutableArray<BoardSeats> board, int column, int row)
    {
        var available = new bool[seats.Length];
        var bits = new ulong[(seats.Length + 63) / 64];
        for (var s = 0; s < seats.Length; s++)
        {
            if (board[seats[s].Pose].Allows(seats[s].Column + column, seats[s].Row + row))
            {
                available[s] = true;
                bits[s >> 6] |= 1UL << (s & 63);
            }
        }

        return (available, bits);
    }

    private static bool Contains(ulong[] large, ulong[] small)
    {
        for (var i = 0; i < small.Length; i++)
        {
            if ((small[i] & ~large[i]) != 0)
            {
                return false;
            }
        }

        return true;
    }
}

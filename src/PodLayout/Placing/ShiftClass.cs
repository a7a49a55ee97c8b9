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
    /// <param name="box">The offsets that the seats are for.</param>
    /// <param name="board">What the board offers, for each pose.</param>
    /// <param name="job">The job.</param>
    /// <param name="mergeEquals">Whether shifts with the same or fewer seats are left out; false keeps every shift.</param>
    public static ImmutableArray<ShiftClass> Of(
        PlacingFrame frame,
        ImmutableArray<FrameSeat> seats,
        OffsetBox box,
        ImmutableArray<BoardSeats> board,
        Job job,
        bool mergeEquals = true)
    {
        if (seats.IsEmpty)
        {
            return [];
        }

        // By boxes alone: more than the true supporters, which is what ruling out a shift asks for.
        var reach = new BoxReach(frame, seats, box);
        ImmutableArray<int[]> supporters =
        [
            .. Enumerable.Range(0, frame.Reach.PointCount).Where(frame.Reach.IsEdge)
                .Select(p => Enumerable.Range(0, seats.Length).Where(s => reach.MayReach(s, p)).ToArray()),
        ];
        var (columns, rows) = Range(seats, supporters, board);
        var middle = job.Shop.Board.UsableArea.Centre;
        var shifts =
            from row in rows
            from column in columns
            let away = new Point2((column + 0.5) * job.Shop.Board.PitchMm, (row + 0.5) * job.Shop.Board.PitchMm) - middle
            orderby Math.Round(away.Length, 6), row, column
            select (column, row);
        // A pod that must stand holds the part to its place: no shift is like another.
        mergeEquals &= job.Keep.IsEmpty;
        var kept = new List<(ShiftClass Class, ulong[] Bits)>();
        foreach (var (column, row) in shifts)
        {
            var (available, bits, count) = Availability(seats, board, column, row);
            if (!HasKept(job, frame, seats, available, column, row)
                || !supporters.All(of => Array.Exists(of, s => available[s])) || (mergeEquals && kept.Any(k => Contains(k.Bits, bits))))
            {
                continue;
            }

            kept.RemoveAll(k => mergeEquals && Contains(bits, k.Bits));
            kept.Add((new(column, row, available), bits));
            if (mergeEquals && count == seats.Length)
            {
                // Nothing has more seats than all.
                break;
            }
        }

        return [.. kept.Select(k => k.Class)];
    }

    private static bool HasKept(
        Job job, PlacingFrame frame, ImmutableArray<FrameSeat> seats, bool[] available, int column, int row) =>
        job.Keep.All(kept => AskedRows.SeatsOf(kept, frame, column, row).Any(seat => seats.IndexOf(seat) is >= 0 and var s && available[s]));

    // Every point needs some supporter on the board: that narrows the shifts to look at.
    private static (IEnumerable<int> Columns, IEnumerable<int> Rows) Range(
        ImmutableArray<FrameSeat> seats, ImmutableArray<int[]> supporters, ImmutableArray<BoardSeats> board)
    {
        int boardColumns = board.Max(b => b.Columns), boardRows = board.Max(b => b.Rows);
        int fromColumn = -seats.Max(s => s.Column), toColumn = boardColumns - 1 - seats.Min(s => s.Column);
        int fromRow = -seats.Max(s => s.Row), toRow = boardRows - 1 - seats.Min(s => s.Row);
        foreach (var of in supporters)
        {
            if (of.Length == 0)
            {
                return ([], []);
            }

            fromColumn = Math.Max(fromColumn, -of.Max(s => seats[s].Column));
            toColumn = Math.Min(toColumn, boardColumns - 1 - of.Min(s => seats[s].Column));
            fromRow = Math.Max(fromRow, -of.Max(s => seats[s].Row));
            toRow = Math.Min(toRow, boardRows - 1 - of.Min(s => seats[s].Row));
        }

        return (Enumerable.Range(fromColumn, Math.Max(0, toColumn - fromColumn + 1)),
            Enumerable.Range(fromRow, Math.Max(0, toRow - fromRow + 1)));
    }

    private static (bool[] Available, ulong[] Bits, int Count) Availability(
        ImmutableArray<FrameSeat> seats, ImmutableArray<BoardSeats> board, int column, int row)
    {
        var available = new bool[seats.Length];
        var bits = new ulong[(seats.Length + 63) / 64];
        var count = 0;
        for (var s = 0; s < seats.Length; s++)
        {
            if (board[seats[s].Pose].Allows(seats[s].Column + column, seats[s].Row + row))
            {
                available[s] = true;
                bits[s >> 6] |= 1UL << (s & 63);
                count++;
            }
        }

        return (available, bits, count);
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

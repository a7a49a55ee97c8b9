using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace PodLayout.Choice;

/// <summary>Which room and how much stock the pods of a choice take up. A seat is of one stock row at most.</summary>
internal sealed class TakenRoom
{
    private readonly int[][] _rooms;
    private readonly int[] _stockOf;
    private readonly int[] _inRoom;
    private readonly int[] _stockLeft;

    /// <summary>Nothing is taken.</summary>
    /// <param name="seatCount">Seats are numbered from 0.</param>
    /// <param name="rooms">See <see cref="CoverProblem.Rooms"/>.</param>
    /// <param name="stocks">See <see cref="CoverProblem.Stocks"/>.</param>
    public TakenRoom(int seatCount, ImmutableArray<int[]> rooms, ImmutableArray<StockRow> stocks)
    {
        _rooms = Turned(rooms, seatCount);
        _stockOf = new int[seatCount];
        Array.Fill(_stockOf, -1);
        for (var t = 0; t < stocks.Length; t++)
        {
            Array.ForEach(stocks[t].Seats, s => _stockOf[s] = t);
        }

        _inRoom = new int[rooms.Length];
        Array.Fill(_inRoom, -1);
        _stockLeft = [.. stocks.Select(s => s.Limit)];
    }

    /// <summary>Puts a pod on a seat (1) or takes it away (-1); its room must be free.</summary>
    public void Change(int seat, int by)
    {
        foreach (var room in _rooms[seat])
        {
            _inRoom[room] = by > 0 ? seat : -1;
        }

        if (_stockOf[seat] is var stock and >= 0)
        {
            _stockLeft[stock] -= by;
        }
    }

    /// <summary>Adds the pods that take some of a seat's room, each once.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void AddOverlapping(int seat, List<int> pods)
    {
        foreach (var room in _rooms[seat])
        {
            var pod = _inRoom[room];
            if (pod >= 0 && !pods.Contains(pod))
            {
                pods.Add(pod);
            }
        }
    }

    /// <summary>The stock row of a seat when all of it stands; -1 when there is some left.</summary>
    public int UsedUp(int seat) => _stockOf[seat] is var stock and >= 0 && _stockLeft[stock] == 0 ? stock : -1;

    /// <summary>Whether a seat is of a stock row.</summary>
    public bool IsOf(int seat, int stock) => _stockOf[seat] == stock;

    // From the seats of each group to the groups of each seat.
    private static int[][] Turned(ImmutableArray<int[]> groups, int seatCount)
    {
        var counts = new int[seatCount];
        foreach (var seat in groups.SelectMany(g => g))
        {
            counts[seat]++;
        }

        var of = Array.ConvertAll(counts, c => new int[c]);
        for (var g = groups.Length - 1; g >= 0; g--)
        {
            foreach (var seat in groups[g])
            {
                of[seat][--counts[seat]] = g;
            }
        }

        return of;
    }
}

using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace PodLayout.Choice;

/// <summary>
/// Looks for a choice with a given number of pods by exchanging one pod at a time. A choice that has as few as a bound allows
/// needs no solver; when none is found nothing is said.
/// </summary>
/// <remarks>
/// Points that stay without support weigh more and more, which leads out of dead ends (the row weighting of Gao, Weise and Li 2015,
/// "An efficient local search heuristic with row weighting for the unicost set covering problem", from memory). The course depends
/// on the problem alone.
/// </remarks>
internal sealed class CoverGuess
{
    // Exchanges: a few milliseconds, against the tens to hundreds that the solver takes.
    private const int MostExchanges = 3000;

    private readonly CoverProblem _problem;
    private readonly int[][] _points;
    private readonly int[][] _rooms;
    private readonly int[][] _stocks;
    private readonly int[] _supports;
    private readonly int[] _weights;
    private readonly bool[] _isRoomTaken;
    private readonly int[] _stockLeft;
    private readonly int[] _since;
    private readonly List<int> _filled = [];
    private uint _dice = 1;

    private CoverGuess(CoverProblem problem)
    {
        _problem = problem;
        _points = Turned(problem.Supporters, problem.SeatCount);
        _rooms = Turned(problem.Rooms, problem.SeatCount);
        _stocks = Turned([.. problem.Stocks.Select(s => s.Seats)], problem.SeatCount);
        _supports = new int[problem.Supporters.Length];
        _weights = new int[problem.Supporters.Length];
        Array.Fill(_weights, 1);
        _isRoomTaken = new bool[problem.Rooms.Length];
        _stockLeft = [.. problem.Stocks.Select(s => s.Limit)];
        _since = new int[problem.SeatCount];
    }

    /// <summary>A choice of exactly so many seats, rising, that keeps every row but those of holding; default when none was found.</summary>
    /// <param name="problem">The rows; every point has supporters.</param>
    /// <param name="pods">How many seats to fill, at least one.</param>
    public static ImmutableArray<int> Of(CoverProblem problem, int pods) =>
        pods < 1 || pods > problem.SeatCount ? default : new CoverGuess(problem).Search(pods);

    private ImmutableArray<int> Search(int pods)
    {
        var lastOut = -1;
        for (var turn = 1; turn <= MostExchanges; turn++)
        {
            var point = Unsupported();
            if (point < 0)
            {
                return Whole(pods);
            }

            var seat = _filled.Count < pods ? BestFor(point, _filled.Count == 0 ? -1 : lastOut) : -1;
            if (seat < 0)
            {
                if (_filled.Count == 0)
                {
                    // Not even the first pod finds room and stock.
                    return default;
                }

                // All pods are used, or nothing that supports the point has room.
                lastOut = _filled[LeastMissed(_filled.Count < pods ? -1 : _filled[^1])];
                Take(lastOut, turn);
                seat = BestFor(Unsupported(), lastOut);
            }

            if (seat >= 0)
            {
                Fill(seat, turn);
            }

            for (var p = 0; p < _supports.Length; p++)
            {
                _weights[p] += _supports[p] == 0 ? 1 : 0;
            }
        }

        return default;
    }

    // Fewer than asked for is more than the bound allows: left to the solver, which says what is wrong.
    private ImmutableArray<int> Whole(int pods) => _filled.Count == pods ? [.. _filled.Order()] : default;

    // One of the points without support; -1 when there is none.
    private int Unsupported()
    {
        var count = 0;
        foreach (var s in _supports)
        {
            count += s == 0 ? 1 : 0;
        }

        if (count == 0)
        {
            return -1;
        }

        _dice = _dice * 1664525 + 1013904223;
        var nth = (int)((_dice >> 8) % (uint)count);
        for (var p = 0; ; p++)
        {
            if (_supports[p] == 0 && nth-- == 0)
            {
                return p;
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private int BestFor(int point, int except)
    {
        var (best, most) = (-1, -1L);
        foreach (var seat in _problem.Supporters[point])
        {
            if (seat == except || !HasRoom(seat))
            {
                continue;
            }

            long gain = 0;
            foreach (var p in _points[seat])
            {
                gain += _supports[p] == 0 ? _weights[p] : 0;
            }

            if (gain > most || (gain == most && _since[seat] < _since[best]))
            {
                (best, most) = (seat, gain);
            }
        }

        return best;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private int LeastMissed(int except)
    {
        var (at, least) = (-1, long.MaxValue);
        for (var i = 0; i < _filled.Count; i++)
        {
            if (_filled[i] == except && _filled.Count > 1)
            {
                continue;
            }

            long loss = 0;
            foreach (var p in _points[_filled[i]])
            {
                loss += _supports[p] == 1 ? _weights[p] : 0;
            }

            if (loss < least || (loss == least && _since[_filled[i]] < _since[_filled[at]]))
            {
                (at, least) = (i, loss);
            }
        }

        return at;
    }

    private bool HasRoom(int seat)
    {
        foreach (var room in _rooms[seat])
        {
            if (_isRoomTaken[room])
            {
                return false;
            }
        }

        foreach (var stock in _stocks[seat])
        {
            if (_stockLeft[stock] == 0)
            {
                return false;
            }
        }

        return true;
    }

    private void Fill(int seat, int turn)
    {
        _filled.Add(seat);
        Change(seat, turn, 1);
    }

    private void Take(int seat, int turn)
    {
        _filled.Remove(seat);
        Change(seat, turn, -1);
    }

    private void Change(int seat, int turn, int by)
    {
        _since[seat] = turn;
        foreach (var p in _points[seat])
        {
            _supports[p] += by;
        }

        foreach (var room in _rooms[seat])
        {
            _isRoomTaken[room] = by > 0;
        }

        foreach (var stock in _stocks[seat])
        {
            _stockLeft[stock] -= by;
        }
    }

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

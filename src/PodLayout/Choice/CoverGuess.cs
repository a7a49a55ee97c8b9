using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace PodLayout.Choice;

/// <summary>
/// Looks for a choice with a given number of pods by exchanging pods: the one that is missed least makes way for one that a point
/// without support needs, and whatever stands in its way goes too. A choice that has as few as a bound allows
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

    // Pairs of seat and point looked at: where there are thousands of seats, fewer exchanges.
    private const long MostEffort = 12_000_000;

    private readonly List<int[]> _supporters = [];
    private readonly List<(int Row, int Share)>[] _points;
    private readonly TakenRoom _room;
    private readonly List<long> _supports = [];
    private readonly List<int> _weights = [];
    private readonly List<int> _inWay = [];
    private readonly int[] _since;
    private readonly int[] _takenAt;
    private readonly List<int> _filled = [];
    private int _turn;
    private uint _dice = 1;

    /// <summary>A search that knows no point yet.</summary>
    /// <param name="seatCount">Seats are numbered from 0.</param>
    /// <param name="rooms">See <see cref="CoverProblem.Rooms"/>.</param>
    /// <param name="stocks">See <see cref="CoverProblem.Stocks"/>.</param>
    public CoverGuess(int seatCount, ImmutableArray<int[]> rooms, ImmutableArray<StockRow> stocks)
    {
        _points = [.. Enumerable.Range(0, seatCount).Select(_ => new List<(int, int)>())];
        _room = new(seatCount, rooms, stocks);
        _since = new int[seatCount];
        _takenAt = new int[seatCount];
        Array.Fill(_takenAt, int.MinValue / 2);
    }

    /// <summary>A choice of exactly so many seats, rising, that keeps every row; default when none was found.</summary>
    /// <param name="problem">The rows; every point has supporters.</param>
    /// <param name="pods">How many seats to fill, at least one.</param>
    public static ImmutableArray<int> Of(CoverProblem problem, int pods)
    {
        var guess = new CoverGuess(problem.SeatCount, problem.Rooms, problem.Stocks);
        foreach (var row in problem.Supporters)
        {
            guess.Add(row);
        }

        foreach (var hold in problem.Holds)
        {
            guess.Add(hold);
        }

        // Fewer than asked for is more than the bound allows: left to the solver, which says what is wrong.
        return guess.Search(pods) is { IsDefault: false } choice && choice.Length == pods ? choice : default;
    }

    /// <summary>One more point that must be supported, by the seats that support it: each of them brings all that is needed.</summary>
    public void Add(int[] supporters) => Add(supporters, []);

    /// <summary>One more row of holding, to which each of its seats brings its share.</summary>
    public void Add(HoldRow hold) => Add([.. hold.Seats], [.. hold.Shares]);

    private void Add(int[] seats, int[] shares)
    {
        var row = _supporters.Count;
        _supporters.Add(seats);
        _weights.Add(1);
        var sum = 0L;
        for (var i = 0; i < seats.Length; i++)
        {
            var share = shares.Length == 0 ? HoldRow.Needed : Math.Min(shares[i], HoldRow.Needed);
            _points[seats[i]].Add((row, share));
            sum += _filled.Contains(seats[i]) ? share : 0;
        }

        _supports.Add(sum);
    }

    /// <summary>Puts pods on some seats, as far as they leave each other room and stock lasts, and takes all others away.</summary>
    public void Start(ImmutableArray<int> seats)
    {
        foreach (var pod in _filled.ToArray())
        {
            Take(pod);
        }

        foreach (var seat in seats)
        {
            if (InWay(seat) && _inWay.Count == 0)
            {
                Fill(seat);
            }
        }
    }

    /// <summary>
    /// A choice of at most so many seats, rising, that keeps every row known so far; default when none was found. The search goes on
    /// from where the last one ended.
    /// </summary>
    /// <param name="pods">How many seats may be filled, at least one.</param>
    public ImmutableArray<int> Search(int pods)
    {
        if (pods < 1 || pods > _points.Length)
        {
            return default;
        }

        while (_filled.Count > pods)
        {
            Take(_filled[LeastMissed(_filled, -1)]);
        }

        var effort = 0L;
        for (var end = _turn + MostExchanges; _turn < end && effort < MostEffort;)
        {
            _turn++;
            if (Unsupported() < 0)
            {
                return [.. _filled.Order()];
            }

            if (_filled.Count == pods)
            {
                Take(_filled[LeastMissed(_filled, _filled.Count > 1 ? _filled[^1] : -1)]);
            }

            var seat = BestFor(Unsupported(), ref effort);
            if (seat >= 0)
            {
                MakeRoomFor(seat);
                Fill(seat);
            }
            else if (_filled.Count == 0)
            {
                // Not even the first pod finds stock.
                return default;
            }

            for (var p = 0; p < _supports.Count; p++)
            {
                _weights[p] += _supports[p] < HoldRow.Needed ? 1 : 0;
            }
        }

        return default;
    }

    // One of the points without support; -1 when there is none.
    private int Unsupported()
    {
        var count = 0;
        foreach (var s in _supports)
        {
            count += s < HoldRow.Needed ? 1 : 0;
        }

        if (count == 0)
        {
            return -1;
        }

        _dice = _dice * 1664525 + 1013904223;
        var nth = (int)((_dice >> 8) % (uint)count);
        for (var p = 0; ; p++)
        {
            if (_supports[p] < HoldRow.Needed && nth-- == 0)
            {
                return p;
            }
        }
    }

    // The seat that brings most for the point, less what is lost with the pods that must make way for it.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private int BestFor(int point, ref long effort)
    {
        var (best, most) = (-1, long.MinValue);
        ReadOnlySpan<long> supports = CollectionsMarshal.AsSpan(_supports);
        ReadOnlySpan<int> weights = CollectionsMarshal.AsSpan(_weights);
        foreach (var seat in _supporters[point])
        {
            // What has just made way does not come straight back; of a row of holding a seat may be filled already.
            if (_filled.Contains(seat) || _takenAt[seat] >= _turn - 1 || !InWay(seat))
            {
                continue;
            }

            long gain = 0;
            effort += _points[seat].Count;
            foreach (var (row, share) in CollectionsMarshal.AsSpan(_points[seat]))
            {
                var lacks = HoldRow.Needed - supports[row];
                gain += lacks > 0 ? weights[row] * Math.Min(lacks, share) : 0;
            }

            for (var i = 0; i < _inWay.Count && gain > most; i++)
            {
                gain -= Loss(_inWay[i]);
            }

            if (gain > most || (gain == most && _since[seat] < _since[best]))
            {
                (best, most) = (seat, gain);
            }
        }

        return best;
    }

    // Which of some pods is missed least, but for one of them.
    private int LeastMissed(List<int> pods, int except)
    {
        var (at, least) = (-1, long.MaxValue);
        for (var i = 0; i < pods.Count; i++)
        {
            if (pods[i] == except)
            {
                continue;
            }

            var loss = Loss(pods[i]);
            if (loss < least || (loss == least && _since[pods[i]] < _since[pods[at]]))
            {
                (at, least) = (i, loss);
            }
        }

        return at;
    }

    // What only this pod supports.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private long Loss(int pod)
    {
        ReadOnlySpan<long> supports = CollectionsMarshal.AsSpan(_supports);
        ReadOnlySpan<int> weights = CollectionsMarshal.AsSpan(_weights);
        long loss = 0;
        foreach (var (row, share) in CollectionsMarshal.AsSpan(_points[pod]))
        {
            var spare = supports[row] - HoldRow.Needed;
            loss += spare < share ? weights[row] * (spare < 0 ? share : share - spare) : 0;
        }

        return loss;
    }

    // Finds the pods that take a seat's room or the last of its stock; false when there is no such stock at all.
    private bool InWay(int seat)
    {
        _inWay.Clear();
        _room.AddOverlapping(seat, _inWay);
        if (_room.UsedUp(seat) is var stock and >= 0 && !_inWay.Exists(pod => _room.IsOf(pod, stock)))
        {
            var alike = _filled.FindAll(pod => _room.IsOf(pod, stock));
            if (alike.Count == 0)
            {
                return false;
            }

            _inWay.Add(alike[LeastMissed(alike, -1)]);
        }

        return true;
    }

    private void MakeRoomFor(int seat)
    {
        InWay(seat);
        foreach (var pod in _inWay.ToArray())
        {
            Take(pod);
        }
    }

    private void Fill(int seat)
    {
        _filled.Add(seat);
        Change(seat, 1);
    }

    private void Take(int seat)
    {
        _filled.Remove(seat);
        _takenAt[seat] = _turn;
        Change(seat, -1);
    }

    private void Change(int seat, int by)
    {
        _since[seat] = _turn;
        foreach (var (row, share) in _points[seat])
        {
            _supports[row] += by * share;
        }

        _room.Change(seat, by);
    }
}

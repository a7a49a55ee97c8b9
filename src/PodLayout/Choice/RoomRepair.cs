using System.Collections.Immutable;

namespace PodLayout.Choice;

/// <summary>
/// Moves pods of a choice that overlap, or of which there are too few, to other seats that support what they alone support.
/// </summary>
internal static class RoomRepair
{
    /// <summary>
    /// A choice of as many pods that keeps every row; default where exchanging one pod at a time does not lead to one.
    /// </summary>
    /// <param name="problem">The rows; every point is supported by the choice.</param>
    /// <param name="filled">The choice, which may break room and stock rows.</param>
    public static ImmutableArray<int> Repair(CoverProblem problem, ImmutableArray<int> filled)
    {
        var state = new State(problem, filled);
        while (state.Conflicts > 0)
        {
            if (!state.ExchangeOne())
            {
                return default;
            }
        }

        return state.Filled;
    }

    private sealed class State
    {
        private readonly ulong[][] _supports;
        private readonly int[][] _roomsOf;
        private readonly int[] _stockOf;
        private readonly int[] _inRoom;
        private readonly int[] _ofStock;
        private readonly int[] _limits;
        private readonly List<int> _filled;
        private readonly HashSet<int> _left = [];
        private readonly int _words;

        public State(CoverProblem problem, ImmutableArray<int> filled)
        {
            _words = (problem.Supporters.Length + 63) / 64;
            _supports = [.. Enumerable.Range(0, problem.SeatCount).Select(_ => new ulong[_words])];
            for (var p = 0; p < problem.Supporters.Length; p++)
            {
                foreach (var s in problem.Supporters[p])
                {
                    _supports[s][p >> 6] |= 1UL << (p & 63);
                }
            }

            _roomsOf = Inverse(problem.Rooms, problem.SeatCount);
            // Seats of no stock row count as one more type of which there are always enough.
            _stockOf = new int[problem.SeatCount];
            Array.Fill(_stockOf, problem.Stocks.Length);
            for (var t = 0; t < problem.Stocks.Length; t++)
            {
                Array.ForEach(problem.Stocks[t].Seats, s => _stockOf[s] = t);
            }

            _inRoom = new int[problem.Rooms.Length];
            _ofStock = new int[problem.Stocks.Length + 1];
            _limits = [.. problem.Stocks.Select(s => s.Limit), int.MaxValue];
            _filled = [.. filled];
            foreach (var s in filled)
            {
                Conflicts += Put(s, 1);
            }
        }

        // Overlapping pairs and pods beyond stock.
        public int Conflicts { get; private set; }

        public ImmutableArray<int> Filled => [.. _filled.Order()];

        // The exchange that leaves fewest conflicts, no more than now. A seat that a pod has left is not taken again, so that
        // exchanges that only shift a conflict come to an end.
        public bool ExchangeOne()
        {
            (int Pod, int Seat, int Conflicts) best = (-1, -1, Conflicts + 1);
            for (var i = 0; i < _filled.Count && best.Conflicts > 0; i++)
            {
                var relief = -Put(_filled[i], -1);
                if (relief > 0)
                {
                    Best(i, Conflicts - relief, ref best);
                }

                Put(_filled[i], 1);
            }

            if (best.Pod < 0)
            {
                return false;
            }

            Put(_filled[best.Pod], -1);
            Put(best.Seat, 1);
            _left.Add(_filled[best.Pod]);
            _filled[best.Pod] = best.Seat;
            Conflicts = best.Conflicts;
            return true;
        }

        // Looks for a better exchange of a pod, now taken away, among the seats that support all that only it supports.
        private void Best(int pod, int conflictsWithout, ref (int Pod, int Seat, int Conflicts) best)
        {
            var alone = (ulong[])_supports[_filled[pod]].Clone();
            for (var w = 0; w < _words; w++)
            {
                for (var j = 0; j < _filled.Count; j++)
                {
                    alone[w] &= j == pod ? ulong.MaxValue : ~_supports[_filled[j]][w];
                }
            }

            for (var s = 0; s < _supports.Length; s++)
            {
                if (s != _filled[pod] && Covers(_supports[s], alone) && !_left.Contains(s))
                {
                    var conflicts = conflictsWithout + ConflictsOf(s);
                    if (conflicts < best.Conflicts)
                    {
                        best = (pod, s, conflicts);
                    }
                }
            }
        }

        private int ConflictsOf(int seat)
        {
            var conflicts = _ofStock[_stockOf[seat]] >= _limits[_stockOf[seat]] ? 1 : 0;
            foreach (var room in _roomsOf[seat])
            {
                conflicts += _inRoom[room];
            }

            return conflicts;
        }

        // Puts a pod on a seat or takes it away; returns the change in conflicts.
        private int Put(int seat, int change)
        {
            if (change < 0)
            {
                Change(-1);
                return -ConflictsOf(seat);
            }

            var conflicts = ConflictsOf(seat);
            Change(1);
            return conflicts;

            void Change(int by)
            {
                _ofStock[_stockOf[seat]] += by;
                foreach (var room in _roomsOf[seat])
                {
                    _inRoom[room] += by;
                }
            }
        }

        private bool Covers(ulong[] large, ulong[] small)
        {
            for (var w = 0; w < _words; w++)
            {
                if ((small[w] & ~large[w]) != 0)
                {
                    return false;
                }
            }

            return true;
        }

        private static int[][] Inverse(ImmutableArray<int[]> rows, int count)
        {
            var lists = new List<int>?[count];
            for (var r = 0; r < rows.Length; r++)
            {
                foreach (var s in rows[r])
                {
                    (lists[s] ??= []).Add(r);
                }
            }

            return [.. lists.Select(l => l?.ToArray() ?? [])];
        }
    }
}

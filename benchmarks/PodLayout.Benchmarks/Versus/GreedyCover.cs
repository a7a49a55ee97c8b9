using PodLayout.Choice;

namespace PodLayout.Benchmarks.Versus;

/// <summary>What a person with patience does: the pod that supports most of what is left, again and again.</summary>
internal static class GreedyCover
{
    /// <summary>Number of pods, those that turn out not to be needed taken out again; null when it gets stuck.</summary>
    public static int? Pods(CoverProblem problem)
    {
        var supported = new List<int>[problem.SeatCount];
        for (var s = 0; s < supported.Length; s++)
        {
            supported[s] = [];
        }

        for (var p = 0; p < problem.Supporters.Length; p++)
        {
            foreach (var s in problem.Supporters[p])
            {
                supported[s].Add(p);
            }
        }

        var roomsOf = Groups(problem.SeatCount, [.. problem.Rooms]);
        var stocksOf = Groups(problem.SeatCount, [.. problem.Stocks.Select(s => s.Seats)]);
        var roomTaken = new bool[problem.Rooms.Length];
        var left = problem.Stocks.Select(s => s.Limit).ToArray();
        var times = new int[problem.Supporters.Length];
        List<int> filled = [];
        while (times.Contains(0))
        {
            var best = Enumerable.Range(0, problem.SeatCount)
                .Where(s => !roomsOf[s].Exists(r => roomTaken[r]) && !stocksOf[s].Exists(k => left[k] == 0))
                .Select(s => (Seat: s, New: supported[s].Count(p => times[p] == 0))).DefaultIfEmpty((Seat: -1, New: 0)).MaxBy(s => s.New);
            if (best.New == 0)
            {
                return null;
            }

            filled.Add(best.Seat);
            supported[best.Seat].ForEach(p => times[p]++);
            roomsOf[best.Seat].ForEach(r => roomTaken[r] = true);
            stocksOf[best.Seat].ForEach(k => left[k]--);
        }

        foreach (var seat in filled.ToArray().Where(s => supported[s].TrueForAll(p => times[p] > 1)))
        {
            if (supported[seat].TrueForAll(p => times[p] > 1))
            {
                filled.Remove(seat);
                supported[seat].ForEach(p => times[p]--);
            }
        }

        return filled.Count;
    }

    private static List<int>[] Groups(int seatCount, int[][] groups)
    {
        var of = Enumerable.Range(0, seatCount).Select(_ => new List<int>()).ToArray();
        for (var g = 0; g < groups.Length; g++)
        {
            foreach (var seat in groups[g])
            {
                of[seat].Add(g);
            }
        }

        return of;
    }
}

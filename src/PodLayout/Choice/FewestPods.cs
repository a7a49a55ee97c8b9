using System.Collections.Immutable;

namespace PodLayout.Choice;

/// <summary>The fewest seats that support every point: by the relaxation where that settles it, else by the exact model.</summary>
public static class FewestPods
{
    // Rows added at a time: enough to come to an end soon, few enough to leave out what the next choice supports anyway.
    private const int RowsOfRound = 32;

    /// <summary>
    /// Finds them for a question whose rows are made as needed: a choice for some of the points is made, and the points that it
    /// leaves without support are added, until there are none. Fewer rows only make the bound lower, so it holds at every stage.
    /// </summary>
    /// <param name="question">The model.</param>
    /// <param name="first">Points to begin with.</param>
    /// <param name="atMost">Only choices with at most this many pods are looked for.</param>
    /// <param name="cancellation">Cuts the work short; the answer is then not proven.</param>
    /// <returns>The answer, and the points whose rows it took.</returns>
    public static (CoverAnswer Answer, ImmutableArray<int> Points) Of(
        CoverQuestion question, ImmutableArray<int> first, int atMost, CancellationToken cancellation) =>
        Of(question, first, atMost, default, cancellation);

    /// <summary>
    /// The same, and among choices with equally many pods one whose preferences come to least.
    /// </summary>
    /// <param name="question">The model.</param>
    /// <param name="first">Points to begin with.</param>
    /// <param name="atMost">Only choices with at most this many pods are looked for.</param>
    /// <param name="preference">Cost of each seat beside the number of pods, 0 or more; default for none.</param>
    /// <param name="cancellation">Cuts the work short; the answer is then not proven.</param>
    /// <returns>The answer, and the points whose rows it took.</returns>
    public static (CoverAnswer Answer, ImmutableArray<int> Points) Of(
        CoverQuestion question,
        ImmutableArray<int> first,
        int atMost,
        ImmutableArray<int> preference,
        CancellationToken cancellation)
    {
        var points = first.ToList();
        var isIn = new bool[question.PointCount];
        points.ForEach(p => isIn[p] = true);
        List<int[]> rows = [.. points.Select(question.SupportersOf)];
        List<HoldRow> holds = [];
        while (true)
        {
            CoverProblem problem = new(question.SeatCount, [.. rows], question.Rooms, question.Stocks);
            var loose = Loosely(problem, atMost, cancellation);
            if (!loose.HasChoice)
            {
                return (loose, [.. points]);
            }

            // While points are missing, the quick choice that may break room and stock rows tells which: only one that
            // misses none is worth making exact.
            if (Add(loose.Filled))
            {
                continue;
            }

            bool isNew;
            do
            {
                var answer = preference.IsDefault && holds.Count == 0
                    ? Exactly(problem, loose, atMost, cancellation)
                    : Larger(CoverModel.Solve(problem with { Holds = [.. holds] }, atMost, preference, cancellation, atLeast: loose.LowerBound), loose);
                isNew = answer.HasChoice && Add(answer.Filled);
                if (!answer.HasChoice || (!isNew && !AddHolds(answer.Filled, out isNew)))
                {
                    return (answer, [.. points]);
                }
            }
            while (!isNew);
        }

        // Adds rows for the points that a choice leaves without support; false when there are none.
        bool Add(ImmutableArray<int> filled)
        {
            var missing = Enumerable.Range(0, question.PointCount)
                .Where(p => !isIn[p] && !filled.Any(s => question.Supports(s, p))).ToArray();
            // Spread over the part: neighbours mostly ask for the same.
            var step = Math.Max(1, missing.Length / RowsOfRound);
            foreach (var p in missing.Where((_, i) => i % step == 0))
            {
                isIn[p] = true;
                points.Add(p);
                rows.Add(question.SupportersOf(p));
            }

            return missing.Length > 0;
        }

        // Adds the rows of holding that a choice breaks; false when there are none. Those that any one of some seats keeps are
        // like points to support, and help the quick choice too.
        bool AddHolds(ImmutableArray<int> filled, out bool isCover)
        {
            var broken = question.HoldsBrokenBy?.Invoke(filled) ?? [];
            isCover = broken.Any(h => h.IsCover);
            rows.AddRange(broken.Where(h => h.IsCover).Select(h => h.Seats));
            holds.AddRange(broken.Where(h => !h.IsCover));
            return broken.Length > 0;
        }
    }

    private static CoverAnswer Larger(CoverAnswer answer, CoverAnswer loose) =>
        answer with { LowerBound = Math.Max(loose.LowerBound, answer.LowerBound) };

    /// <summary>Finds them.</summary>
    /// <param name="problem">The model's rows.</param>
    /// <param name="atMost">Only choices with at most this many pods are looked for.</param>
    /// <param name="cancellation">Cuts the work short; the answer is then not proven.</param>
    public static CoverAnswer Of(CoverProblem problem, int atMost, CancellationToken cancellation)
    {
        var loose = Loosely(problem, atMost, cancellation);
        return loose.HasChoice ? Exactly(problem, loose, atMost, cancellation) : loose;
    }

    // The fewest seats where room and stock do not matter. A seat that supports no more than another is then not needed: a
    // far smaller model, whose best choice bounds the full one.
    private static CoverAnswer Loosely(CoverProblem problem, int atMost, CancellationToken cancellation)
    {
        if (problem.FirstUnsupported >= 0 || atMost < 0)
        {
            return new(default, atMost + 1, true);
        }

        var needed = CoverReduction.NeededPoints(problem.Supporters, problem.SeatCount);
        ImmutableArray<int[]> supporters = [.. needed.Select(p => problem.Supporters[p])];
        var (bound, whole) = CoverRelaxation.Solve(supporters, problem.SeatCount);
        if (bound > atMost)
        {
            return new(default, bound, true);
        }

        if (!whole.IsDefault && whole.Length == bound)
        {
            return new(whole, bound, true);
        }

        var seats = CoverReduction.NeededSeats(supporters, problem.SeatCount);
        var number = new int[problem.SeatCount];
        Array.Fill(number, -1);
        for (var i = 0; i < seats.Length; i++)
        {
            number[seats[i]] = i;
        }

        var small = new CoverProblem(
            seats.Length, [.. supporters.Select(of => of.Select(s => number[s]).Where(n => n >= 0).ToArray())], [], []);
        var answer = CoverModel.Solve(small, atMost, default, cancellation);
        return answer with
        {
            Filled = answer.HasChoice ? [.. answer.Filled.Select(i => seats[i])] : default,
            LowerBound = Math.Max(bound, answer.LowerBound),
        };
    }

    // From the loose choice by exchanging pods where that keeps the rows left out; otherwise by the full model.
    private static CoverAnswer Exactly(CoverProblem problem, CoverAnswer loose, int atMost, CancellationToken cancellation)
    {
        if (loose.Filled.Length == loose.LowerBound && RoomRepair.Repair(problem, loose.Filled) is { IsDefault: false } repaired)
        {
            return new(repaired, loose.LowerBound, true);
        }

        return Larger(CoverModel.Solve(problem, atMost, default, cancellation, atLeast: loose.LowerBound), loose);
    }
}


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
        while (true)
        {
            CoverProblem problem = new(question.SeatCount, [.. rows], question.Rooms, question.Stocks);
            var answer = preference.IsDefault
                ? Of(problem, atMost, cancellation) : CoverModel.Solve(problem, atMost, preference, cancellation);
            if (!answer.HasChoice)
            {
                return (answer, [.. points]);
            }

            var missing = Enumerable.Range(0, question.PointCount)
                .Where(p => !isIn[p] && !answer.Filled.Any(s => question.Supports(s, p))).ToArray();
            if (missing.Length == 0)
            {
                return (answer, [.. points]);
            }

            // Spread over the part: neighbours mostly ask for the same.
            var step = Math.Max(1, missing.Length / RowsOfRound);
            foreach (var p in missing.Where((_, i) => i % step == 0))
            {
                isIn[p] = true;
                points.Add(p);
                rows.Add(question.SupportersOf(p));
            }
        }
    }

    /// <summary>Finds them.</summary>
    /// <param name="problem">The model's rows.</param>
    /// <param name="atMost">Only choices with at most this many pods are looked for.</param>
    /// <param name="cancellation">Cuts the work short; the answer is then not proven.</param>
    public static CoverAnswer Of(CoverProblem problem, int atMost, CancellationToken cancellation)
    {
        if (problem.FirstUnsupported >= 0 || atMost < 0)
        {
            return new(default, atMost + 1, true);
        }

        var needed = CoverReduction.NeededPoints(problem.Supporters, problem.SeatCount);
        problem = problem with { Supporters = [.. needed.Select(p => problem.Supporters[p])] };
        var (bound, whole) = CoverRelaxation.Solve(problem.Supporters, problem.SeatCount);
        if (bound > atMost)
        {
            return new(default, bound, true);
        }

        // Without room and stock rows a seat that supports no more than another is not needed: a far smaller model. Its best
        // choice bounds the full one, and is the answer where exchanging pods makes it keep the rows left out.
        var loose = !whole.IsDefault && whole.Length == bound ? whole : default;
        if (loose.IsDefault)
        {
            var answerLoose = Loose(problem, atMost, cancellation);
            if (!answerLoose.HasChoice)
            {
                return answerLoose with { LowerBound = Math.Max(bound, answerLoose.LowerBound) };
            }

            (loose, bound) = (answerLoose.Filled, Math.Max(bound, answerLoose.LowerBound));
        }

        if (loose.Length == bound && RoomRepair.Repair(problem, loose) is { IsDefault: false } repaired)
        {
            return new(repaired, bound, true);
        }

        var answer = CoverModel.Solve(problem, atMost, default, cancellation);
        return answer with { LowerBound = Math.Max(bound, answer.LowerBound) };
    }

    private static CoverAnswer Loose(CoverProblem problem, int atMost, CancellationToken cancellation)
    {
        var seats = CoverReduction.NeededSeats(problem.Supporters, problem.SeatCount);
        var number = new int[problem.SeatCount];
        Array.Fill(number, -1);
        for (var i = 0; i < seats.Length; i++)
        {
            number[seats[i]] = i;
        }

        var loose = new CoverProblem(
            seats.Length, [.. problem.Supporters.Select(of => of.Select(s => number[s]).Where(n => n >= 0).ToArray())], [], []);
        var answer = CoverModel.Solve(loose, atMost, default, cancellation);
        return answer.HasChoice ? answer with { Filled = [.. answer.Filled.Select(i => seats[i])] } : answer;
    }
}

using System.Collections.Immutable;

namespace PodLayout.Choice;

/// <summary>The fewest seats that support every point: by relaxations and exchanges where these settle it, else by the exact model.</summary>
public static class FewestPods
{
    /// <summary>
    /// Finds them for a question whose rows are made as needed: a choice for some of the points is made, and the points that it
    /// leaves without support are added, until there are none. Fewer rows only make the bound lower, so it holds at every stage.
    /// </summary>
    /// <param name="question">The model.</param>
    /// <param name="first">Points to begin with.</param>
    /// <param name="atMost">Only choices with at most this many pods are looked for.</param>
    /// <param name="cancellation">Cuts the work short; the answer is then not proven.</param>
    /// <param name="wanted">What is wanted; null for the fewest, proven.</param>
    public static CoverAnswer Of(
        CoverQuestion question, ImmutableArray<int> first, int atMost, CancellationToken cancellation, Wanted? wanted = null) =>
        new ChoiceSearch(question, first, atMost, wanted ?? Wanted.Fewest, cancellation).Run();

    /// <summary>Finds them where all rows are known.</summary>
    /// <param name="problem">The model's rows; those of holding are left out.</param>
    /// <param name="atMost">Only choices with at most this many pods are looked for.</param>
    /// <param name="cancellation">Cuts the work short; the answer is then not proven.</param>
    public static CoverAnswer Of(CoverProblem problem, int atMost, CancellationToken cancellation) => Of(
        new(
            problem.SeatCount, problem.Supporters.Length, p => problem.Supporters[p],
            (s, p) => Array.BinarySearch(problem.Supporters[p], s) >= 0, new(problem.Rooms), problem.Stocks),
        [.. Enumerable.Range(0, problem.Supporters.Length)], atMost, cancellation);

    /// <summary>The fewest seats, and among choices with equally many pods one whose preferences come to least.</summary>
    /// <param name="question">The model.</param>
    /// <param name="first">Points to begin with.</param>
    /// <param name="atMost">Only choices with at most this many pods are looked for.</param>
    /// <param name="preference">Cost of each seat beside the number of pods, 0 or more.</param>
    /// <param name="cancellation">Cuts the work short; the answer is then not proven.</param>
    public static CoverAnswer Preferred(
        CoverQuestion question, ImmutableArray<int> first, int atMost, ImmutableArray<int> preference, CancellationToken cancellation)
    {
        var rows = new GrowingRows(question, first);
        while (true)
        {
            var answer = CoverModel.Solve(rows.WithHolds, atMost, preference, cancellation);
            if (!answer.HasChoice || (!rows.AddMissing(answer.Filled) && !rows.AddHolds(answer.Filled, out _)))
            {
                return answer;
            }
        }
    }
}

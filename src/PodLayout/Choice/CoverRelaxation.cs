using System.Collections.Immutable;
using Google.OrTools.LinearSolver;

namespace PodLayout.Choice;

/// <summary>The linear relaxation of the cover, without room and stock rows: a quick bound, and often the answer.</summary>
public static class CoverRelaxation
{
    // What the sums below may be off by, far above the rounding of a few hundred additions.
    private const double Rounding = 1e-9;

    /// <summary>Solves the relaxation.</summary>
    /// <remarks>
    /// The bound does not trust the solver's rounding: prices are set on points so that no seat supports points worth more than
    /// one pod; the sum of the prices then bounds every choice (weak duality) because the prices are scaled by what the dearest
    /// seat really costs.
    /// </remarks>
    /// <param name="supporters">Supporters of each point; none may be empty.</param>
    /// <param name="seatCount">Number of seats.</param>
    /// <returns>
    /// A lower bound on the pods of every choice; and the seats to fill, rising, where the relaxed answer came out whole, or a
    /// choice with as few pods as the bound was found by exchanging pods (default otherwise).
    /// </returns>
    public static (int Bound, ImmutableArray<int> Whole) Solve(ImmutableArray<int[]> supporters, int seatCount)
    {
        if (supporters.IsEmpty)
        {
            return (0, []);
        }

        var seats = CoverReduction.NeededSeats(supporters, seatCount);
        var (fill, prices) = Run(supporters, seats);
        var costs = new double[seatCount];
        for (var point = 0; point < supporters.Length; point++)
        {
            foreach (var seat in supporters[point])
            {
                costs[seat] += prices[point];
            }
        }

        var bound = (int)Math.Ceiling(prices.Sum() / Math.Max(1, costs.Max()) - Rounding);
        ImmutableArray<int> filled = [.. seats.Where((_, i) => fill[i] > 0.5)];
        var isWhole = fill.All(f => f < 1e-6 || f > 1 - 1e-6) && supporters.All(of => of.Any(s => filled.BinarySearch(s) >= 0));
        return (bound, isWhole ? filled : Guess(supporters, seats, bound));
    }

    private static ImmutableArray<int> Guess(ImmutableArray<int[]> supporters, ImmutableArray<int> seats, int pods)
    {
        var among = CoverReduction.Among(supporters, seats);
        var guess = CoverGuess.Of(new(seats.Length, among, [], []), pods);
        return guess.IsDefault ? default : [.. guess.Select(i => seats[i])];
    }

    private static (double[] Fill, double[] Prices) Run(ImmutableArray<int[]> supporters, ImmutableArray<int> seats)
    {
        var column = new Dictionary<int, int>(seats.Length);
        for (var i = 0; i < seats.Length; i++)
        {
            column.Add(seats[i], i);
        }

        using var solver = Solver.CreateSolver("GLOP");
        var fill = seats.Select(_ => solver.MakeNumVar(0, double.PositiveInfinity, "")).ToArray();
        var rows = supporters.Select(of =>
        {
            var row = solver.MakeConstraint(1, double.PositiveInfinity);
            foreach (var seat in of)
            {
                if (column.TryGetValue(seat, out var c))
                {
                    row.SetCoefficient(fill[c], 1);
                }
            }

            return row;
        }).ToArray();
        using var objective = solver.Objective();
        foreach (var variable in fill)
        {
            objective.SetCoefficient(variable, 1);
        }

        objective.SetMinimization();
        return solver.Solve() == Solver.ResultStatus.OPTIMAL
            ? ([.. fill.Select(f => f.SolutionValue())], [.. rows.Select(r => Math.Max(0, r.DualValue()))])
            : ([.. fill.Select(_ => 0.5)], new double[supporters.Length]);
    }
}

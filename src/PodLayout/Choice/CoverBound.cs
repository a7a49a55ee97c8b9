using System.Collections.Immutable;
using Google.OrTools.LinearSolver;

namespace PodLayout.Choice;

/// <summary>A quick lower bound on the number of pods.</summary>
public static class CoverBound
{
    // What the sums below may be off by, far above the rounding of a few hundred additions.
    private const double Rounding = 1e-9;

    /// <summary>
    /// The linear relaxation of the cover without room and stock rows, rounded up. Prices are set on points so that no seat
    /// supports points worth more than one pod; the sum of the prices then bounds every choice (weak duality), whatever the
    /// solver's rounding, because the prices are scaled by what the dearest seat really costs.
    /// </summary>
    /// <param name="supporters">Supporters of each point; none may be empty.</param>
    /// <param name="seatCount">Number of seats.</param>
    public static int OfRelaxation(ImmutableArray<int[]> supporters, int seatCount)
    {
        if (supporters.IsEmpty)
        {
            return 0;
        }

        var seats = CoverReduction.NeededSeats(supporters, seatCount);
        var prices = Prices(supporters, seats);
        var costs = new double[seatCount];
        for (var point = 0; point < supporters.Length; point++)
        {
            foreach (var seat in supporters[point])
            {
                costs[seat] += prices[point];
            }
        }

        return (int)Math.Ceiling(prices.Sum() / Math.Max(1, costs.Max()) - Rounding);
    }

    private static double[] Prices(ImmutableArray<int[]> supporters, ImmutableArray<int> seats)
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
            ? [.. rows.Select(r => Math.Max(0, r.DualValue()))]
            : new double[supporters.Length];
    }
}

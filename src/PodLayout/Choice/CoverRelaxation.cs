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
    /// A lower bound on the pods of every choice; and the seats to fill, rising, where the relaxed answer came out whole (default
    /// otherwise).
    /// </returns>
    public static (int Bound, ImmutableArray<int> Whole) Solve(ImmutableArray<int[]> supporters, int seatCount)
    {
        if (supporters.IsEmpty)
        {
            return (0, []);
        }

        var (fill, prices) = Run(supporters, seatCount);
        var costs = new double[seatCount];
        for (var point = 0; point < supporters.Length; point++)
        {
            foreach (var seat in supporters[point])
            {
                costs[seat] += prices[point];
            }
        }

        var bound = (int)Math.Ceiling(prices.Sum() / Math.Max(1, costs.Max()) - Rounding);
        ImmutableArray<int> filled = [.. Enumerable.Range(0, seatCount).Where(s => fill[s] > 0.5)];
        var isWhole = fill.All(f => f < 1e-6 || f > 1 - 1e-6) && supporters.All(of => of.Any(s => filled.BinarySearch(s) >= 0));
        return (bound, isWhole ? filled : default);
    }

    /// <summary>Solves the relaxation with room and stock rows.</summary>
    /// <remarks>The bound is made sure of in the same way: room and stock have prices too, which lower what a seat is worth.</remarks>
    /// <param name="problem">The rows; no point may be without supporters. Rows of holding are left out.</param>
    /// <returns>A lower bound on the pods of every choice, and the seats that the relaxed answer fills by more than half, rising.</returns>
    public static (int Bound, ImmutableArray<int> Fuller) WithRoom(CoverProblem problem)
    {
        using var solver = Solver.CreateSolver("GLOP");
        var fill = Enumerable.Range(0, problem.SeatCount).Select(_ => solver.MakeNumVar(0, double.PositiveInfinity, "")).ToArray();
        List<(int[] Seats, double Side, Constraint Row)> rows =
        [
            .. problem.Supporters.Select(of => (of, 1.0, Row(of, 1, double.PositiveInfinity))),
            .. problem.Rooms.Select(of => (of, -1.0, Row(of, double.NegativeInfinity, 1))),
            .. problem.Stocks.Where(s => s.Limit < s.Seats.Length).Select(s => (s.Seats, (double)-s.Limit, Row(s.Seats, double.NegativeInfinity, s.Limit))),
        ];
        using var objective = solver.Objective();
        foreach (var variable in fill)
        {
            objective.SetCoefficient(variable, 1);
        }

        objective.SetMinimization();
        if (solver.Solve() != Solver.ResultStatus.OPTIMAL)
        {
            return (0, default);
        }

        var worth = new double[problem.SeatCount];
        double sum = 0;
        foreach (var (seats, side, row) in rows)
        {
            // What is needed is worth something, what is scarce costs something; the wrong sign can only be rounding.
            var price = Math.Max(0, Math.Sign(side) * row.DualValue()) * Math.Sign(side);
            sum += Math.Abs(side) * price;
            Array.ForEach(seats, s => worth[s] += price);
        }

        var bound = (int)Math.Ceiling(sum / Math.Max(1, worth.DefaultIfEmpty(0).Max()) - Rounding);
        return (bound, [.. Enumerable.Range(0, problem.SeatCount).Where(s => fill[s].SolutionValue() > 0.5)]);

        Constraint Row(int[] seats, double low, double high)
        {
            var row = solver.MakeConstraint(low, high);
            Array.ForEach(seats, s => row.SetCoefficient(fill[s], 1));
            return row;
        }
    }

    private static (double[] Fill, double[] Prices) Run(ImmutableArray<int[]> supporters, int seatCount)
    {
        using var solver = Solver.CreateSolver("GLOP");
        var fill = Enumerable.Range(0, seatCount).Select(_ => solver.MakeNumVar(0, double.PositiveInfinity, "")).ToArray();
        var rows = supporters.Select(of =>
        {
            var row = solver.MakeConstraint(1, double.PositiveInfinity);
            Array.ForEach(of, s => row.SetCoefficient(fill[s], 1));
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

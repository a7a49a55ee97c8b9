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

    /// <summary>Solves the relaxation with room, stock and holding rows.</summary>
    /// <remarks>The bound is made sure of in the same way: room and stock have prices too, which lower what a seat is worth.</remarks>
    /// <param name="problem">The rows; no point may be without supporters.</param>
    /// <returns>A lower bound on the pods of every choice, and the seats that the relaxed answer fills by more than half, rising.</returns>
    public static (int Bound, ImmutableArray<int> Fuller) WithRoom(CoverProblem problem)
    {
        using var solver = Solver.CreateSolver("GLOP");
        var fill = Enumerable.Range(0, problem.SeatCount).Select(_ => solver.MakeNumVar(0, double.PositiveInfinity, "")).ToArray();
        List<(int[] Seats, int[]? Shares, double Side, Constraint Row)> rows =
        [
            .. problem.Supporters.Select(of => (of, (int[]?)null, 1.0, Row(of, null, 1, double.PositiveInfinity))),
            .. problem.Rooms.Select(of => (of, (int[]?)null, -1.0, Row(of, null, double.NegativeInfinity, 1))),
            .. problem.Stocks.Where(s => s.Limit < s.Seats.Length)
                .Select(s => (s.Seats, (int[]?)null, (double)-s.Limit, Row(s.Seats, null, double.NegativeInfinity, s.Limit))),
            .. problem.Holds.Select(h => (h.Seats, (int[]?)h.Shares, 1.0, Row(h.Seats, h.Shares, 1, double.PositiveInfinity))),
        ];
        using var objective = solver.Objective();
        foreach (var variable in fill)
        {
            objective.SetCoefficient(variable, 1);
        }

        objective.SetMinimization();
        if (solver.Solve() is not Solver.ResultStatus.OPTIMAL and var status)
        {
            return (status == Solver.ResultStatus.INFEASIBLE && IsImpossible(problem) ? int.MaxValue : 0, default);
        }

        var worth = new double[problem.SeatCount];
        double sum = 0;
        foreach (var (seats, shares, side, row) in rows)
        {
            // What is needed is worth something, what is scarce costs something; the wrong sign can only be rounding.
            var price = Math.Max(0, Math.Sign(side) * row.DualValue()) * Math.Sign(side);
            sum += Math.Abs(side) * price;
            for (var i = 0; i < seats.Length; i++)
            {
                worth[seats[i]] += price * Share(shares, i);
            }
        }

        var bound = (int)Math.Ceiling(sum / Math.Max(1, worth.DefaultIfEmpty(0).Max()) - Rounding);
        return (bound, [.. Enumerable.Range(0, problem.SeatCount).Where(s => fill[s].SolutionValue() > 0.5)]);

        Constraint Row(int[] seats, int[]? shares, double low, double high)
        {
            var row = solver.MakeConstraint(low, high);
            for (var i = 0; i < seats.Length; i++)
            {
                row.SetCoefficient(fill[seats[i]], Share(shares, i));
            }

            return row;
        }
    }

    /// <summary>
    /// Whether no choice keeps all rows, made sure of by prices: with what is missing to the rows in the place of pods, the least
    /// that is missing is bounded by weak duality, and is more than nothing.
    /// </summary>
    private static bool IsImpossible(CoverProblem problem)
    {
        const double Sure = 1e-6;
        using var solver = Solver.CreateSolver("GLOP");
        var fill = Enumerable.Range(0, problem.SeatCount).Select(_ => solver.MakeNumVar(0, 1, "")).ToArray();
        var missing = solver.MakeNumVar(0, double.PositiveInfinity, "");
        List<(int[] Seats, int[]? Shares, double Side, Constraint Row)> rows =
        [
            .. problem.Supporters.Select(of => (of, (int[]?)null, 1.0, Needs(of, null))),
            .. problem.Holds.Select(h => (h.Seats, (int[]?)h.Shares, 1.0, Needs(h.Seats, h.Shares))),
            .. problem.Rooms.Select(of => (of, (int[]?)null, -1.0, AtMost(of, 1))),
            .. problem.Stocks.Where(s => s.Limit < s.Seats.Length).Select(s => (s.Seats, (int[]?)null, (double)-s.Limit, AtMost(s.Seats, s.Limit))),
        ];
        using var objective = solver.Objective();
        objective.SetCoefficient(missing, 1);
        objective.SetMinimization();
        if (solver.Solve() != Solver.ResultStatus.OPTIMAL)
        {
            return false;
        }

        var worth = new double[problem.SeatCount];
        double sum = 0, needs = 0;
        foreach (var (seats, shares, side, row) in rows)
        {
            var price = Math.Max(0, Math.Sign(side) * row.DualValue()) * Math.Sign(side);
            sum += Math.Abs(side) * price;
            needs += side > 0 ? price : 0;
            for (var i = 0; i < seats.Length; i++)
            {
                worth[seats[i]] += price * Share(shares, i);
            }
        }

        // No seat is filled more than once, so that what it is worth above nothing counts once.
        return (sum - worth.Sum(w => Math.Max(0, w))) / Math.Max(1, needs) > Sure;

        Constraint Needs(int[] seats, int[]? shares)
        {
            var row = solver.MakeConstraint(1, double.PositiveInfinity);
            for (var i = 0; i < seats.Length; i++)
            {
                row.SetCoefficient(fill[seats[i]], Share(shares, i));
            }

            row.SetCoefficient(missing, 1);
            return row;
        }

        Constraint AtMost(int[] seats, double limit)
        {
            var row = solver.MakeConstraint(double.NegativeInfinity, limit);
            Array.ForEach(seats, s => row.SetCoefficient(fill[s], 1));
            return row;
        }
    }

    // A seat counts whole in all rows but those of holding.
    private static double Share(int[]? shares, int i) => shares is null ? 1 : (double)shares[i] / HoldRow.Needed;

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

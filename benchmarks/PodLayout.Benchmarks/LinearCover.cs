using System.Collections.Immutable;
using System.Diagnostics;
using Google.OrTools.LinearSolver;
using PodLayout.Choice;

namespace PodLayout.Benchmarks;

/// <summary>The layout model as an integer programme, for the other solvers that OR-Tools carries.</summary>
internal static class LinearCover
{
    /// <summary>Their names; a build of OR-Tools may lack some.</summary>
    public static ImmutableArray<string> Solvers { get; } = ["SCIP", "HIGHS", "CBC"];

    /// <summary>The fewest seats by a solver as it comes; null when this build of OR-Tools does not carry it.</summary>
    public static (CoverAnswer Answer, double Ms)? Solve(string name, CoverProblem problem, double seconds)
    {
        using var solver = Solver.CreateSolver(name);
        if (solver is null)
        {
            return null;
        }

        var clock = Stopwatch.StartNew();
        solver.SetTimeLimit((long)(1000 * seconds));
        var fill = Enumerable.Range(0, problem.SeatCount).Select(_ => solver.MakeBoolVar("")).ToArray();
        void Rows(IEnumerable<int[]> groups, double low, double high)
        {
            foreach (var group in groups)
            {
                var row = solver.MakeConstraint(low, high);
                foreach (var seat in group)
                {
                    row.SetCoefficient(fill[seat], 1);
                }
            }
        }

        Rows(problem.Supporters, 1, double.PositiveInfinity);
        Rows(problem.Rooms, double.NegativeInfinity, 1);
        foreach (var stock in problem.Stocks)
        {
            Rows([stock.Seats], double.NegativeInfinity, stock.Limit);
        }

        var objective = solver.Objective();
        foreach (var variable in fill)
        {
            objective.SetCoefficient(variable, 1);
        }

        objective.SetMinimization();
        var status = solver.Solve();
        var proven = status == Solver.ResultStatus.OPTIMAL;
        ImmutableArray<int> filled = proven || status == Solver.ResultStatus.FEASIBLE
            ? [.. Enumerable.Range(0, fill.Length).Where(s => fill[s].SolutionValue() > 0.5)] : default;
        var bound = (int)Math.Max(0, Math.Ceiling(objective.BestBound() - 1e-6));
        return (new(filled, proven ? filled.Length : bound, proven), clock.Elapsed.TotalMilliseconds);
    }
}

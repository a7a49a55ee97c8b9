using System.Collections.Immutable;
using System.Globalization;
using Google.OrTools.Sat;

namespace PodLayout.Choice;

/// <summary>The exact model: the fewest seats to fill, by CP-SAT.</summary>
public static class CoverModel
{
    /// <summary>
    /// Finds the fewest seats that support every point, one pod to each spot, within stock.
    /// </summary>
    /// <param name="problem">The model's rows.</param>
    /// <param name="atMost">Only choices with at most this many pods are looked for.</param>
    /// <param name="preference">
    /// Cost of each seat that breaks ties among choices with equally many pods (0 or more); default for none.
    /// </param>
    /// <param name="cancellation">Stops the solver; the answer is then not proven.</param>
    /// <param name="atLeast">No choice has fewer pods than this, as is known already: a choice with as many is then the best.</param>
    /// <param name="any">Whether any choice within the limit will do: the bound is then only what was known.</param>
    /// <param name="parameters">Settings of the solver; null for <see cref="Settings"/>, unless they are themselves being measured.</param>
    public static CoverAnswer Solve(
        CoverProblem problem,
        int atMost,
        ImmutableArray<int> preference,
        CancellationToken cancellation,
        string? parameters = null,
        int atLeast = 0,
        bool any = false)
    {
        if (problem.FirstUnsupported >= 0 || problem.Holds.Any(h => h.Seats.Length == 0) || atMost < 0)
        {
            return new(default, atMost + 1, true);
        }

        var model = Build(problem, atLeast, atMost, preference);
        using var solver = new SolveWrapper();
        solver.SetStringParameters(
            (parameters ?? (problem.Holds.IsEmpty ? Settings : SettingsForHolding)) + (any ? ",stop_after_first_solution:true" : ""));
        using var stop = cancellation.Register(solver.StopSearch);
        if (cancellation.IsCancellationRequested)
        {
            return new(default, 0, false);
        }

        var response = solver.Solve(model.Model);
        var answer = ToAnswer(problem, response, atMost, preference);
        return any && answer.HasChoice ? answer with { LowerBound = atLeast, IsProven = true } : answer;
    }

    /// <summary>
    /// One worker and all the cuts of the linear relaxation: the support rows are nearly interval matrices, whose relaxation is
    /// nearly integral. With CP-SAT's defaults the same models stay unproven after twenty seconds (see benchmarks). A second
    /// core serves better on another placement. One worker also makes the answer the same every time. The solver leaves Ctrl-C
    /// alone: it is the program that stops it.
    /// </summary>
    public const string Settings = "num_workers:1,linearization_level:2,random_seed:1,catch_sigint_signal:false";

    /// <summary>
    /// With rows of holding, long and each with its own numbers, looking for what they have in common takes longer than solving.
    /// </summary>
    public const string SettingsForHolding = Settings + ",find_big_linear_overlap:false,symmetry_level:0,cp_model_probing_level:0";

    private static CpModel Build(CoverProblem problem, int atLeast, int atMost, ImmutableArray<int> preference)
    {
        var model = new CpModel();
        for (var seat = 0; seat < problem.SeatCount; seat++)
        {
            model.NewBoolVar("");
        }

        var rows = model.Model.Constraints;
        foreach (var point in CoverReduction.NeededPoints(problem.Supporters, problem.SeatCount))
        {
            var literals = new BoolArgumentProto();
            literals.Literals.AddRange(problem.Supporters[point]);
            rows.Add(new ConstraintProto { BoolOr = literals });
        }

        foreach (var room in problem.Rooms)
        {
            var literals = new BoolArgumentProto();
            literals.Literals.AddRange(room);
            rows.Add(new ConstraintProto { AtMostOne = literals });
        }

        foreach (var hold in problem.Holds)
        {
            var sum = new LinearConstraintProto();
            sum.Vars.AddRange(hold.Seats);
            sum.Coeffs.AddRange(hold.Shares.Select(s => (long)s));
            sum.Domain.Add(HoldRow.Needed);
            sum.Domain.Add(long.MaxValue);
            rows.Add(new ConstraintProto { Linear = sum });
        }

        foreach (var stock in problem.Stocks.Where(s => s.Limit < Math.Min(atMost, s.Seats.Length)))
        {
            rows.Add(Between(stock.Seats, 0, stock.Limit));
        }

        var all = Enumerable.Range(0, problem.SeatCount).ToArray();
        if (atMost < problem.SeatCount || atLeast > 0)
        {
            rows.Add(Between(all, atLeast, atMost));
        }

        // Pods first: one pod outweighs all that the preferences of a choice can come to.
        var weight = checked(1 + (long)Math.Min(atMost, problem.SeatCount) * (preference.IsDefault ? 0 : preference.Max()));
        var objective = new CpObjectiveProto();
        objective.Vars.AddRange(all);
        objective.Coeffs.AddRange(all.Select(s => weight + (preference.IsDefault ? 0 : preference[s])));
        model.Model.Objective = objective;
        return model;
    }

    private static ConstraintProto Between(int[] seats, int atLeast, int atMost)
    {
        var sum = new LinearConstraintProto();
        sum.Vars.AddRange(seats);
        sum.Coeffs.AddRange(Enumerable.Repeat(1L, seats.Length));
        sum.Domain.Add(atLeast);
        sum.Domain.Add(atMost);
        return new() { Linear = sum };
    }

    private static CoverAnswer ToAnswer(
        CoverProblem problem, CpSolverResponse response, int atMost, ImmutableArray<int> preference)
    {
        var weight = 1 + (long)Math.Min(atMost, problem.SeatCount) * (preference.IsDefault ? 0 : preference.Max());
        var bound = (int)Math.Min(atMost + 1L, Math.Ceiling((response.BestObjectiveBound - weight + 1) / weight - 1e-6));
        switch (response.Status)
        {
            case CpSolverStatus.Infeasible:
                return new(default, atMost + 1, true);
            case CpSolverStatus.Optimal or CpSolverStatus.Feasible:
                ImmutableArray<int> filled =
                    [.. Enumerable.Range(0, problem.SeatCount).Where(s => response.Solution[s] == 1)];
                var proven = response.Status == CpSolverStatus.Optimal;
                return new(filled, proven ? filled.Length : Math.Max(0, bound), proven);
            case CpSolverStatus.Unknown:
                return new(default, Math.Max(0, bound), false);
            default:
                throw new InvalidOperationException(string.Create(
                    CultureInfo.InvariantCulture, $"The model was refused: {response.Status} {response.SolutionInfo}"));
        }
    }
}

using System.Collections.Immutable;
using System.Globalization;
using Google.OrTools.Sat;

namespace PodLayout.Choice;

/// <summary>What the least unsupported comes to.</summary>
/// <param name="Filled">Seats to fill, rising; default when nothing below the limit was found.</param>
/// <param name="Left">What they leave unsupported, in the units of the weights.</param>
/// <param name="LowerBound">No choice leaves less.</param>
public sealed record PartialAnswer(ImmutableArray<int> Filled, long Left, long LowerBound)
{
    /// <summary>Whether there is a choice.</summary>
    public bool HasChoice => !Filled.IsDefault;
}

/// <summary>
/// Where not all points can be had at once: the seats that leave least of them unsupported, each point with its weight (a prize-collecting
/// cover, by CP-SAT). One pod to each spot and the stock count as ever.
/// </summary>
public static class PartialCover
{
    // What the solver may spend on one model, in its own units, which are the same on every machine: about seconds.
    private const double MostSolverUnits = 1;

    // Most of the time would go into looking at the model, of which there are hundreds that differ little (a third of the time without).
    private const string Quickly = "cp_model_presolve:false,symmetry_level:0";

    /// <summary>Finds them.</summary>
    /// <param name="question">The model. Points beyond those that have a weight must be supported whatever it costs.</param>
    /// <param name="weights">What each point counts, 1 or more.</param>
    /// <param name="lessThan">Only choices that leave less than this matter.</param>
    /// <param name="cancellation">Stops the solver: the bound is then what was known.</param>
    public static PartialAnswer Of(CoverQuestion question, ImmutableArray<int> weights, long lessThan, CancellationToken cancellation)
    {
        ImmutableArray<int[]> hard = [.. Enumerable.Range(weights.Length, question.PointCount - weights.Length).Select(question.SupportersOf)];
        if (hard.Any(h => h.Length == 0))
        {
            return new(default, lessThan, lessThan);
        }

        // Points with the same supporters are one; those with none stay whatever is chosen.
        var rows = Enumerable.Range(0, weights.Length).Select(p => (Point: p, Seats: question.SupportersOf(p))).ToList();
        var left = rows.Where(r => r.Seats.Length == 0).Sum(r => (long)weights[r.Point]);
        if (left >= lessThan)
        {
            return new(default, left, left);
        }

        ImmutableArray<(int[] Seats, long Weight)> merged =
        [
            .. rows.Where(r => r.Seats.Length > 0).GroupBy(r => string.Join(' ', r.Seats), StringComparer.Ordinal)
                .Select(g => (g.First().Seats, g.Sum(r => (long)weights[r.Point]))),
        ];
        return Solve(question, merged, hard, left, lessThan, cancellation);
    }

    private static PartialAnswer Solve(
        CoverQuestion question, ImmutableArray<(int[] Seats, long Weight)> rows, ImmutableArray<int[]> hard, long always, long lessThan, CancellationToken cancellation)
    {
        var model = new CpModel();
        for (var seat = 0; seat < question.SeatCount + rows.Length; seat++)
        {
            model.NewBoolVar("");
        }

        var constraints = model.Model.Constraints;
        for (var r = 0; r < rows.Length; r++)
        {
            constraints.Add(Any(rows[r].Seats.Append(question.SeatCount + r)));
        }

        foreach (var row in hard)
        {
            constraints.Add(Any(row));
        }

        foreach (var room in question.Rooms.Value)
        {
            var literals = new BoolArgumentProto();
            literals.Literals.AddRange(room);
            constraints.Add(new ConstraintProto { AtMostOne = literals });
        }

        foreach (var stock in question.Stocks.Where(s => s.Limit < s.Seats.Length))
        {
            constraints.Add(Sum(stock.Seats, 1, stock.Limit));
        }

        int[] left = [.. Enumerable.Range(question.SeatCount, rows.Length)];
        var below = Sum(left, 0, Math.Max(0, lessThan - 1 - always));
        below.Linear.Coeffs.AddRange(rows.Select(r => r.Weight));
        constraints.Add(below);
        var objective = new CpObjectiveProto { Offset = always };
        objective.Vars.AddRange(left);
        objective.Coeffs.AddRange(rows.Select(r => r.Weight));
        model.Model.Objective = objective;

        using var solver = new SolveWrapper();
        solver.SetStringParameters(string.Create(CultureInfo.InvariantCulture, $"{CoverModel.Settings},{Quickly},max_deterministic_time:{MostSolverUnits}"));
        using var stop = cancellation.Register(solver.StopSearch);
        if (cancellation.IsCancellationRequested)
        {
            return new(default, lessThan, always);
        }

        var response = solver.Solve(model.Model);
        var bound = Math.Clamp((long)Math.Ceiling(response.BestObjectiveBound - 1e-6), always, lessThan);
        return response.Status switch
        {
            CpSolverStatus.Infeasible => new(default, lessThan, lessThan),
            CpSolverStatus.Optimal or CpSolverStatus.Feasible => new(
                [.. Enumerable.Range(0, question.SeatCount).Where(s => response.Solution[s] == 1)], (long)Math.Round(response.ObjectiveValue), bound),
            CpSolverStatus.Unknown => new(default, lessThan, bound),
            _ => throw new InvalidOperationException($"The model was refused: {response.Status} {response.SolutionInfo}"),
        };
    }

    private static ConstraintProto Any(IEnumerable<int> of)
    {
        var literals = new BoolArgumentProto();
        literals.Literals.AddRange(of);
        return new() { BoolOr = literals };
    }

    private static ConstraintProto Sum(int[] of, int times, long atMost)
    {
        var sum = new LinearConstraintProto();
        sum.Vars.AddRange(of);
        if (times != 0)
        {
            sum.Coeffs.AddRange(Enumerable.Repeat((long)times, of.Length));
        }

        sum.Domain.Add(0);
        sum.Domain.Add(atMost);
        return new() { Linear = sum };
    }
}

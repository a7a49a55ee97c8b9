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
    // Rows added at a time, as for whole covers.
    private const int RowsOfRound = 64;

    // What the solver may spend on one model, in its own units, which are the same on every machine: about seconds.
    private const double MostSolverUnits = 1;

    /// <summary>Finds them.</summary>
    /// <param name="question">The model. Points beyond those that have a weight must be supported whatever it costs.</param>
    /// <param name="weights">What each point counts, 1 or more.</param>
    /// <param name="first">Points whose rows it begins with.</param>
    /// <param name="lessThan">Only choices that leave less than this matter.</param>
    /// <param name="cancellation">Stops the solver: the bound is then what was known.</param>
    public static PartialAnswer Of(
        CoverQuestion question, ImmutableArray<int> weights, ImmutableArray<int> first, long lessThan, CancellationToken cancellation)
    {
        var rows = new List<(int[] Seats, long Weight)>();
        var hard = new List<int[]>();
        var same = new Dictionary<string, int>(StringComparer.Ordinal);
        var isIn = new bool[weights.Length];
        long base0 = 0, lower = 0;
        foreach (var p in Enumerable.Range(weights.Length, question.PointCount - weights.Length))
        {
            hard.Add(question.SupportersOf(p));
        }

        if (hard.Exists(h => h.Length == 0))
        {
            return new(default, lessThan, lessThan);
        }

        foreach (var p in first)
        {
            Add(p);
        }

        while (true)
        {
            if (base0 >= lessThan)
            {
                return new(default, base0, Math.Max(lower, base0));
            }

            var (filled, bound) = Solve(question, rows, hard, base0, lessThan, cancellation);
            lower = Math.Max(lower, bound);
            if (filled.IsDefault)
            {
                return new(default, lessThan, Math.Min(lower, lessThan));
            }

            // Points left without support that have no row yet: spread over the part, since neighbours mostly ask for the same.
            int[] missing = [.. Enumerable.Range(0, weights.Length).Where(p => !isIn[p] && !filled.Any(s => question.Supports(s, p)))];
            if (missing.Length == 0 || cancellation.IsCancellationRequested)
            {
                var left = Enumerable.Range(0, weights.Length).Where(p => !filled.Any(s => question.Supports(s, p))).Sum(p => (long)weights[p]);
                return left < lessThan ? new(filled, left, Math.Min(lower, left)) : new(default, left, Math.Min(lower, lessThan));
            }

            var step = Math.Max(1, missing.Length / RowsOfRound);
            foreach (var p in missing.Where((_, i) => i % step == 0))
            {
                Add(p);
            }
        }

        void Add(int p)
        {
            if (isIn[p])
            {
                return;
            }

            isIn[p] = true;
            var seats = question.SupportersOf(p);
            if (seats.Length == 0)
            {
                base0 += weights[p];
            }
            else if (same.TryAdd(string.Join(' ', seats), rows.Count))
            {
                rows.Add((seats, weights[p]));
            }
            else
            {
                var row = same[string.Join(' ', seats)];
                rows[row] = (seats, rows[row].Weight + weights[p]);
            }
        }
    }

    private static (ImmutableArray<int> Filled, long Bound) Solve(
        CoverQuestion question, List<(int[] Seats, long Weight)> rows, List<int[]> hard, long base0, long lessThan, CancellationToken cancellation)
    {
        var model = new CpModel();
        for (var seat = 0; seat < question.SeatCount + rows.Count; seat++)
        {
            model.NewBoolVar("");
        }

        var constraints = model.Model.Constraints;
        for (var r = 0; r < rows.Count; r++)
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

        int[] left = [.. Enumerable.Range(question.SeatCount, rows.Count)];
        var below = Sum(left, 0, Math.Max(0, lessThan - 1 - base0));
        below.Linear.Coeffs.AddRange(rows.Select(r => r.Weight));
        constraints.Add(below);
        var objective = new CpObjectiveProto { Offset = base0 };
        objective.Vars.AddRange(left);
        objective.Coeffs.AddRange(rows.Select(r => r.Weight));
        model.Model.Objective = objective;

        using var solver = new SolveWrapper();
        solver.SetStringParameters(string.Create(CultureInfo.InvariantCulture, $"{CoverModel.Settings},max_deterministic_time:{MostSolverUnits}"));
        using var stop = cancellation.Register(solver.StopSearch);
        if (cancellation.IsCancellationRequested)
        {
            return (default, base0);
        }

        var response = solver.Solve(model.Model);
        var bound = (long)Math.Ceiling(response.BestObjectiveBound - 1e-6);
        return response.Status switch
        {
            CpSolverStatus.Infeasible => (default, lessThan),
            CpSolverStatus.Optimal or CpSolverStatus.Feasible =>
                ([.. Enumerable.Range(0, question.SeatCount).Where(s => response.Solution[s] == 1)], Math.Max(base0, bound)),
            CpSolverStatus.Unknown => (default, Math.Clamp(bound, base0, lessThan)),
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

using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using PodLayout.Choice;

namespace PodLayout.Benchmarks;

/// <summary>The layout model of one placement under several solvers and settings, in one run.</summary>
internal static class SettingsTable
{
    public static void Write(string path, double seconds)
    {
        var limit = seconds.ToString("0.###", CultureInfo.InvariantCulture);
        var table = new TableFile(
            "Settings of the layout model",
            $"The layout model of one placement: fewest pods, every point supported, one pod to each spot, stock. Each solver gets the same rows (points that follow from others left out) and at most {limit} s. The ratio is to our settings of CP-SAT on the same rows.");
        foreach (var overhang in new[] { 60.0, 90 })
        {
            Write(table, OnePlacement.At(Cases.Oval(overhang), Cases.OvalAt), seconds);
        }

        // Most places of the U part have no layout at all: it is measured where the search lays it.
        var u = Cases.UPart();
        var laid = Planning.Plan(u, new(Environment.ProcessorCount, null), null, CancellationToken.None).Layout!.Placement;
        Write(table, OnePlacement.At(u, laid.ZeroOnBoard), seconds);
        table.Save(path);
    }

    private static void Write(TableFile table, OnePlacement placement, double seconds)
    {
        var whole = placement.Whole();
        ImmutableArray<int> needed = CoverReduction.NeededPoints(whole.Supporters, whole.SeatCount);
        var problem = whole with { Supporters = [.. needed.Select(p => whole.Supporters[p])] };
        table.Heading(placement.Job.Name);
        table.Words(string.Create(
            CultureInfo.InvariantCulture,
            $"{problem.SeatCount} seats, {whole.Supporters.Length} points of which {needed.Length} are left, {problem.Rooms.Length} rows of room.\n"));
        table.Head("settings", "pods", "proven at least", "proven", "ms", "ratio");
        var cut = seconds.ToString(CultureInfo.InvariantCulture);

        // What is loaded and compiled at first use is no setting's fault.
        CoverModel.Solve(problem, problem.SeatCount, default, CancellationToken.None);
        var (ours, oursMs) = Timed(() => CoverModel.Solve(problem, problem.SeatCount, default, CancellationToken.None));
        Row("CP-SAT, ours: " + CoverModel.Settings.Replace(",", ", ", StringComparison.Ordinal), ours, oursMs);
        FewestPods.Of(placement.Question, placement.Ground.FirstPoints, problem.SeatCount, CancellationToken.None);
        var (lazy, lazyMs) = Timed(() =>
            FewestPods.Of(placement.Question, placement.Ground.FirstPoints, problem.SeatCount, CancellationToken.None));
        Row("as the search does it: relaxation first, rows made as needed (their making counted)", lazy, lazyMs);
        foreach (var (name, parameters) in new[]
        {
            ("CP-SAT, defaults, 2 workers", "num_workers:2"),
            ("CP-SAT, defaults, 1 worker", "num_workers:1"),
            ("CP-SAT, linearization_level 2, 2 workers", "num_workers:2,linearization_level:2"),
        })
        {
            var (answer, ms) = Timed(() => CoverModel.Solve(
                problem, problem.SeatCount, default, CancellationToken.None, $"{parameters},max_time_in_seconds:{cut}"));
            Row(name, answer, ms);
        }

        foreach (var name in LinearCover.Solvers)
        {
            if (LinearCover.Solve(name, problem, seconds) is var (answer, ms))
            {
                Row(name + " (integer programme)", answer, ms);
            }
            else
            {
                table.Row(name + ": not in this build of OR-Tools", "-", "-", "-", "-", "-");
            }
        }

        void Row(string name, CoverAnswer answer, double ms) => table.Row(
            name, TableFile.Count(answer.HasChoice ? answer.Filled.Length : null), TableFile.Count(answer.LowerBound),
            answer.IsProven ? "yes" : "no", TableFile.Ms(ms), (ms / oursMs).ToString("0.0", CultureInfo.InvariantCulture));
    }

    private static (CoverAnswer Answer, double Ms) Timed(Func<CoverAnswer> work)
    {
        var clock = Stopwatch.StartNew();
        var answer = work();
        return (answer, clock.Elapsed.TotalMilliseconds);
    }
}

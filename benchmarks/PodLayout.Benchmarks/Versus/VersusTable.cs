using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using PodLayout.Benchmarks.Corpus;
using PodLayout.Benchmarks.Quality;
using PodLayout.Choice;
using PodLayout.Jobs;

namespace PodLayout.Benchmarks.Versus;

/// <summary>Ours beside everything else that could do it, on the same instances in one run.</summary>
internal static class VersusTable
{
    // Steps of the grids of sampled offsets, mm.
    private static readonly double[] Steps = [10, 5, 1];

    // Step of the offsets in the model that has the offset as a variable, mm.
    private const double VariableStepMm = 5;

    // At one placement ours takes tenths of a millisecond, of which a single run measures the caches: what is over sooner than this, ms,
    // is run five times, whoever's it is.
    private const double ShortMs = 100;
    private const int ShortRuns = 5;

    /// <summary>Writes the table; false when anything else had fewer pods.</summary>
    /// <param name="path">The file.</param>
    /// <param name="instances">Which instances.</param>
    /// <param name="seconds">Limit for each answer of a solver, s.</param>
    public static bool Write(string path, ImmutableArray<Instance> instances, double seconds)
    {
        var limit = seconds.ToString("0.###", CultureInfo.InvariantCulture);
        var table = new TableFile(
            "Side by side",
            $"Support only, holding left aside: the others know nothing of it. Upper half: one placement, where our search laid the part; the same rows for all, those that follow from others left out. Lower half: over all offsets; ours by the search, the others by trying every offset of a grid or by one model in which the offset is a variable on a grid of {VariableStepMm:0} mm. At most {limit} s for each; what takes less than {ShortMs:0} ms at one placement is run {ShortRuns} times, ours and theirs, and the middle time counts. Each cell is pods, then the time as a multiple of ours for the same question; > where it was cut; + where it did not prove its number.");
        // What is loaded and compiled at first use is nobody's fault.
        One(new TableFile("", ""), Instances.All[0].Name, Instances.WithoutCutter(Cases.UPart()), 1, [5], []);
        Dictionary<string, List<Rival>> rivals = [];
        table.Heading("Each instance");
        table.Head([
            "instance", "our pods", "over all offsets, ms", "one placement, ms", "CP-SAT defaults", .. LinearCover.Solvers, "greedy",
            .. Steps.Select(s => s.ToString("0", CultureInfo.InvariantCulture) + " mm grid"), "offset as a variable"]);
        foreach (var instance in instances)
        {
            One(table, instance.Name, Instances.WithoutCutter(instance.Make()), seconds, Steps, rivals);
        }

        table.Heading("In sum");
        table.Head("rival", "instances", "finished", "fewer pods than ours", "as many", "more", "none found", "median ratio where it finished", "10th", "90th percentile");
        foreach (var (name, of) in rivals)
        {
            var ratios = of.Where(r => r.IsFinished).Select(r => r.Ratio).Order().ToArray();
            table.Row(
                name, TableFile.Count(of.Count), TableFile.Count(ratios.Length), TableFile.Count(of.Count(r => r.Pods < r.Ours)), TableFile.Count(of.Count(r => r.Pods == r.Ours)),
                TableFile.Count(of.Count(r => r.Pods > r.Ours)), TableFile.Count(of.Count(r => r.Pods is null)),
                Ratio(QualityTable.Median(ratios)), Ratio(ratios.Length == 0 ? null : ratios[ratios.Length / 10]), Ratio(ratios.Length == 0 ? null : ratios[ratios.Length * 9 / 10]));
        }

        var worse = rivals.Values.Sum(of => of.Count(r => r.Pods < (r.Ours ?? int.MaxValue)));
        table.Words(worse == 0 ? "\nNothing had fewer pods than ours." : $"\nOURS HAD MORE PODS {TableFile.Count(worse)} TIMES.");
        table.Save(path);
        return worse == 0;
    }

    private static void One(
        TableFile table, string name, Job job, double seconds, double[] steps, Dictionary<string, List<Rival>> rivals)
    {
        var ours = SearchRun.Of(job, null);
        List<string> cells = [name, TableFile.Count(ours.Pods) + (ours.IsProven ? "" : "+"), TableFile.Ms(ours.ProofMs)];
        if (ours.Best is { } found)
        {
            AtOnePlacement(OnePlacement.Of(job, found), found.Seats.Length);
        }
        else
        {
            cells.AddRange(Enumerable.Repeat("-", 3 + LinearCover.Solvers.Length));
        }

        foreach (var step in steps)
        {
            var grid = OffsetGrid.Try(job, step, TimeSpan.FromSeconds(seconds));
            Add($"offsets every {step.ToString("0", CultureInfo.InvariantCulture)} mm", grid.Pods, !grid.IsCut, true, grid.Ms, ours.ProofMs);
        }

        var variable = OffsetAsVariable.Solve(job, VariableStepMm, seconds);
        AddAnswer("offset as a variable", variable?.Answer, variable?.Ms, ours.ProofMs);
        table.Row([.. cells]);

        void AtOnePlacement(OnePlacement placement, int pods)
        {
            var whole = placement.Whole();
            var needed = CoverReduction.NeededPoints(whole.Supporters, whole.SeatCount);
            var problem = whole with { Supporters = [.. needed.Select(p => whole.Supporters[p])] };
            var (mine, mineMs) = MiddleOf(() => Timed(() => FewestPods.Of(problem, problem.SeatCount, CancellationToken.None)));
            if (mine.Filled.Length != pods)
            {
                throw new InvalidOperationException($"{name}: {pods} pods by the search, {mine.Filled.Length} at the same place.");
            }

            cells.Add(TableFile.Ms(mineMs));
            var cut = seconds.ToString(CultureInfo.InvariantCulture);
            var (defaults, defaultsMs) = MiddleOf(() => Timed(() => CoverModel.Solve(
                problem, problem.SeatCount, default, CancellationToken.None, $"num_workers:2,max_time_in_seconds:{cut}")));
            AddAnswer("CP-SAT defaults, one placement", defaults, defaultsMs, mineMs);
            foreach (var solver in LinearCover.Solvers)
            {
                // A build of OR-Tools that lacks a solver lacks it every time.
                var (linear, linearMs) = MiddleOf(() => LinearCover.Solve(solver, problem, seconds) is { } of ? (of.Answer, of.Ms) : (null, 0));
                AddAnswer(solver + ", one placement", linear, linearMs, mineMs);
            }

            var (greedy, greedyMs) = MiddleOf(() => Timed(() => GreedyCover.Pods(problem)));
            Add("greedy, one placement", greedy, true, false, greedyMs, mineMs);
        }

        void Add(string rival, int? pods, bool isFinished, bool isExact, double ms, double oursMs)
        {
            if (!rivals.TryGetValue(rival, out var of))
            {
                rivals.Add(rival, of = []);
            }

            of.Add(new(ours.Pods, pods, isFinished, ms / oursMs));
            cells.Add($"{TableFile.Count(pods)}{(isFinished || !isExact ? "" : "+")}, {(isFinished ? "" : "> ")}{Ratio(ms / oursMs)}");
        }

        void AddAnswer(string rival, CoverAnswer? answer, double? ms, double oursMs)
        {
            if (answer is null)
            {
                cells.Add("not to be had");
                return;
            }

            Add(rival, answer.HasChoice ? answer.Filled.Length : null, answer.IsProven, true, ms!.Value, oursMs);
        }
    }

    private static (T Answer, double Ms) Timed<T>(Func<T> solve)
    {
        var clock = Stopwatch.StartNew();
        var answer = solve();
        return (answer, clock.Elapsed.TotalMilliseconds);
    }

    private static (T Answer, double Ms) MiddleOf<T>(Func<(T Answer, double Ms)> run)
    {
        List<(T Answer, double Ms)> runs = [run()];
        while (runs[0].Ms < ShortMs && runs.Count < ShortRuns)
        {
            runs.Add(run());
        }

        return runs.OrderBy(r => r.Ms).ElementAt(runs.Count / 2);
    }

    private static string Ratio(double? ratio) => ratio switch
    {
        null => "-",
        >= 10 => ratio.Value.ToString("0", CultureInfo.InvariantCulture) + " x",
        >= 1 => ratio.Value.ToString("0.0", CultureInfo.InvariantCulture) + " x",
        _ => ratio.Value.ToString("0.00", CultureInfo.InvariantCulture) + " x",
    };

    /// <summary>What another way came to on one instance.</summary>
    private sealed record Rival(int? Ours, int? Pods, bool IsFinished, double Ratio);
}

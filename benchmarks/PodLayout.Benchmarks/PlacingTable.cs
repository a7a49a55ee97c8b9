using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Placing;
using PodLayout.Seats;
using PodLayout.Support;

namespace PodLayout.Benchmarks;

/// <summary>The search over all offsets against trying offsets on a grid, in one run.</summary>
internal static class PlacingTable
{
    // A grid search that takes longer is cut; the row says so, and it is not counted as having done worse.
    private static readonly TimeSpan Longest = TimeSpan.FromMinutes(10);

    /// <summary>Writes the table; false when a grid found fewer pods than the search over all offsets.</summary>
    public static bool Write(string path, bool quick)
    {
        double[] steps = quick ? [5] : [5, 1];
        IEnumerable<Job> jobs = [Cases.Oval(60), Cases.Oval(90), Cases.UPart(), .. Cases.Samples(), .. Cases.Wavy(quick ? 2 : 12)];
        var table = new TableFile(
            "Where the part lies",
            "The fewest pods over every offset of the part, as drawn, by the search (branch and bound, with proof) and by trying the offsets of a square grid within one pitch. Every whole-pitch shift that makes a difference is tried at each offset, and a grid only asks whether one pod fewer will do, as the search does. Both use all processors.");
        table.Heading("Each part");
        table.Head(
            ["part", "pods", "proven", "nodes", "ms to first", "ms to best", "ms to proof",
            .. steps.SelectMany(s => new[] { $"pods, {Said(s)} mm grid", "offsets", "ms" })]);

        // What is loaded and compiled at first use is no part's fault.
        Search(Cases.UPart());
        var better = new int[steps.Length];
        var (count, worse) = (0, 0);
        foreach (var job in jobs)
        {
            var ours = Search(job);
            List<string> cells =
            [
                job.Name, TableFile.Count(ours.Pods), ours.IsProven ? "yes" : "no", TableFile.Count(ours.Nodes),
                Ms(ours.FirstMs), Ms(ours.BestMs), TableFile.Ms(ours.ProofMs),
            ];
            for (var s = 0; s < steps.Length; s++)
            {
                var grid = Grid(job, steps[s]);
                cells.AddRange([TableFile.Count(grid.Pods) + (grid.IsCut ? " (cut)" : ""), TableFile.Count(grid.Offsets), TableFile.Ms(grid.Ms)]);
                worse += (ours.Pods ?? int.MaxValue) > (grid.Pods ?? int.MaxValue) ? 1 : 0;
                better[s] += !grid.IsCut && (ours.Pods ?? int.MaxValue) < (grid.Pods ?? int.MaxValue) ? 1 : 0;
            }

            table.Row([.. cells]);
            count++;
        }

        table.Heading("In sum");
        table.Words((worse == 0 ? "Ours never worse" : $"OURS WORSE {TableFile.Count(worse)} TIMES") + "; strictly better than "
            + string.Join(", than ", steps.Select((s, i) => $"the {Said(s)} mm grid in {TableFile.Count(better[i])} of {TableFile.Count(count)}")) + ".");
        table.Save(path);
        return worse == 0;
    }

    private static string Said(double step) => step.ToString("0.##", CultureInfo.InvariantCulture);

    private static string Ms(double? ms) => ms is { } known ? TableFile.Ms(known) : "-";

    private static (int? Pods, bool IsProven, int Nodes, double? FirstMs, double? BestMs, double ProofMs) Search(Job job)
    {
        var clock = Stopwatch.StartNew();
        var watch = new Watch(clock);
        var reach = ReachMap.Of(job.Part, job.Support);
        var (pods, bound, nodes, cut) = ((int?)null, int.MaxValue, 0, false);
        FoundLayout? best = null;
        foreach (var height in Heights(job))
        {
            var search = new PlacingSearch(
                job, null, new(Environment.ProcessorCount, null), Tolerances.PlacingMm, best, watch, CancellationToken.None);
            var end = search.Run(reach, PodPose.Of(job.Shop, height), [AngleOf(job)]);
            (best, bound, nodes, cut) = (end.Best, Math.Min(bound, end.FewestPossible), nodes + end.Nodes, cut || end.IsCut);
            pods = best?.Seats.Length;
        }

        var proof = clock.Elapsed.TotalMilliseconds;
        // A layout found before the first report, with nothing left to report on, was found by then at the latest.
        double? first = pods is null ? null : watch.FirstMs ?? proof, last = pods is null ? null : watch.BestMs ?? proof;
        return (pods, !cut && (pods is null || bound >= pods), nodes, first, last, proof);
    }

    private static (int? Pods, int Offsets, double Ms, bool IsCut) Grid(Job job, double stepMm)
    {
        var clock = Stopwatch.StartNew();
        var reach = ReachMap.Of(job.Part, job.Support);
        var pitch = job.Shop.Board.PitchMm;
        var side = (int)Math.Round(pitch / stepMm);
        var most = job.Shop.Pods.Sum(p => Math.Min(p.Stock, 10_000)) + 1;
        var (pods, isCut) = (most, false);
        foreach (var height in Heights(job))
        {
            var poses = PodPose.Of(job.Shop, height);
            var frame = new PlacingFrame(job, reach, poses, AngleOf(job), 0);
            ImmutableArray<BoardSeats> board = [.. poses.Select(pose => BoardSeats.Of(pose, job.Shop.Board))];
            var ground = SearchGround.Over(frame, board, job, OffsetBox.WholePitch(pitch));
            var gate = new Lock();
            var options = new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount };
            Parallel.For(0, side * side, options, k =>
            {
                if (clock.Elapsed > Longest)
                {
                    isCut = true;
                    return;
                }

                var offset = new Point2(k % side * stepMm, k / side * stepMm);
                foreach (var shift in ground.Classes)
                {
                    if (NodeExamination.AtOffset(job, ground, shift, offset, Volatile.Read(ref pods) - 1, CancellationToken.None) is { } found)
                    {
                        lock (gate)
                        {
                            pods = Math.Min(pods, found.Seats.Length);
                        }
                    }
                }
            });
        }

        return (pods == most ? null : pods, side * side, clock.Elapsed.TotalMilliseconds, isCut);
    }

    private static IEnumerable<double> Heights(Job job) =>
        job.Shop.Pods.Where(p => p.Stock > 0).Select(p => p.HeightMm).Distinct().Order();

    private static double AngleOf(Job job) => job.Placement is PlacementWish.Search search ? search.AnglesDeg[0] : 0;

    /// <summary>When the search first said it had a layout, and when it last said it had a better one.</summary>
    private sealed class Watch(Stopwatch clock) : IProgress<Progress>
    {
        private int _best = int.MaxValue;

        public double? FirstMs { get; private set; }

        public double? BestMs { get; private set; }

        public void Report(Progress value)
        {
            if (value.PodsOfBest is { } pods && pods < _best)
            {
                _best = pods;
                BestMs = clock.Elapsed.TotalMilliseconds;
                FirstMs ??= BestMs;
            }
        }
    }
}

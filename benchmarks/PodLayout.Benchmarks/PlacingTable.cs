using System.Globalization;
using PodLayout.Jobs;

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
        SearchRun.Of(Cases.UPart(), null);
        var better = new int[steps.Length];
        var (count, worse) = (0, 0);
        foreach (var job in jobs)
        {
            var ours = SearchRun.Of(job, null);
            List<string> cells =
            [
                job.Name, TableFile.Count(ours.Pods), ours.IsProven ? "yes" : "no", TableFile.Count(ours.Nodes),
                Ms(ours.FirstMs), Ms(ours.BestMs), TableFile.Ms(ours.ProofMs),
            ];
            for (var s = 0; s < steps.Length; s++)
            {
                var grid = OffsetGrid.Try(job, steps[s], Longest);
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
}

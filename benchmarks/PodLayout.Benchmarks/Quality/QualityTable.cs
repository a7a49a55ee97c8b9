using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using PodLayout.Benchmarks.Corpus;

namespace PodLayout.Benchmarks.Quality;

/// <summary>The table of the corpus: every instance, in Markdown and JSON.</summary>
internal static class QualityTable
{
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web) { WriteIndented = true };

    /// <summary>Runs the instances and writes <c>quality.md</c> and <c>quality.json</c>.</summary>
    /// <param name="folder">Where to.</param>
    /// <param name="instances">Which.</param>
    /// <param name="seconds">Time limit for each, s.</param>
    public static void Write(string folder, ImmutableArray<Instance> instances, double seconds)
    {
        var limit = seconds.ToString("0.###", CultureInfo.InvariantCulture);
        var table = new TableFile(
            "Layout quality over the corpus",
            $"Every instance in a process of its own, at most {limit} s for each, the part as drawn, over every offset. Times run from the job read, code compiled on the way counted. Processor is that of all threads up to the result, which other work on the machine changes less than the wall times; started is what the process took before (runtime, job). Memory is the largest working set of the process. Rows and pairs are support rows made and seat-point pairs asked for, the same on every machine. The factor is the holding factor, where there is a cutter.");
        table.Heading("Each instance");
        table.Head(
            "instance", "m2", "seats", "points", "pods", "proven at least", "proven", "ms to first", "to best", "to proof", "whole",
            "processor ms", "started ms", "nodes", "rows", "pairs", "MB", "factor");
        var all = ImmutableArray.CreateBuilder<InstanceFigures>();
        foreach (var instance in instances)
        {
            var f = InstanceRun.InChild(instance.Name, seconds);
            all.Add(f);
            table.Row(
                f.Name, f.AreaM2.ToString("0.000", CultureInfo.InvariantCulture), TableFile.Count(f.Seats), TableFile.Count(f.Points),
                f.Pods is null && f.IsProven ? "none possible" : TableFile.Count(f.Pods), f.Pods is null && f.IsProven ? "-" : TableFile.Count(f.Bound),
                f.IsProven ? "yes" : "no", Ms(f.FirstMs), Ms(f.BestMs), f.IsProven ? Ms(f.ProofMs) : "-", Ms(f.WholeMs), Ms(f.ProcessorMs), Ms(f.StartedMs),
                TableFile.Count(f.Nodes), f.Rows.ToString(CultureInfo.InvariantCulture), f.Pairs.ToString(CultureInfo.InvariantCulture),
                f.PeakMB.ToString("0", CultureInfo.InvariantCulture), f.Factor?.ToString("0.00", CultureInfo.InvariantCulture) ?? "-");
        }

        Sum(table, all.ToImmutable(), instances, limit);
        Directory.CreateDirectory(folder);
        File.WriteAllText(Path.Combine(folder, "quality.json"), JsonSerializer.Serialize(all, Json) + "\n");
        table.Save(Path.Combine(folder, "quality.md"));
    }

    private static void Sum(TableFile table, ImmutableArray<InstanceFigures> all, ImmutableArray<Instance> instances, string limit)
    {
        table.Heading("In sum");
        table.Head("family", "instances", "proven", "share", "no layout possible", "median ms to first", "median ms to proof", "median processor ms", "worst processor ms", "most MB");
        foreach (var group in all.Zip(instances).GroupBy(p => p.Second.Family).Select(g => (g.Key, Of: g.Select(p => p.First).ToArray())).Append(("all", [.. all])))
        {
            var proven = group.Of.Count(f => f.IsProven);
            table.Row(
                group.Key, TableFile.Count(group.Of.Length), TableFile.Count(proven), (100.0 * proven / group.Of.Length).ToString("0.0", CultureInfo.InvariantCulture) + " %",
                TableFile.Count(group.Of.Count(f => f.IsProven && f.Pods is null)), Ms(Median(group.Of.Where(f => f.FirstMs is not null).Select(f => f.FirstMs!.Value))),
                Ms(Median(group.Of.Where(f => f.IsProven).Select(f => f.ProofMs))), Ms(Median(group.Of.Select(f => f.ProcessorMs))),
                Ms(group.Of.Max(f => f.ProcessorMs)), group.Of.Max(f => f.PeakMB).ToString("0", CultureInfo.InvariantCulture));
        }

        var open = all.Where(f => !f.IsProven).ToArray();
        table.Words(open.Length == 0 ? $"\nAll were proven within {limit} s." : $"\nNot proven within {limit} s: "
            + string.Join("; ", open.Select(f => $"{f.Name} ({TableFile.Count(f.Pods)} pods, at least {TableFile.Count(f.Bound)})")) + ".");
    }

    /// <summary>The middle one; null of none.</summary>
    public static double? Median(IEnumerable<double> values)
    {
        var sorted = values.Order().ToArray();
        return sorted.Length == 0 ? null : (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }

    private static string Ms(double? ms) => ms is { } known ? TableFile.Ms(known) : "-";
}

using System.Collections.Immutable;
using System.Diagnostics;
using System.Globalization;
using PodLayout.Benchmarks.Corpus;
using PodLayout.Handover.Picture;
using PodLayout.Jobs;

namespace PodLayout.Benchmarks.Growth;

/// <summary>How pods, seats and time grow with the part, with the pitch and with the number of edge points.</summary>
internal static class GrowthTable
{
    private static readonly double[] AreasM2 = [0.05, 0.1, 0.2, 0.4, 0.8, 1.5, 3];

    // Pitches of which a pod of 150 mm is a whole number.
    private static readonly double[] PitchesMm = [50, 37.5, 30, 25, 18.75, 15, 12.5, 10];

    private static readonly double[] EdgeStepsMm = [40, 20, 10, 5, 2.5, 1.25];

    /// <summary>Writes <c>growth.md</c> and <c>growth.svg</c>.</summary>
    public static void Write(string folder, double seconds)
    {
        var limit = seconds.ToString("0.###", CultureInfo.InvariantCulture);
        var table = new TableFile(
            "How it grows",
            $"Support only, every offset, a super-ellipse with sides as 10 to 6; at most {limit} s for a row, and what was not proven by then is left out of the fit. Exponents are those of the straight line through the logarithms (least squares). Processor is the time of all threads, after a first run that loads and compiles.");
        SearchRun.Of(Instances.WithoutCutter(Job(0.1, Board(30), "")), null);
        ImmutableArray<GrowthSeries> series =
        [
            Series(table, "area of the part, m2", AreasM2, area => Job(area, SmallPods(), ""), seconds),
            Series(table, "pitch, mm", PitchesMm, pitch => Job(0.5, Board(pitch), ""), seconds),
            Series(table, "edge points (edge step 40 to 1.25 mm)", EdgeStepsMm, step => Job(
                0.5, Board(30), $", \"edgeStepMm\": {step.ToString(CultureInfo.InvariantCulture)}, \"interiorSpanMm\": null"), seconds) is var edges
                ? edges with { Points = [.. edges.Points.Select(p => p with { X = p.Points })] } : edges,
        ];
        table.Heading("Exponents");
        table.Head("against", "pods", "seats", "pairs", "processor time");
        foreach (var s in series)
        {
            table.Row(s.Against, Said(s.Exponent(p => p.Pods)), Said(s.Exponent(p => p.Seats)), Said(s.Exponent(p => p.Pairs)), Said(s.Exponent(p => p.ProcessorMs)));
        }

        Directory.CreateDirectory(folder);
        File.WriteAllText(Path.Combine(folder, "growth.svg"), SvgWriter.Write(GrowthPlot.Of(series)));
        table.Save(Path.Combine(folder, "growth.md"));
    }

    private static GrowthSeries Series(TableFile table, string against, double[] values, Func<double, Job> make, double seconds)
    {
        table.Heading(char.ToUpperInvariant(against[0]) + against[1..]);
        table.Head(against, "pods", "proven", "seats", "points", "nodes", "pairs", "wall ms", "processor ms");
        var points = ImmutableArray.CreateBuilder<GrowthPoint>();
        using var self = Process.GetCurrentProcess();
        foreach (var value in values)
        {
            var job = Instances.WithoutCutter(make(value));
            self.Refresh();
            var before = self.TotalProcessorTime;
            var watch = new Quality.SearchWatch(Stopwatch.StartNew());
            var result = Planning.Plan(job, new(Environment.ProcessorCount, TimeSpan.FromSeconds(seconds)), watch, CancellationToken.None);
            self.Refresh();
            var processor = (self.TotalProcessorTime - before).TotalMilliseconds;
            var isProven = result.Layout is { } layout ? layout.Proof.FewestPodsPossible >= layout.Pods.Length : !result.Interrupted;
            var point = new GrowthPoint(
                value, result.Layout?.Pods.Length, isProven, result.Work.Seats, result.Work.Points, result.Work.Placements, result.Work.Pairs, watch.LastMs ?? 0, processor);
            points.Add(point);
            table.Row(
                value.ToString("0.##", CultureInfo.InvariantCulture), TableFile.Count(point.Pods), point.IsProven ? "yes" : "no", TableFile.Count(point.Seats),
                TableFile.Count(point.Points), TableFile.Count(point.Nodes), point.Pairs.ToString(CultureInfo.InvariantCulture), TableFile.Ms(point.WallMs), TableFile.Ms(processor));
        }

        return new(against, points.ToImmutable());
    }

    private static Job Job(double areaM2, Shops.Shop shop, string members) => Instances.JobOf(
        "growth", Families.OfArea(Families.All[0].Make(0.5), areaM2), shop, "\"overhangMm\": 75" + members);

    // Pods small enough for the smallest part.
    private static Shops.Shop SmallPods() => CorpusShops.Make("growth", 30, 60, 3600, 2400, [(120, 120, 200), (120, 60, 200), (60, 60, 200)]);

    private static Shops.Shop Board(double pitchMm) => CorpusShops.Make("growth", pitchMm, 150, 3600, 2400, [(150, 150, 200)]);

    private static string Said(double? exponent) => exponent?.ToString("0.00", CultureInfo.InvariantCulture) ?? "-";
}

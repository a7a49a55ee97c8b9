using System.Diagnostics;
using System.Globalization;
using PodLayout.Geometry;
using PodLayout.Holding;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Parts;

namespace PodLayout.Benchmarks;

/// <summary>What holding costs: the report of a layout, and the search for the fewest pods that support and hold.</summary>
internal static class HoldingTable
{
    private const int PathPoints = 500;

    public static void Write(string path)
    {
        var table = new TableFile(
            "Holding: the report and the search",
            $"Each sample with {PathPoints} points of a cutter's path along its outline, eight forces at each (a tooth's peak turned by up to 90 degrees, lifting and pressing by 0.3 of it). Forces that matter are those left when places where one and the same force acts are thinned to the corners of their hull. The report is the factor over all of them, the factor with each seal lost by itself and the share of each pod. Second runs, 2 threads.");
        table.Head("part", "peak N", "pods to support", "pods to hold", "bound", "factor", "first", "forces that matter", "report ms", "search without s", "search with s", "ratio");
        foreach (var sample in Cases.Samples())
        {
            foreach (var newtons in sample.Name.EndsWith("crest-rail", StringComparison.Ordinal) ? new[] { 5.0, 10 } : [100.0, 400])
            {
                var job = sample with { Part = sample.Part with { Loads = Loads(sample.Part, newtons) } };
                var bare = sample with { Part = sample.Part with { Loads = CutterLoads.None } };
                Plan(bare);
                var (without, withoutS) = Plan(bare);
                Plan(job);
                var (with, withS) = Plan(job);
                var clock = Stopwatch.StartNew();
                var report = with.Layout is { } layout ? HeldLayout.Report(job, layout, 2) : null;
                var reportMs = clock.Elapsed.TotalMilliseconds;
                table.Row(
                    sample.Name, newtons.ToString("0", CultureInfo.InvariantCulture), TableFile.Count(without.Layout?.Pods.Length),
                    TableFile.Count(with.Layout?.Pods.Length), TableFile.Count(with.Layout?.Proof.FewestPodsPossible),
                    report is null ? "-" : FactorText.Of(report.Factor), report?.Weakest?.Mode.ToString().ToLowerInvariant() ?? "-",
                    TableFile.Count(HoldingGround.Of(job.Part, job.Shop, 2)!.Loads.Length), TableFile.Ms(reportMs), S(withoutS), S(withS), S(withS / withoutS));
            }
        }

        table.Save(path);
    }

    private static (PlanResult Result, double Seconds) Plan(Job job)
    {
        var clock = Stopwatch.StartNew();
        return (Planning.Plan(job, new(2, TimeSpan.FromSeconds(60)), null, CancellationToken.None), clock.Elapsed.TotalSeconds);
    }

    private static CutterLoads Loads(Part part, double newtons)
    {
        var ring = part.Shape.Outline;
        var step = ring.PerimeterMm / PathPoints;
        var points = new List<PathLoad>();
        double next = 0;
        for (var i = 0; i < ring.Points.Length; i++)
        {
            var a = ring.Points[i];
            var side = ring.Points[(i + 1) % ring.Points.Length] - a;
            var along = side * (1 / side.Length);
            var inward = new Point2(-along.Y, along.X);
            for (; next < side.Length; next += step)
            {
                var forces = from k in Enumerable.Range(0, 4)
                             from lift in new[] { -0.3, 0.3 }
                             let angle = k * Math.PI / 6
                             let push = along * (-newtons * Math.Cos(angle)) + inward * (newtons * Math.Sin(angle))
                             select new Force(push.X, push.Y, lift * newtons);
                points.Add(new(a + along * next, part.ThicknessMm / 2, [.. forces], 0));
            }

            next -= side.Length;
        }

        return new([.. points], [new("outline", "benchmark", newtons, newtons / 2)], []);
    }

    private static string S(double seconds) => seconds.ToString("0.00", CultureInfo.InvariantCulture);
}

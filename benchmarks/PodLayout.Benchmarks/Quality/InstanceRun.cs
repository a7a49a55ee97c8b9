using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using PodLayout.Benchmarks.Corpus;

namespace PodLayout.Benchmarks.Quality;

/// <summary>Runs an instance, in a process of its own: memory and first use are then its own too.</summary>
internal static class InstanceRun
{
    private static readonly JsonSerializerOptions Json = new(JsonSerializerDefaults.Web);

    /// <summary>Runs it in a child process.</summary>
    public static InstanceFigures InChild(string name, double seconds)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath!) { RedirectStandardOutput = true };
        foreach (var argument in (IEnumerable<string>)[.. Host(), "quality-one", name, seconds.ToString(CultureInfo.InvariantCulture)])
        {
            start.ArgumentList.Add(argument);
        }

        using var child = Process.Start(start)!;
        var text = child.StandardOutput.ReadToEnd();
        child.WaitForExit();
        return child.ExitCode == 0 ? JsonSerializer.Deserialize<InstanceFigures>(text, Json)!
            : throw new InvalidOperationException($"{name} ended with code {child.ExitCode}.");
    }

    /// <summary>Runs it in this process and prints its figures.</summary>
    public static void Here(string name, double seconds)
    {
        var job = Instances.Named(name).Make();
        using var self = Process.GetCurrentProcess();
        var started = self.TotalProcessorTime;
        var clock = Stopwatch.StartNew();
        var watch = new SearchWatch(clock);
        var result = Planning.Plan(job, new(Environment.ProcessorCount, TimeSpan.FromSeconds(seconds)), watch, CancellationToken.None);
        var whole = clock.Elapsed.TotalMilliseconds;
        self.Refresh();
        var (layout, work) = (result.Layout, result.Work);
        var isProven = layout is null ? !result.Interrupted : layout.Proof.FewestPodsPossible >= layout.Pods.Length && layout.Proof.LeastUnsupportedMm >= layout.Proof.UnsupportedMm;
        Console.WriteLine(JsonSerializer.Serialize(
            new InstanceFigures(
                name, Math.Round(job.Part.Shape.AreaMm2 / 1e6, 4), work.Seats, work.Points, layout?.Pods.Length,
                layout is null ? watch.Bound : layout.Proof.FewestPodsPossible, layout?.Proof.UnsupportedMm ?? 0, isProven, layout?.Proof.PlacingToleranceMm ?? 0,
                work.Placements, work.Rows, work.Pairs, layout is null ? null : Ms(watch.FirstMs ?? whole), layout is null ? null : Ms(watch.BestMs ?? whole),
                Ms(watch.LastMs ?? whole), Ms(whole), Ms((self.TotalProcessorTime - started).TotalMilliseconds), Ms(started.TotalMilliseconds),
                Math.Round(self.PeakWorkingSet64 / 1048576.0, 1), layout?.Holding is { } held ? Math.Round(held.Factor, 3) : null),
            Json));
    }

    private static double Ms(double ms) => Math.Round(ms, 1);

    // Started through the dotnet host, the program's own file comes first.
    private static IEnumerable<string> Host() =>
        Path.GetFileNameWithoutExtension(Environment.ProcessPath) == "dotnet" ? [Environment.GetCommandLineArgs()[0]] : [];
}

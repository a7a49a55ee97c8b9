using System.Diagnostics;
using PodLayout.Benchmarks.Quality;
using PodLayout.Jobs;
using PodLayout.Placing;
using PodLayout.Seats;
using PodLayout.Support;

namespace PodLayout.Benchmarks;

/// <summary>The search over all offsets by itself, without what makes the layout better to work with afterwards.</summary>
/// <param name="Best">The layout with the fewest pods; null when there is none.</param>
/// <param name="IsProven">Whether nothing better is left.</param>
/// <param name="Nodes">Boxes of offsets examined.</param>
/// <param name="FirstMs">To the first layout, ms.</param>
/// <param name="BestMs">To the last better one, ms.</param>
/// <param name="ProofMs">To the end, ms.</param>
internal sealed record SearchRun(FoundLayout? Best, bool IsProven, int Nodes, double? FirstMs, double? BestMs, double ProofMs)
{
    /// <summary>Its pods; null when there is no layout.</summary>
    public int? Pods => Best?.Seats.Length;

    /// <summary>Searches, at the first angle that is asked for.</summary>
    public static SearchRun Of(Job job, TimeSpan? limit)
    {
        using var stop = new CancellationTokenSource();
        if (limit is { } most)
        {
            stop.CancelAfter(most);
        }

        var clock = Stopwatch.StartNew();
        var watch = new SearchWatch(clock);
        var reach = ReachMap.Of(job.Part, job.Support);
        var (bound, nodes, cut) = (int.MaxValue, 0, false);
        FoundLayout? best = null;
        foreach (var height in Heights(job))
        {
            var search = new PlacingSearch(job, null, new(Environment.ProcessorCount, null), Tolerances.PlacingMm, best, watch, stop.Token);
            var end = search.Run(new(job, reach, PodPose.Of(job, height), null), [AngleOf(job)]);
            (best, bound, nodes, cut) = (end.Best, Math.Min(bound, end.FewestPossible), nodes + end.Nodes, cut || end.IsCut);
        }

        var proof = clock.Elapsed.TotalMilliseconds;
        var isProven = !cut && (best is null || bound >= best.Seats.Length);
        return best is null ? new(null, isProven, nodes, null, null, proof)
            : new(best, isProven, nodes, watch.FirstMs ?? proof, watch.BestMs ?? proof, proof);
    }

    /// <summary>Heights of the pods in stock.</summary>
    public static IEnumerable<double> Heights(Job job) =>
        job.Shop.Pods.Where(p => p.Stock > 0).Select(p => p.HeightMm).Distinct().Order();

    /// <summary>The first angle that is asked for.</summary>
    public static double AngleOf(Job job) => job.Placement is PlacementWish.Search search ? search.AnglesDeg[0] : 0;
}

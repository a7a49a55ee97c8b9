using System.Collections.Immutable;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Placing;
using PodLayout.Seats;
using PodLayout.Support;

namespace PodLayout;

/// <summary>The whole job, from what is asked to the layout.</summary>
public static class Planning
{
    /// <summary>Finds the layout with the fewest pods.</summary>
    /// <param name="job">What is asked.</param>
    /// <param name="effort">How long and on how many threads.</param>
    /// <param name="progress">Told of each better layout and bound; null for silence.</param>
    /// <param name="cancellation">Cuts the work short; the best layout found so far is returned.</param>
    public static PlanResult Plan(Job job, Effort effort, IProgress<Progress>? progress, CancellationToken cancellation)
    {
        using var limited = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        if (effort.TimeLimit is { } limit)
        {
            limited.CancelAfter(limit);
        }

        if (BoardFit.TooLarge(job) is { } tooLarge)
        {
            return new(job, null, [], [tooLarge], false, new(0, 0, 0));
        }

        return job.Part.Shape.Held.IsEmpty
            ? PlanAll(job, effort, progress, limited.Token)
            : OffcutPlanning.Plan(job, holding => PlanAll(holding, effort, progress, limited.Token));
    }

    // With every piece of the blank that the job holds. What no seat reaches at any placement is given up from the start; where the rest
    // cannot be had together either, what leaves least beyond its limits is looked for, and then the fewest pods for all others.
    private static PlanResult PlanAll(Job job, Effort effort, IProgress<Progress>? progress, CancellationToken cancellation)
    {
        var reach = ReachMap.Of(job.Part, job.Support);
        var heights = Heights(job, reach);
        var lengths = PointLengths.Of(reach.Points, job.Support);
        var left = job.Support.MustSupportAll ? LeftUnsupported.Nothing : new LeastUnsupported(job, heights, lengths, effort, cancellation).OutOfReach();
        var nothing = left.Points.Length == reach.Points.Length;
        var planning = new SupportPlanning(job, reach, heights, effort, progress, cancellation);
        if (planning.Plan(nothing ? LeftUnsupported.Nothing : left) is { } plan)
        {
            return plan;
        }

        if (job.Support.MustSupportAll || nothing || heights.IsEmpty)
        {
            return planning.Without();
        }

        // When time is up something is to be shown all the same, that a few tries come to.
        var least = cancellation.IsCancellationRequested ? null : new LeastUnsupported(job, heights, lengths, effort, cancellation).Run();
        if (least is null && cancellation.IsCancellationRequested)
        {
            least = new LeastUnsupported(job, heights, lengths, effort, CancellationToken.None) { IsBrief = true }.Run();
        }

        return least is null || least.Points.Length == reach.Points.Length || planning.Plan(least) is not { } partial
            ? planning.Without() : partial with { Interrupted = partial.Interrupted || cancellation.IsCancellationRequested };
    }

    // A part lies level on pods of one height only: each height has frames of its own.
    internal static ImmutableArray<Frames> Heights(Job job, ReachMap reach) =>
    [
        .. job.Shop.Pods.Where(p => p.Stock > 0).Select(p => p.HeightMm).Distinct().Order()
            .Select(height => new Frames(job, reach, PodPose.Of(job, height), null)),
    ];
}

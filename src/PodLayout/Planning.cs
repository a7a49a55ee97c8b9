using System.Collections.Immutable;
using PodLayout.Findings;
using PodLayout.Holding;
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

    // With every piece of the blank that the job holds.
    private static PlanResult PlanAll(Job job, Effort effort, IProgress<Progress>? progress, CancellationToken cancellation)
    {
        var reach = ReachMap.Of(job.Part, job.Support);
        var rules = job.Shop.Holding;
        var target = HoldingModel.Of(job, rules.TargetFactor);
        var (best, nodes) = SearchHeights(job, reach, target, effort, progress, cancellation);
        if (best?.Best is { } found)
        {
            return WithLayout(job, reach, target, found, best, nodes, effort, cancellation);
        }

        if (target is null || best is null)
        {
            return WithoutLayout(job, reach, best, nodes, effort, cancellation);
        }

        // What supports the part may hold it as well: a search for what holds is given up where it comes upon nothing for long. When the
        // work is cut short any layout is taken that is soon found.
        var isCut = best.IsCut;
        var (support, _) = SearchHeights(
            job, reach, null, effort, null, isCut ? CancellationToken.None : cancellation, isCut ? SearchCourse.ToFirst : null);
        if (support?.Best is not { } supporting)
        {
            return WithoutLayout(job, reach, support, nodes, effort, cancellation);
        }

        support = support with { IsCut = support.IsCut || isCut };
        foreach (var factor in new[] { rules.TargetFactor, rules.LeastFactor }.Distinct())
        {
            var holding = HoldingModel.Of(job, factor)!;
            if (holding.Bodies.Holds(supporting.Frame, supporting.Seats, supporting.Offset, supporting.Columns, supporting.Rows))
            {
                var held = supporting with { Frame = supporting.Frame.HeldBy(holding) };
                return Told(job, WithLayout(job, reach, holding, held, support, nodes, effort, cancellation));
            }

            if (!isCut && factor < rules.TargetFactor)
            {
                (best, nodes) = SearchHeights(job, reach, holding, effort, progress, cancellation);
                if (best?.Best is { } firm)
                {
                    return Told(job, WithLayout(job, reach, holding, firm, best, nodes, effort, cancellation));
                }
            }
        }

        return Told(job, WithLayout(job, reach, null, supporting, support, nodes, effort, cancellation));
    }

    // With what is to be said where a layout does not reach the target.
    private static PlanResult Told(Job job, PlanResult plan) => plan.Layout is not { Holding: { } held } layout ? plan
        : held.DoesNotHold ? plan with { Findings = [HoldingFindings.NotHeld(job, layout)] }
        : held.LeastOfAll < HeldBodies.Enough(job.Shop.Holding.TargetFactor)
            ? plan with { Findings = plan.Findings.Insert(0, HoldingFindings.BelowTarget(job, layout)) } : plan;

    // A part lies level on pods of one height only: each height is a search of its own, with the best so far to beat.
    private static (SearchEnd? Best, int Nodes) SearchHeights(
        Job job,
        ReachMap reach,
        HoldingModel? holding,
        Effort effort,
        IProgress<Progress>? progress,
        CancellationToken cancellation,
        SearchCourse? course = null)
    {
        SearchEnd? best = null;
        var nodes = 0;
        foreach (var height in job.Shop.Pods.Where(p => p.Stock > 0).Select(p => p.HeightMm).Distinct().Order())
        {
            var end = Search(job, reach, PodPose.Of(job, height), holding, best?.Best, effort, progress, course, cancellation);
            nodes += end.Nodes;
            best = best is null ? end : end with
            {
                FewestPossible = Math.Min(end.FewestPossible, best.FewestPossible),
                OpenToleranceMm = Math.Max(end.OpenToleranceMm, best.OpenToleranceMm),
                IsCut = end.IsCut || best.IsCut,
                Work = end.Work + best.Work,
                ShortBySprings = end.ShortBySprings + best.ShortBySprings,
            };
        }

        return (best, nodes);
    }

    private static SearchEnd Search(
        Job job,
        ReachMap reach,
        ImmutableArray<PodPose> poses,
        HoldingModel? holding,
        FoundLayout? toBeat,
        Effort effort,
        IProgress<Progress>? progress,
        SearchCourse? course,
        CancellationToken cancellation)
    {
        switch (job.Placement)
        {
            case PlacementWish.Given given:
                return GivenPlacement.Search(job, reach, poses, given, holding, toBeat, cancellation);
            case PlacementWish.Search search:
                return Over((placing, frames) => placing.Run(frames, search.AnglesDeg));
            case PlacementWish.SearchInterval interval:
                return Over((placing, frames) => placing.Run(frames, interval.FromDeg, interval.ToDeg));
            default:
                throw new ArgumentOutOfRangeException(nameof(job), job.Placement, "Unknown placement.");
        }

        SearchEnd Over(Func<PlacingSearch, Frames, SearchEnd> run)
        {
            var frames = new Frames(job, reach, poses, holding);
            return FirmSearch.Run(holding, toBeat, (aimed, best, wanted) =>
                run(new(job, aimed, effort, Tolerances.PlacingMm, best, progress, cancellation) { Course = course ?? wanted }, frames));
        }
    }

    private static PlanResult WithLayout(
        Job job, ReachMap reach, HoldingModel? holding, FoundLayout found, SearchEnd end, int nodes, Effort effort, CancellationToken cancellation)
    {
        ImmutableArray<BoardSeats> board = [.. found.Frame.Poses.Select(pose => BoardSeats.Of(pose, job.Shop.Board))];
        if (job.Standing is { } standing)
        {
            // Pods left standing come before overhang: what the search found is then not moved off them again.
            found = FewestMoves.Of(job, standing, board, found, new Frames(job, reach, found.Frame.Poses, holding), cancellation);
        }

        var mayMove = job.Placement is not PlacementWish.Given;
        var refined = job.Standing is null
            ? Refinement.Improve(job, board, found, mayMove, cancellation) : found;
        var proof = ProofWords.Of(job, refined.Seats.Length, end, holding?.Ground.Factor, isRefined: job.Standing is null && !cancellation.IsCancellationRequested);
        var layout = LayoutAssembly.Of(job, reach, refined, proof);
        if (HeldLayout.Report(job, layout, effort.Threads) is { } held)
        {
            layout = layout with { Holding = held with { OneMore = More(job, holding, board, refined) } };
        }

        ImmutableArray<Finding> findings = [];
        if (holding is not null && layout.Holding is { WorstLoss: >= 0 and var loss } report && report.Pods[loss].FactorIfLost < 1)
        {
            findings = findings.Add(HoldingFindings.LostSeal(report, $"P{loss + 1}"));
        }

        var seats = SearchGround.At(
            refined.Frame, board, new OffsetBox(refined.Offset, 0, 0), refined.Columns, refined.Rows);
        var work = new WorkDone(seats.Classes[0].Available.Count(a => a), reach.Points.Length, nodes)
        {
            Rows = end.Work.Rows,
            Pairs = end.Work.Pairs,
        };
        return new(job, layout, [], findings, end.IsCut, work);
    }

    // Where the cutter is only assumed the figure is asked for all the same.
    private static OneMorePod? More(Job job, HoldingModel? holding, ImmutableArray<BoardSeats> board, FoundLayout found) =>
        holding is not null ? OneMore.Of(job, holding, board, found)
        : HoldingGround.Of(job.Part, job.Shop, job.Shop.Holding.TargetFactor) is { } ground ? OneMore.Of(job, new(ground), board, found) : null;

    private static PlanResult WithoutLayout(
        Job job, ReachMap reach, SearchEnd? end, int nodes, Effort effort, CancellationToken cancellation)
    {
        if (end is null)
        {
            return new(job, null, [], [NoLayoutCauses.NoPods(job)], false, new(0, reach.Points.Length, 0));
        }

        var work = new WorkDone(0, reach.Points.Length, nodes) { Rows = end.Work.Rows, Pairs = end.Work.Pairs };
        if (end.IsCut)
        {
            return new(job, null, [], [NoLayoutCauses.CutShort()], true, work);
        }

        var (stretches, findings) = NoLayoutCauses.Of(
            job, reach, other => SearchHeights(other, reach, null, effort, null, cancellation).Best?.Best);
        return new(job, null, stretches, findings, false, work);
    }
}

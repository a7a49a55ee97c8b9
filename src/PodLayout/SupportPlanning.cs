using System.Collections.Immutable;
using PodLayout.Findings;
using PodLayout.Holding;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Placing;
using PodLayout.Seats;
using PodLayout.Support;

namespace PodLayout;

/// <summary>The layout with the fewest pods that supports all points but some, and holds the part.</summary>
internal sealed class SupportPlanning
{
    private readonly Job _job;
    private readonly ReachMap _reach;
    private readonly ImmutableArray<Frames> _all;
    private readonly Effort _effort;
    private readonly IProgress<Progress>? _progress;
    private readonly CancellationToken _cancellation;
    private ImmutableArray<Frames> _heights;
    private LeftUnsupported _left = LeftUnsupported.Nothing;
    private (SearchEnd? End, int Nodes) _without;

    /// <summary>Prepares it.</summary>
    /// <param name="job">The job.</param>
    /// <param name="reach">The part's reach map.</param>
    /// <param name="heights">Frames of the part on the pods of each height.</param>
    /// <param name="effort">How long and on how many threads.</param>
    /// <param name="progress">Told of each better layout and bound; null for silence.</param>
    /// <param name="cancellation">Cuts the work short.</param>
    public SupportPlanning(
        Job job, ReachMap reach, ImmutableArray<Frames> heights, Effort effort, IProgress<Progress>? progress, CancellationToken cancellation)
    {
        (_job, _reach, _all, _heights, _effort, _progress, _cancellation) = (job, reach, heights, heights, effort, progress, cancellation);
    }

    /// <summary>Plans; null where there is no layout (see <see cref="Without"/>).</summary>
    /// <param name="left">The points that need not be supported, and a layout that supports all others where one is known.</param>
    public PlanResult? Plan(LeftUnsupported left)
    {
        _left = left;
        var demanded = left.Others(_reach.Points.Length);
        _heights = left.Points.IsEmpty ? _all : [.. _all.Select(frames => frames.Demanding(demanded))];
        var rules = _job.Shop.Holding;
        var target = HoldingModel.Of(_job, rules.TargetFactor);
        var (best, nodes) = Search(target, null);
        if (best?.Best is { } found)
        {
            return WithLayout(target, found, best, nodes);
        }

        if (best is null || (target is null && left.At is null))
        {
            _without = (best, nodes);
            return null;
        }

        // What supports the part may hold it as well: a search for what holds is given up where it comes upon nothing for long. When the
        // work is cut short any layout is taken that is soon found.
        var isCut = best.IsCut;
        var known = Known(left, demanded);
        var support = isCut && known is not null ? new(known, 1, 0, 0, true)
            : Search(null, known, isCut ? SearchCourse.ToFirst : null, isCut ? CancellationToken.None : _cancellation).Best;
        if (support?.Best is not { } supporting)
        {
            _without = (support, nodes);
            return null;
        }

        support = support with { IsCut = support.IsCut || isCut };
        foreach (var factor in target is null ? [] : new[] { rules.TargetFactor, rules.LeastFactor }.Distinct())
        {
            var holding = HoldingModel.Of(_job, factor)!;
            if (holding.Bodies.Holds(supporting.Frame, supporting.Seats, supporting.Offset, supporting.Columns, supporting.Rows))
            {
                var held = supporting with { Frame = supporting.Frame.HeldBy(holding) };
                return Told(WithLayout(holding, held, support, nodes));
            }

            if (!isCut && factor < rules.TargetFactor)
            {
                (best, nodes) = Search(holding, null);
                if (best?.Best is { } firm)
                {
                    return Told(WithLayout(holding, firm, best, nodes));
                }
            }
        }

        if (target is null || isCut)
        {
            return Told(WithLayout(null, supporting, support, nodes));
        }

        // Shown is what comes nearest to holding.
        var frames = _heights.First(h => h.Poses == supporting.Frame.Poses);
        var firmest = FirmestLayout.Of(_job, HoldingModel.Of(_job, rules.LeastFactor)!, frames, supporting, _cancellation);
        return Told(WithLayout(null, firmest, support, nodes, isFirmest: true));
    }

    // The layout that is known to support what is demanded, with as few pods as do there.
    private FoundLayout? Known(LeftUnsupported left, ImmutableArray<int> demanded)
    {
        if (left.At is not { } at)
        {
            return null;
        }

        var frame = at.Frame.HeldBy(null).Demanding(demanded);
        var known = at with { Frame = frame, WorstShare = OffsetFitting.WorstShare(frame, at.Seats, at.Offset) };
        var ground = SearchGround.At(frame, BoardOf(frame), new OffsetBox(at.Offset, 0, 0), at.Columns, at.Rows);
        return NodeExamination.AtOffset(_job, ground, ground.Classes[0], at.Offset, at.Seats.Length, _cancellation) ?? known;
    }

    private ImmutableArray<BoardSeats> BoardOf(PlacingFrame frame) => [.. frame.Poses.Select(pose => BoardSeats.Of(pose, _job.Shop.Board))];

    // With what is to be said where a layout does not reach the target.
    private PlanResult Told(PlanResult plan) => plan.Layout is not { Holding: { } held } layout ? plan
        : held.DoesNotHold ? plan with { Findings = [HoldingFindings.NotHeld(_job, layout), .. plan.Findings.Where(f => f.Code == UnsupportedFindings.Code)] }
        : held.LeastOfAll < HeldBodies.Enough(_job.Shop.Holding.TargetFactor)
            ? plan with { Findings = plan.Findings.Insert(0, HoldingFindings.BelowTarget(_job, layout)) } : plan;

    private (SearchEnd? Best, int Nodes) Search(HoldingModel? holding, FoundLayout? toBeat) => Search(holding, toBeat, null, _cancellation);

    private (SearchEnd? Best, int Nodes) Search(HoldingModel? holding, FoundLayout? toBeat, SearchCourse? course, CancellationToken cancellation) =>
        Search(_job, _heights, holding, toBeat, course, cancellation);

    // A part lies level on pods of one height only: each height is a search of its own, with the best so far to beat.
    private (SearchEnd? Best, int Nodes) Search(
        Job job, ImmutableArray<Frames> heights, HoldingModel? holding, FoundLayout? toBeat, SearchCourse? course, CancellationToken cancellation)
    {
        SearchEnd? best = null;
        var nodes = 0;
        foreach (var frames in heights)
        {
            var end = Search(job, frames, holding, best?.Best ?? toBeat, course, cancellation);
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

    private SearchEnd Search(
        Job job, Frames frames, HoldingModel? holding, FoundLayout? toBeat, SearchCourse? course, CancellationToken cancellation) =>
        job.Placement is PlacementWish.Given given ? GivenPlacement.Search(job, frames, given, holding, toBeat, cancellation)
            : Over(job, frames.HeldBy(holding), holding, toBeat, course, cancellation);

    private SearchEnd Over(
        Job job, Frames frames, HoldingModel? holding, FoundLayout? toBeat, SearchCourse? course, CancellationToken cancellation)
    {
        var spans = AngleSpans.Of(job);
        return FirmSearch.Run(holding, toBeat, (aimed, best, wanted) =>
        {
            PlacingSearch search = new(job, aimed, _effort, Tolerances.PlacingMm, best, _progress, cancellation) { Course = course ?? wanted };
            return search.Run(frames, spans);
        });
    }

    private PlanResult WithLayout(HoldingModel? holding, FoundLayout found, SearchEnd end, int nodes, bool isFirmest = false)
    {
        var job = _job;
        var board = BoardOf(found.Frame);
        if (job.Standing is { } standing && !isFirmest)
        {
            // Pods left standing come before overhang: what the search found is then not moved off them again.
            var frames = _heights.First(h => h.Poses == found.Frame.Poses).HeldBy(holding);
            found = FewestMoves.Of(job, standing, board, found, frames, _cancellation);
        }

        var mayMove = job.Placement is not PlacementWish.Given;
        var isRefined = job.Standing is null && !isFirmest;
        var refined = isRefined
            ? Refinement.Improve(job, board, found, mayMove, _cancellation) : found;
        isRefined &= !_cancellation.IsCancellationRequested;
        var proof = isFirmest ? ProofWords.OfFirmest(job, refined.Seats.Length, end, _left)
            : ProofWords.Of(job, refined.Seats.Length, end, holding?.Ground.Factor, isRefined, _left);
        var layout = LayoutAssembly.Of(job, _reach, refined, proof);
        if (HeldLayout.Report(job, layout, _effort.Threads) is { } held)
        {
            layout = layout with { Holding = held with { OneMore = More(holding, board, refined) } };
        }

        var unsupported = Left(refined, board, new(refined.Offset, 0, 0));
        ImmutableArray<Finding> findings = unsupported.IsEmpty ? [] : [UnsupportedFindings.Of(job, layout, unsupported)];
        if (holding is not null && layout.Holding is { WorstLoss: >= 0 and var loss } report && report.Pods[loss].FactorIfLost < 1)
        {
            findings = findings.Add(HoldingFindings.LostSeal(report, $"P{loss + 1}"));
        }

        var seats = SearchGround.At(refined.Frame, board, new(refined.Offset, 0, 0), refined.Columns, refined.Rows);
        var work = new WorkDone(seats.Classes[0].Available.Count(a => a), _reach.Points.Length, nodes)
        {
            Rows = end.Work.Rows,
            Pairs = end.Work.Pairs,
        };
        return new(job, layout, unsupported, findings, end.IsCut, work);
    }

    // What stays beyond its limit.
    private ImmutableArray<UnsupportedStretch> Left(FoundLayout found, ImmutableArray<BoardSeats> board, OffsetBox box)
    {
        if (_left.Points.IsEmpty)
        {
            return [];
        }

        var whole = _all.First(h => h.Poses == found.Frame.Poses).Of(found.Frame.AngleDeg, 0);
        var ground = SearchGround.At(whole, board, box, found.Columns, found.Rows);
        return Stretches.Of(_job, _reach, ground, ground.Classes[0].Available, box, found.Seats, isBrief: _cancellation.IsCancellationRequested);
    }

    // Where the cutter is only assumed the figure is asked for all the same.
    private OneMorePod? More(HoldingModel? holding, ImmutableArray<BoardSeats> board, FoundLayout found) =>
        holding is not null ? OneMore.Of(_job, holding, board, found)
        : HoldingGround.Of(_job.Part, _job.Shop, _job.Shop.Holding.TargetFactor) is { } ground ? OneMore.Of(_job, new(ground), board, found) : null;

    /// <summary>Why there was no layout.</summary>
    public PlanResult Without()
    {
        var (end, nodes) = _without;
        if (end is null)
        {
            return new(_job, null, [], [NoLayoutCauses.NoPods(_job)], false, new(0, _reach.Points.Length, 0));
        }

        var work = new WorkDone(0, _reach.Points.Length, nodes) { Rows = end.Work.Rows, Pairs = end.Work.Pairs };
        if (end.IsCut || _cancellation.IsCancellationRequested)
        {
            return new(_job, null, [], [NoLayoutCauses.CutShort()], true, work);
        }

        var (stretches, findings) = NoLayoutCauses.Of(
            _job, _reach, other => Search(other, Planning.Heights(other, _reach), null, null, null, _cancellation).Best?.Best);
        return new(_job, null, stretches, findings, false, work);
    }
}

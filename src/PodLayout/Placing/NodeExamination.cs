using System.Collections.Immutable;
using PodLayout.Choice;
using PodLayout.Geometry;
using PodLayout.Holding;
using PodLayout.Jobs;

namespace PodLayout.Placing;

/// <summary>Bounds a set of placements, and looks for a layout in it.</summary>
internal static class NodeExamination
{
    // Above this the relaxed choice of a span of angles says little about the layouts at its middle, and a look costs a frame.
    private const double MostSwingToLookMm = 3;

    // Where the bound says that so many pods fewer than matter may do, no proof is near, and the set is split at once: in boxes of
    // more than this share of the pitch to either side whatever room there is, in smaller ones with room reckoned with.
    private const int FarFromProof = 2;
    private const double WideShare = 0.1;

    // In boxes up to this share it is worth the solver's time to know whether there is a choice, and a layout at the middle.
    private const double SmallShare = 0.035;

    /// <summary>
    /// In the relaxation a seat may be filled when any placement of the set has it, and supports what it could support from any
    /// of them; so its fewest pods bound every layout of the set.
    /// </summary>
    /// <param name="job">The job.</param>
    /// <param name="node">The set of placements.</param>
    /// <param name="atMost">Only layouts with at most this many pods matter.</param>
    /// <param name="frames">Frames of the part.</param>
    /// <param name="placingToleranceMm">Boxes no larger than this are not split.</param>
    /// <param name="cancellation">Cuts the work short.</param>
    public static NodeVerdict Examine(
        Job job, SearchNode node, Frames frames, int atMost, double placingToleranceMm, CancellationToken cancellation)
    {
        var (ground, box) = (node.Ground.In(frames.Of(node.AngleDeg, node.HalfSpanDeg)), node.Box);
        ImmutableArray<int> roots = [.. Alive(ground, node)];
        ImmutableArray<FrameSeat> seats = [.. roots.Select(s => ground.Seats[s])];
        var reach = new BoxReach(ground.Frame, seats, box);
        var rows = new NodeRows(node, roots, reach);
        var asked = AskedRows.Of(job, ground.Frame, seats, node.Classes.Select(c => ground.Classes[c]), box);
        List<Weakness> weaknesses = [.. node.Weaknesses];
        var support = PlacementModel.Question(job, ground.Frame, seats, asked, rows.SupportersOf, reach.Supports);
        if (WithPieces(job, node, ground, frames, box, roots, support, atMost, cancellation) is { } withPieces)
        {
            // Only the next look needs to know whether there is a better one still.
            return new(node.Bound, withPieces, [node with { Rows = rows.InGround() }], false, false) { Work = rows.Work };
        }

        var question = support with
        {
            HoldsBrokenBy = ground.Frame.Holding?.Over(ground.Frame, seats, box, node.Bound, atMost, weaknesses),
        };
        var half = Math.Max(box.HalfXMm, box.HalfYMm);
        // On a fine pitch the boxes that are not split further are a larger share of it: they are never left at a rough answer.
        double LargestMm(double share) => Math.Max(share * job.Shop.Board.PitchMm, placingToleranceMm);
        var answer = FewestPods.Of(question, [.. node.Rows.Select(r => r.Point)], atMost, cancellation, Wanted.Any with
        {
            RoughUpTo = half > LargestMm(WideShare) ? atMost - FarFromProof : -1,
            RoughWithRoomUpTo = half > LargestMm(SmallShare) ? atMost - FarFromProof : -1,
            IsRoughBeforeFull = half > LargestMm(SmallShare),
        });
        var bound = Math.Max(node.Bound, answer.LowerBound);
        if (!answer.IsProven)
        {
            return new(bound, null, [node with { Bound = bound }], false, true) { Work = rows.Work };
        }

        if (!answer.HasChoice)
        {
            return new(bound, null, [], false, false) { Work = rows.Work };
        }

        ImmutableArray<int> filled = [.. answer.Filled.Select(s => roots[s])];
        var shift = node.Classes.MaxBy(c => filled.Count(s => ground.Classes[c].Available[s]));
        var (found, looked, shortBySprings) = ground.Frame.MostSwingMm > MostSwingToLookMm || answer.IsRough ? default
            : Look(job, node.HalfSpanDeg == 0 ? ground : ground with { Frame = frames.Of(node.AngleDeg, 0) }, box, ground.Classes[shift], filled, atMost, weaknesses, cancellation);
        if (found?.Seats.Length <= bound)
        {
            // As few as the bound: nothing in this set has fewer.
            return new(bound, found, [], false, false) { Work = rows.Work + looked, ShortBySprings = shortBySprings };
        }

        var children = Split(node with { Bound = bound, Rows = rows.InGround(), Weaknesses = [.. weaknesses] }, ground.Frame.MostSwingMm, filled, shift, placingToleranceMm);
        return new(bound, found, children, children.IsEmpty, false) { Work = rows.Work + looked, ShortBySprings = shortBySprings };
    }

    // Where loose pieces are held, the choice that only supports the part guides to where it lies with fewest pods: the pods under
    // the pieces are then chosen by themselves.
    private static FoundLayout? WithPieces(
        Job job, SearchNode node, SearchGround ground, Frames frames, OffsetBox box, ImmutableArray<int> roots, CoverQuestion support, int atMost,
        CancellationToken cancellation)
    {
        if (ground.Frame.Holding is not { Grounds.Length: > 1 } || ground.Frame.MostSwingMm > MostSwingToLookMm)
        {
            return null;
        }

        var answer = FewestPods.Of(support, [.. node.Rows.Select(r => r.Point)], atMost, cancellation, Wanted.AnyQuickly);
        if (!answer.HasChoice)
        {
            return null;
        }

        ImmutableArray<int> filled = [.. answer.Filled.Select(s => roots[s])];
        var shift = ground.Classes[node.Classes.MaxBy(c => filled.Count(s => ground.Classes[c].Available[s]))];
        var one = node.HalfSpanDeg == 0 ? ground : ground with { Frame = frames.Of(node.AngleDeg, 0) };
        ImmutableArray<FrameSeat> chosen = [.. filled.Select(s => ground.Seats[s])];
        if (!filled.All(s => shift.Available[s]) || OffsetFitting.FittingAll(one.Frame, chosen, box) is not { } fitting)
        {
            return null;
        }

        var (improved, worst) = OffsetFitting.Improve(one.Frame, chosen, fitting, goodEnough: 1);
        return worst <= 1 && PieceRepair.Of(job, one, shift, improved, chosen, atMost) is { IsDefault: false } repaired
            ? new(one.Frame, improved, shift.Columns, shift.Rows, repaired, worst) : null;
    }

    /// <summary>
    /// A layout near the relaxed choice: the choice itself where the part can be moved to fit it, otherwise the best at that
    /// offset.
    /// </summary>
    private static (FoundLayout? Found, SearchWork Work, int ShortBySprings) Look(
        Job job,
        SearchGround ground,
        OffsetBox box,
        ShiftClass shift,
        ImmutableArray<int> filled,
        int atMost,
        List<Weakness> weaknesses,
        CancellationToken cancellation)
    {
        var offset = box.Centre;
        if (filled.All(s => shift.Available[s]))
        {
            ImmutableArray<FrameSeat> chosen = [.. filled.Select(s => ground.Seats[s])];
            if (OffsetFitting.FittingAll(ground.Frame, chosen, box) is { } fitting)
            {
                var (improved, worst) = OffsetFitting.Improve(ground.Frame, chosen, fitting, goodEnough: 1);
                if (worst <= 1 && ground.Frame.Holding?.Bodies.Holds(ground.Frame, chosen, improved, shift.Columns, shift.Rows) != false)
                {
                    return (new(ground.Frame, improved, shift.Columns, shift.Rows, chosen, worst), default, 0);
                }

                if (worst <= 1 && PieceRepair.Of(job, ground, shift, improved, chosen, atMost) is { IsDefault: false } repaired)
                {
                    return (new(ground.Frame, improved, shift.Columns, shift.Rows, repaired, worst), default, 0);
                }

                offset = fitting;
            }
        }

        // Whatever is not found here is found in a smaller box; in the smallest, what there is must be found.
        var isSmall = Math.Max(box.HalfXMm, box.HalfYMm) <= Math.Max(SmallShare * job.Shop.Board.PitchMm, Tolerances.PlacingMm);
        var wanted = isSmall || ground.Frame.Holding is not null ? Wanted.Any : Wanted.AnyQuickly;
        if (WithPieces(job, ground, shift, offset, atMost, cancellation) is { } withPieces)
        {
            return (withPieces, default, 0);
        }

        var end = Solve(job, ground, shift, offset, atMost, cancellation, weaknesses, wanted);
        return (end.Found, end.Work, end.ShortBySprings);
    }

    /// <summary>
    /// Where loose pieces are held: a layout that supports, quickly found, with the pods under the pieces chosen so that all holds;
    /// null when that does not come to anything.
    /// </summary>
    public static FoundLayout? WithPieces(
        Job job, SearchGround ground, ShiftClass shift, Point2 offset, int atMost, CancellationToken cancellation)
    {
        if (ground.Frame.Holding is not { Grounds.Length: > 1 })
        {
            return null;
        }

        var model = PlacementModel.OfSupport(job, ground, shift, offset);
        var answer = FewestPods.Of(model.Within(1), ground.FirstPoints, atMost, cancellation, Wanted.AnyQuickly);
        return answer.HasChoice
            && PieceRepair.Of(job, ground, shift, offset, [.. answer.Filled.Select(s => model.Seats[s])], atMost) is { IsDefault: false } seats
            ? new(ground.Frame, offset, shift.Columns, shift.Rows, seats, OffsetFitting.WorstShare(ground.Frame, seats, offset)) : null;
    }

    /// <summary>The best layout at one offset with one shift; null when there is none within the limit.</summary>
    public static FoundLayout? AtOffset(
        Job job, SearchGround ground, ShiftClass shift, Point2 offset, int atMost, CancellationToken cancellation) =>
        Solve(job, ground, shift, offset, atMost, cancellation).Found;

    /// <summary>
    /// The best layout at one offset with one shift, the bound there, whether that is proven, what it took, and how many choices
    /// fell short by springs alone: where any did the bound holds for layouts near the one found only.
    /// </summary>
    public static (FoundLayout? Found, int Bound, bool IsProven, SearchWork Work, int ShortBySprings) Solve(
        Job job,
        SearchGround ground,
        ShiftClass shift,
        Point2 offset,
        int atMost,
        CancellationToken cancellation,
        List<Weakness>? weaknesses = null,
        Wanted? wanted = null)
    {
        var model = PlacementModel.At(job, ground, shift, offset, weaknesses);
        var answer = FewestPods.Of(model.Within(1), ground.FirstPoints, atMost, cancellation, wanted);
        if (!answer.HasChoice)
        {
            return (null, answer.LowerBound, answer.IsProven, model.Work, model.ShortBySprings);
        }

        ImmutableArray<FrameSeat> seats = [.. answer.Filled.Select(s => model.Seats[s])];
        var worst = OffsetFitting.WorstShare(ground.Frame, seats, offset);
        return (new(ground.Frame, offset, shift.Columns, shift.Rows, seats, worst), answer.LowerBound, answer.IsProven, model.Work, model.ShortBySprings);
    }

    internal static IEnumerable<int> Alive(SearchGround ground, SearchNode node) => Enumerable.Range(0, ground.Seats.Length)
        .Where(s => node.Classes.Any(c => ground.Classes[c].Available[s]) && ground.Frame.IsPossible(ground.Seats[s], node.Box));

    // Where the relaxed choice mixes seats of several shifts the shifts are parted by one of them; otherwise the box is split.
    internal static ImmutableArray<SearchNode> Split(
        SearchNode node, double swing, ImmutableArray<int> filled, int shift, double placingToleranceMm)
    {
        var classes = node.Ground.Classes;
        foreach (var seat in filled.Where(s => !classes[shift].Available[s]))
        {
            return
            [
                node with { Classes = [.. node.Classes.Where(c => classes[c].Available[seat])] },
                node with { Classes = [.. node.Classes.Where(c => !classes[c].Available[seat])] },
            ];
        }

        // Whichever blurs the places of the pods more is halved: the angle or the box.
        var half = Math.Max(node.Box.HalfXMm, node.Box.HalfYMm);
        if (2 * Math.Max(half, swing) <= placingToleranceMm)
        {
            return [];
        }

        if (swing > half)
        {
            var quarter = node.HalfSpanDeg / 2;
            return
            [
                node with { AngleDeg = node.AngleDeg - quarter, HalfSpanDeg = quarter },
                node with { AngleDeg = node.AngleDeg + quarter, HalfSpanDeg = quarter },
            ];
        }

        var (low, high) = node.Box.Split();
        return [node with { Box = low }, node with { Box = high }];
    }
}

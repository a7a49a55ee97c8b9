using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Handover.Picture;

// The numbers that stand beside their pods: how large, and which of them first.
internal sealed partial class PodLabels
{
    // A number that finds no place beside its pod as large as this, as a share of the least, stands in it smaller.
    private const double Fair = 0.8;

    // What a number that is one step smaller costs, mm of line.
    private const double SmallerMm = 0.5;

    // And one that finds no room at all, more than all others together.
    private const double WithoutMm = 10000;

    // Numbers that are all of a size rather than every second one large and the others squeezed between; and those that find no room
    // come first.
    private (IReadOnlyList<int> Pods, ImmutableArray<LetterSizes.IdSize> Shares) Chosen(ImmutableArray<LetterSizes.IdSize> shares, double worthMm)
    {
        // The sizes that are not narrower are tried in any case, the others where numbers find no room otherwise. Where more than a
        // share find none, no other order of them will do: a part of the board is then shown larger.
        const int sets = 3, turns = 8;
        const double hopeless = 0.25;
        var best = (Cost: double.PositiveInfinity, Pods: (IReadOnlyList<int>)podsOutside, Shares: shares);
        bool IsHopeless() => best.Cost > WithoutMm * hopeless * podsOutside.Count;
        double Try(IReadOnlyList<int> pods, ImmutableArray<LetterSizes.IdSize> of, out List<int> without)
        {
            var (mark, ports) = (draft.Mark(), portsOutside.Count);
            (var cost, without) = Numbers((pods, of), worthMm);
            draft.Back(mark);
            portsOutside.RemoveRange(ports, portsOutside.Count - ports);
            cost += pods.Count * SmallerMm * (shares.Length - of.Length);
            best = cost < best.Cost ? (cost, pods, of) : best;
            return cost;
        }

        for (var set = 0; set < shares.Length && (set == 0 || !IsHopeless()) && (set < sets || best.Cost > WithoutMm); set++)
        {
            Try(podsOutside, shares[set..], out _);
        }

        var order = best.Pods;
        var before = double.NaN;
        for (var turn = 0; turn < turns && !IsHopeless(); turn++)
        {
            // Where it costs the same again another order will not help either.
            var cost = Try(order, best.Shares, out var without);
            if (without.Count == 0 || cost == before)
            {
                break;
            }

            before = cost;
            order = [.. without, .. order.Except(without)];
        }

        return (best.Pods, best.Shares);
    }

    // What the places cost, and the pods whose numbers are smaller than any of these sizes.
    private (double Cost, List<int> Without) Numbers((IReadOnlyList<int> Pods, ImmutableArray<LetterSizes.IdSize> Shares) of, double worthMm)
    {
        var cost = 0.0;
        List<int> without = [];
        Each(of.Pods, i =>
        {
            var pod = layout.Pods[i];
            PodRoom room = new(draft, board, layout, pod) { OverPlugged = true };
            PodBlock[] blocks = [.. of.Shares.Select(s => PodBlock.InLine(LayoutFiling.PodId(i), TypeOf(pod), FaceOf(pod, s.Share * sizes.LeastId, s.Narrow)))];
            Box2[] boxes = [.. blocks.Select(b => b.At(default, draft.Scale))];
            var found = beside.Best(pod, null, boxes, worthMm, BesidePods.Closeness.OffOthers);
            if ((found is not var (index, at) || of.Shares[index].Share < Fair || (!sizes.Narrower.IsEmpty && (at.Leader is not null || of.Shares[index].Narrow < 1)) || beside.IsAtWords(at.Box))
                && Small(room, i))
            {
                return;
            }

            // Against another pod, or far off, rather than too small to be read, unless it is read elsewhere.
            if (found is null && !LeavesOutTooSmall)
            {
                found = beside.Best(pod, null, boxes, worthMm)
                    ?? (sizes.IsTight && beside.Find(pod, null, boxes[^1], anywhere: true) is { } far ? (boxes.Length - 1, far) : null);
            }

            if (found is var (best, place))
            {
                cost += place.Cost + SmallerMm * best;
                beside.Take(place);
                blocks[best].Draw(draft, place.Box.Centre);
                Ports(room, i);
                return;
            }

            if (!Squeezed(room, i))
            {
                cost += WithoutMm;
                without.Add(i);
            }
        });
        return (cost, without);
    }
}

using System.Globalization;
using PodLayout.Geometry;
using PodLayout.Holding;
using PodLayout.Layouts;
using PodLayout.Shops;

namespace PodLayout.Handover.Picture;

/// <summary>How the layout holds: where it is weakest, and what each pod bears there.</summary>
internal static class HoldingDrawing
{
    // Height of a load's bar, mm of paper.
    private const double BarMm = 0.9;

    // Radius of the cutter's sign, and length of its arrow, mm of paper.
    private const double RingMm = 1.7;
    private const double ArrowMm = 6.5;

    /// <summary>Bars along an edge of the pods that their ports leave free: as long as the edge for the pod that bears most.</summary>
    public static void Bars(SheetDraft draft, GridBoard board, Layout layout)
    {
        if (layout.Holding is not { } held || held.Pods.Length != layout.Pods.Length || held.Pods.Max(p => p.BearsN) is not (> 0 and var most))
        {
            return;
        }

        // A pod under a loose piece bears nothing of the part.
        foreach (var i in Enumerable.Range(0, layout.Pods.Length).Where(i => layout.Pods[i].Holds is null))
        {
            var pod = layout.Pods[i];
            var share = held.Pods[i].BearsN / most;
            var (full, borne) = Bar(draft, pod, [.. PodDrawing.Signs(draft, board, pod)], share);
            draft.AddBox(SheetDraft.Support, "load-frame", full);
            draft.AddBox(SheetDraft.Support, "load-bar", borne);
            draft.KeepOff(full.Grow(0.15 * draft.Scale));
        }
    }

    // Lying along the lower or the upper edge, or standing along a side.
    private static (Box2 Full, Box2 Borne) Bar(SheetDraft draft, PlacedPod pod, List<Box2> signs, double share)
    {
        // In a round pod the bar lies in a square that the disc holds.
        var room = pod.Type.Footprint is PodFootprint.Round ? pod.BodyBox.Grow(-0.2 * pod.ExtentXMm) : pod.BodyBox.Grow(-0.5 * draft.Scale);
        double across = Math.Min(BarMm * draft.Scale, room.Height / 3), along = Math.Min(BarMm * draft.Scale, room.Width / 3);
        (Box2 Full, bool Lies)[] places =
        [
            (room with { MaxY = room.MinY + across }, true), (room with { MinY = room.MaxY - across }, true),
            (room with { MaxX = room.MinX + along }, false), (room with { MinX = room.MaxX - along }, false),
        ];
        var (full, lies) = places.FirstOrDefault(p => !signs.Exists(s => s.Touches(p.Full)), places[0]);
        return (full, lies ? full with { MaxX = full.MinX + share * full.Width } : full with { MaxY = full.MinY + share * full.Height });
    }

    /// <summary>The place of the cutter where the layout holds least, with the direction in which it pushes the part; over all else.</summary>
    public static void Weakest(SheetDraft draft, Layout layout)
    {
        if (layout.Holding?.Weakest is not { } weakest)
        {
            return;
        }

        var push = Turn.FromDegrees(layout.Placement.AngleDeg).Apply(new(weakest.Force.XN, weakest.Force.YN));
        var u = draft.Scale;
        var at = HoldingWords.OnBoard(layout, weakest);
        var isUpright = push.Length == 0;
        var along = isUpright ? default : push * (1 / push.Length);

        // Away from the place or towards it, whichever is on no pod: the push is the same.
        var (from, to) = (at, at + along * (ArrowMm * u));
        var (before, until) = (at - along * ((ArrowMm + RingMm) * u), at - along * (1.1 * RingMm * u));
        if (draft.Covered(from, to) > 0 && draft.Covered(at, before) < draft.Covered(from, to) && draft.Page.Contains(new Box2(before.X, before.Y, before.X, before.Y)))
        {
            (from, to) = (before, until);
        }

        Sign(draft, SheetDraft.Labels, at, isUpright ? null : (from, to));
        var ring = new Box2(at.X, at.Y, at.X, at.Y).Grow((RingMm + 0.4) * u);
        draft.Take(ring);
        draft.KeepOff(ring);
        if (!isUpright)
        {
            var head = new Box2(to.X, to.Y, to.X, to.Y).Grow(u);
            draft.KeepOff(from, to);
            draft.KeepOff(head);
            draft.Take(Box2.Around([from, to]).Grow(0.5 * u));
            foreach (var share in new[] { 0.25, 0.5, 0.75 })
            {
                var p = from + (to - from) * share;
                draft.KeepOff(new Box2(p.X, p.Y, p.X, p.Y).Grow(0.6 * u));
            }
        }
    }

    /// <summary>The legend's items.</summary>
    public static IEnumerable<PanelItem> Signs(Layout? layout)
    {
        if (layout?.Holding?.Weakest is not { } weakest)
        {
            yield break;
        }

        var hasArrow = weakest.Force is not { XN: 0, YN: 0 };
        yield return PanelItem.Sign(
            "cutter where the part is held least" + (hasArrow ? "; arrow: push on the part" : ""), "weakest-ring", (draft, at) =>
            Sign(
                draft, SheetDraft.Panel, at - new Point2(2.4 * draft.Scale, 0),
                hasArrow ? (at - new Point2(2.4 * draft.Scale, 0), at + new Point2((ArrowMm - 2.4) * draft.Scale, 0)) : null));
        yield return PanelItem.Sign("bar in a pod: what it bears then", "load-frame", (draft, at) =>
        {
            var u = draft.Scale;
            var full = new Box2(at.X - 3.2 * u, at.Y - BarMm / 2 * u, at.X + 3.2 * u, at.Y + BarMm / 2 * u);
            draft.AddBox(SheetDraft.Panel, "load-frame", full);
            draft.AddBox(SheetDraft.Panel, "load-bar", full with { MaxX = at.X + 1.2 * u });
        });
    }

    /// <summary>The words beside the drawing.</summary>
    public static IEnumerable<PanelItem> Words(Layout layout)
    {
        if (layout.Holding is not { } held)
        {
            return [];
        }

        var heading = held.Weakest is null ? "Holding factor: not limited"
            : $"Holding factor {FactorText.Of(held.Factor, held.TargetFactor, held.LeastFactor)} (target {FactorText.Asked(held.TargetFactor)})";
        var bears = string.Join(", ", held.Pods.Select((p, i) => (Pod: p, Index: i)).Where(p => layout.Pods[p.Index].Holds is null).Select(p =>
            string.Create(CultureInfo.InvariantCulture, $"{LayoutFiling.PodId(p.Index)} {p.Pod.BearsN:0} N")));
        return PanelItem.Under(held.DoesNotHold ? $"DOES NOT HOLD: {held.HeldLeast.What} at {FactorText.Of(held.HeldLeast.Factor)}, least {FactorText.Asked(held.LeastFactor)}" : heading,
        [
            .. held.Weakest is { } weakest ? PanelItem.Words($"Beyond it the part {HoldingFindings.Verb(weakest.Mode)} first, with the cutter at the sign ({weakest.Pass}); the pods then bear {bears}.", 8) : [],
            .. PanelItem.Words(string.Create(
                CultureInfo.InvariantCulture, $"Gauge before the spindle starts: at least {held.GaugeKPa:0.#} kPa.")),
        ]);
    }

    // A filled diamond in a ring, and an arrow; with a light edge, since they lie across other lines.
    private static void Sign(SheetDraft draft, string layer, Point2 at, (Point2 From, Point2 To)? arrow)
    {
        var u = draft.Scale;
        if (arrow is var (from, to))
        {
            draft.AddLine(layer, "weakest-halo", from, to);
        }

        draft.Add(layer, new Primitive.Disc("knockout", at, (RingMm + 0.35) * u));
        if (arrow is var (start, end))
        {
            Symbols.Arrow(draft, layer, "weakest-arrow", "weakest-head", start, end, false);
        }

        draft.Add(layer, new Primitive.Disc("weakest-ring", at, RingMm * u));
        draft.Add(layer, new Primitive.Area(
            "weakest-head", [new([at + new Point2(u, 0), at + new Point2(0, u), at - new Point2(u, 0), at - new Point2(0, u)])]));
    }
}

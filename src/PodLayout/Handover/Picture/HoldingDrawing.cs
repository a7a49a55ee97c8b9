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

    /// <summary>Bars along the lower edge of the pods: as long as the pod is wide for the pod that bears most.</summary>
    public static void Bars(SheetDraft draft, Layout layout)
    {
        if (layout.Holding is not { } held || held.Pods.Length != layout.Pods.Length || held.Pods.Max(p => p.BearsN) is not (> 0 and var most))
        {
            return;
        }

        // A pod under a loose piece bears nothing of the part.
        foreach (var i in Enumerable.Range(0, layout.Pods.Length).Where(i => layout.Pods[i].Holds is null))
        {
            var pod = layout.Pods[i];
            // In a round pod the bar stands where the disc is widest below its middle that a bar of its width fits.
            var room = pod.Type.Footprint is PodFootprint.Round ? pod.BodyBox.Grow(-0.2 * pod.ExtentXMm) : pod.BodyBox.Grow(-0.5 * draft.Scale);
            var full = new Box2(room.MinX, room.MinY, room.MaxX, room.MinY + Math.Min(BarMm * draft.Scale, room.Height / 3));
            draft.AddBox(SheetDraft.Support, "load-frame", full);
            draft.AddBox(SheetDraft.Support, "load-bar", full with { MaxX = full.MinX + held.Pods[i].BearsN / most * full.Width });
        }
    }

    /// <summary>The place of the cutter where the layout holds least, with the direction in which it pushes the part.</summary>
    public static void Weakest(SheetDraft draft, Layout layout)
    {
        if (layout.Holding?.Weakest is not { } weakest)
        {
            return;
        }

        var push = Turn.FromDegrees(layout.Placement.AngleDeg).Apply(new(weakest.Force.XN, weakest.Force.YN));
        Sign(draft, SheetDraft.Support, HoldingWords.OnBoard(layout, weakest), push);
    }

    /// <summary>The legend's items.</summary>
    public static IEnumerable<PanelItem> Signs(Layout? layout)
    {
        if (layout?.Holding?.Weakest is null)
        {
            yield break;
        }

        yield return PanelItem.Sign(
            "cutter where the part is held least; arrow: push on the part", (draft, at) =>
            Sign(draft, SheetDraft.Panel, at - new Point2(2.4 * draft.Scale, 0), new(1, 0)));
        yield return PanelItem.Sign("bar in a pod: what it bears then", (draft, at) =>
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
            : $"Holding factor {FactorText.Of(held.Factor)} (target {FactorText.Of(held.TargetFactor)})";
        var bears = string.Join(", ", held.Pods.Select((p, i) => (Pod: p, Index: i)).Where(p => layout.Pods[p.Index].Holds is null).Select(p =>
            string.Create(CultureInfo.InvariantCulture, $"{LayoutFiling.PodId(p.Index)} {p.Pod.BearsN:0} N")));
        return PanelItem.Under(heading,
        [
            .. held.Weakest is { } weakest ? PanelItem.Words($"Beyond it the part {HoldingFindings.Verb(weakest.Mode)} first, with the cutter at the sign ({weakest.Pass}); the pods then bear {bears}.", 8) : [],
            .. PanelItem.Words(string.Create(
                CultureInfo.InvariantCulture, $"Gauge before the spindle starts: at least {held.GaugeKPa:0.#} kPa.")),
        ]);
    }

    // A filled diamond in a ring, and an arrow.
    private static void Sign(SheetDraft draft, string layer, Point2 at, Point2 push)
    {
        var u = draft.Scale;
        if (push.Length > 0)
        {
            Symbols.Arrow(draft, layer, "weakest-arrow", "weakest-head", at, at + push * (6.5 * u / push.Length), false);
        }

        draft.Add(layer, new Primitive.Disc("weakest-ring", at, 1.7 * u));
        draft.Add(layer, new Primitive.Area(
            "weakest-head", [new([at + new Point2(u, 0), at + new Point2(0, u), at - new Point2(u, 0), at - new Point2(0, u)])]));
    }
}

using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Layouts;
using PodLayout.Shops;

namespace PodLayout.Handover.Picture;

/// <summary>Pods that keep a rule no longer, or that are not counted: a heavy broken frame around them, and words beside them.</summary>
internal static class FaultDrawing
{
    private const double ApartMm = 0.75;
    private const double WordsMm = 2.6;
    private const double MarginMm = 0.5;
    private const double HalfLineMm = 0.45;

    // Half of the line of a frame in a pod.
    private const double HalfSmallMm = 0.375;

    // Words beside more pods than these would leave no room for the numbers of their neighbours: the tables say the rest.
    private const int Few = 12;

    /// <summary>
    /// The frames; words keep off them. Where many pods break a rule, or where others stand close to one that does, they lie in the
    /// pods, against their edges: around them they would lie on their neighbours.
    /// </summary>
    public static void Frames(SheetDraft draft, Layout layout, ImmutableArray<PodFault> faults)
    {
        var isInside = faults.Length > Few || faults.Any(f => layout.Pods.Any(p => p != layout.Pods[f.Pod] && p.BodyBox.Touches(Around(layout.Pods[f.Pod]))));
        var (style, layer) = isInside ? ("fault-frame" + SheetDraft.Small, SheetDraft.Pods) : ("fault-frame", SheetDraft.Support);
        Box2 Around(PlacedPod pod) => pod.BodyBox.Grow((ApartMm + HalfLineMm) * draft.Scale);
        foreach (var pod in faults.Select(f => layout.Pods[f.Pod]))
        {
            var around = pod.BodyBox.Grow((isInside ? -HalfSmallMm : ApartMm) * draft.Scale);
            if (pod.Type.Footprint is PodFootprint.Round)
            {
                draft.Add(layer, new Primitive.Disc(style, pod.Centre, around.Width / 2));
            }
            else
            {
                draft.AddBox(layer, style, around);
            }

            if (isInside)
            {
                draft.KeepOff(SheetDraft.RingOf(around));
                continue;
            }

            // The line is heavy: words keep off both its sides.
            draft.KeepOff(SheetDraft.RingOf(around.Grow(-HalfLineMm * draft.Scale)));
            draft.KeepOff(SheetDraft.RingOf(around.Grow(HalfLineMm * draft.Scale)));
            draft.Take(around.Grow(HalfLineMm * draft.Scale));
        }
    }

    /// <summary>
    /// The words, each beside its pod; where there is no room that is clearly its own, a mark of exclamation in it or on its frame;
    /// where there is none for that either, the frame alone.
    /// </summary>
    public static void Words(SheetDraft draft, GridBoard board, Layout layout, ImmutableArray<PodFault> faults)
    {
        BesidePods beside = new(draft, board, layout, LetterSizes.OnPaper);
        foreach (var fault in faults.Length > Few ? [] : faults.Where(f => draft.Content.Contains(layout.Pods[f.Pod].BodyBox)))
        {
            var (pod, u) = (layout.Pods[fault.Pod], draft.Scale);
            var words = fault.Counts ? "breaks a rule" : "not counted";
            if (beside.Find(pod, null, draft.TextBox(default, words, WordsMm, true).Grow(MarginMm * u), closeness: BesidePods.Closeness.AtOwn) is { } place)
            {
                beside.Take(place);
                Tag(draft, SheetDraft.Labels, place.Box, words);
                continue;
            }

            foreach (var spot in InOrOn(draft, pod, layout).Take(1))
            {
                Tag(draft, SheetDraft.Labels, spot, "!");
                draft.AddWord(spot);
            }
        }
    }

    // In the pod, then on its corners and sides where no other pod is; on no number and no open port, and rather on no port at all.
    private static IEnumerable<Box2> InOrOn(SheetDraft draft, PlacedPod pod, Layout layout)
    {
        const int steps = 8;
        var (body, size) = (pod.BodyBox, draft.TextBox(default, "!", WordsMm, true).Grow(MarginMm * draft.Scale));
        IEnumerable<Box2> Over(Box2 box) => from j in Enumerable.Range(0, steps + 1)
                                            from i in Enumerable.Range(0, steps + 1)
                                            select size.Moved(new(box.MaxX - box.Width * i / steps, box.MaxY - box.Height * j / steps));
        var inner = new Box2(body.MinX + size.Width / 2, body.MinY + size.Height / 2, body.MaxX - size.Width / 2, body.MaxY - size.Height / 2);
        var inside = inner.Width > 0 && inner.Height > 0 ? Over(inner).Where(IsInside) : [];
        var on = Over(body).Where(b => !layout.Pods.Any(p => p != pod && p.BodyBox.Touches(b)) && draft.Content.Contains(b));
        return inside.OrderBy(b => draft.IsOnPort(b) ? 1 : 0).Concat(on.Where(b => !draft.IsOnPort(b))).Where(b => !draft.HasWord(b) && !OnOpenPort(b));

        bool IsInside(Box2 box) => pod.Type.Footprint is not PodFootprint.Round round || SheetDraft.RingOf(box).Points.All(p => (p - pod.Centre).Length <= round.DiameterMm / 2);

        bool OnOpenPort(Box2 box) => layout.Pods.SelectMany(p => p.OpenPorts).Any(p => box.Grow(1.5 * draft.LeastPortMm * draft.Scale).Contains(p.Centre));
    }

    /// <summary>The legend's item.</summary>
    public static IEnumerable<PanelItem> Signs(SheetDraft? drawn) => drawn?.Shows("fault-frame") == false ? [] :
    [
        PanelItem.Sign("pod that breaks a rule or is not counted: read the warnings", "fault-frame", (draft, at) =>
        {
            var u = draft.Scale;
            Box2 body = new(at.X - 2.8 * u, at.Y - 1.3 * u, at.X + 2.8 * u, at.Y + 1.3 * u);
            draft.AddBox(SheetDraft.Panel, "pod", body);
            var isInside = drawn?.Shows("fault-frame" + SheetDraft.Small) == true;
            draft.AddBox(SheetDraft.Panel, isInside ? "fault-frame" + SheetDraft.Small : "fault-frame", body.Grow((isInside ? -HalfSmallMm : ApartMm) * u));
            if (drawn?.Shows("fault-words") != false)
            {
                Tag(draft, SheetDraft.Panel, draft.TextBox(at, "!", 2, true).Grow(0.3 * u), "!");
            }
        }),
    ];

    // White words on a black ground, which nothing else in the picture has.
    private static void Tag(SheetDraft draft, string layer, Box2 box, string words)
    {
        draft.AddBox(layer, "fault-ground", box);
        draft.AddText(layer, "fault-words", box.Centre, words, words.Length == 1 && layer == SheetDraft.Panel ? 2 : WordsMm, TextAnchor.Middle);
    }
}

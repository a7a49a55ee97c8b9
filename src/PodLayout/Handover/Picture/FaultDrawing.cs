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

    // Words and frames around more pods than these would leave no room for the numbers of their neighbours: the frames then lie on
    // the pods' own edges, and the tables say the rest.
    private const int Few = 12;

    /// <summary>The frames; words keep off them.</summary>
    public static void Frames(SheetDraft draft, Layout layout, ImmutableArray<PodFault> faults)
    {
        var isMany = faults.Length > Few;
        var (style, layer) = isMany ? ("fault-frame" + SheetDraft.Small, SheetDraft.Pods) : ("fault-frame", SheetDraft.Support);
        foreach (var pod in faults.Select(f => layout.Pods[f.Pod]))
        {
            var around = pod.BodyBox.Grow(isMany ? 0 : ApartMm * draft.Scale);
            if (pod.Type.Footprint is PodFootprint.Round)
            {
                draft.Add(layer, new Primitive.Disc(style, pod.Centre, around.Width / 2));
            }
            else
            {
                draft.AddBox(layer, style, around);
            }

            if (isMany)
            {
                continue;
            }

            draft.KeepOff(SheetDraft.RingOf(around));
            draft.Take(around);
        }
    }

    /// <summary>The words, each beside its pod; where there is no room, a mark of exclamation on the frame.</summary>
    public static void Words(SheetDraft draft, GridBoard board, Layout layout, ImmutableArray<PodFault> faults)
    {
        BesidePods beside = new(draft, board, layout, LetterSizes.OnPaper);
        foreach (var fault in faults.Length > Few ? [] : faults)
        {
            var (pod, u) = (layout.Pods[fault.Pod], draft.Scale);
            var words = fault.Counts ? "breaks a rule" : "not counted";
            if (beside.Find(pod, null, draft.TextBox(default, words, WordsMm, true).Grow(MarginMm * u)) is { } place)
            {
                beside.Take(place);
                Tag(draft, SheetDraft.Labels, place.Box, words);
                continue;
            }

            var body = pod.BodyBox;
            var size = draft.TextBox(default, "!", WordsMm, true).Grow(MarginMm * u);
            var corners = new Point2[] { new(body.MaxX, body.MaxY), new(body.MinX, body.MaxY), new(body.MinX, body.MinY), new(body.MaxX, body.MinY) };
            // The frame alone rather than over a number or a port.
            foreach (var corner in corners.Select(c => size.Moved(c)).Where(c => !draft.HasWord(c) && !draft.IsOnPort(c)).Take(1))
            {
                Tag(draft, SheetDraft.Labels, corner, "!");
                draft.AddWord(corner);
            }
        }
    }

    /// <summary>The legend's item.</summary>
    public static IEnumerable<PanelItem> Signs(SheetDraft? drawn) => drawn?.Shows("fault-frame") == false ? [] :
    [
        PanelItem.Sign("pod that breaks a rule or is not counted: read the warnings", "fault-frame", (draft, at) =>
        {
            var u = draft.Scale;
            Box2 body = new(at.X - 2.8 * u, at.Y - 1.3 * u, at.X + 2.8 * u, at.Y + 1.3 * u);
            draft.AddBox(SheetDraft.Panel, "pod", body);
            draft.AddBox(SheetDraft.Panel, "fault-frame", body.Grow(ApartMm * u));
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

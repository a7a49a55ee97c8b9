using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Seats;
using PodLayout.Shops;

namespace PodLayout.Handover.Picture;

/// <summary>The pods with their seals, ports and labels.</summary>
internal static class PodDrawing
{
    /// <summary>The pods that were to be kept: a heavy edge, drawn before the layout's own, which it shows around.</summary>
    public static void Kept(SheetDraft draft, Job job)
    {
        foreach (var pod in job.Keep.Select(k => KeptPods.Placed(k, job.Shop.Board)))
        {
            Body(draft, SheetDraft.Pods, "pod-kept", pod);
        }
    }

    /// <summary>Bodies, seals and ports.</summary>
    /// <param name="draft">The sheet.</param>
    /// <param name="board">The board.</param>
    /// <param name="layout">The layout.</param>
    /// <param name="staying">Indices of the pods that stand already: their bodies are grey.</param>
    public static void Bodies(SheetDraft draft, GridBoard board, Layout layout, params ImmutableArray<int> staying)
    {
        var radius = Symbols.PortRadius(draft, board.PortDiameterMm);
        var openPorts = LayoutFiling.OpenPorts(layout).ToList();
        for (var i = 0; i < layout.Pods.Length; i++)
        {
            var pod = layout.Pods[i];
            draft.Belongs = LayoutFiling.PodId(i);
            Body(draft, SheetDraft.Pods, "pod", pod);
            if (staying.Contains(i))
            {
                Within(draft, "pod-stays", pod, 0.3 * draft.Scale);
            }

            Seal(draft, pod);
            if (TurnedCorner(draft, board, pod) is var (corner, inwards))
            {
                Symbols.Turned(draft, SheetDraft.Seals, corner, inwards);
            }

            foreach (var port in board.Ports.Where(p => pod.BodyBox.Contains(p.Centre) && !openPorts.Contains(p)))
            {
                Symbols.Port(draft, SheetDraft.OpenPorts, port.Centre, radius, port.State);
            }

        }

        // Over all that is plugged, and off words where a pod that was moved by hand has left its port behind.
        foreach (var port in layout.Pods.SelectMany(p => p.OpenPorts))
        {
            draft.Belongs = LayoutFiling.PortId(openPorts.IndexOf(port));
            Symbols.OpenPort(draft, SheetDraft.OpenPorts, port.Centre, radius);
            if (!layout.Pods.Any(p => p.BodyBox.Contains(port.Centre)))
            {
                draft.Take(new Box2(port.Centre.X, port.Centre.Y, port.Centre.X, port.Centre.Y).Grow(1.3 * radius));
            }
        }

        draft.Belongs = null;
    }

    /// <summary>A pod's body.</summary>
    public static void Body(SheetDraft draft, string layer, string style, PlacedPod pod)
    {
        if (pod.Type.Footprint is PodFootprint.Round round)
        {
            draft.Add(layer, new Primitive.Disc(style, pod.Centre, round.DiameterMm / 2));
        }
        else
        {
            draft.AddBox(layer, style, pod.BodyBox);
        }

        draft.Take(pod.BodyBox);
    }

    /// <summary>The outer edge of a pod's upper seal.</summary>
    public static void Seal(SheetDraft draft, PlacedPod pod)
    {
        var inset = pod.Type.SealInsetAboveMm;
        if (inset > 0)
        {
            Within(draft, "seal", pod, inset);
        }
    }

    private static void Within(SheetDraft draft, string style, PlacedPod pod, double insetMm)
    {
        if (pod.Type.Footprint is PodFootprint.Round round)
        {
            draft.Add(SheetDraft.Seals, new Primitive.Disc(style, pod.Centre, round.DiameterMm / 2 - insetMm));
        }
        else
        {
            draft.AddBox(SheetDraft.Seals, style, pod.BodyBox.Grow(-insetMm));
        }
    }

    /// <summary>The same as a ring, a round one in chords; null where none is drawn.</summary>
    public static Ring? SealEdge(PlacedPod pod)
    {
        const int chords = 72;
        var inset = pod.Type.SealInsetAboveMm;
        return inset <= 0 ? null : pod.Type.Footprint is PodFootprint.Round round
            ? new([.. Enumerable.Range(0, chords).Select(i => pod.Centre + Turn.FromDegrees(360.0 * i / chords).Apply(new(round.DiameterMm / 2 - inset, 0)))])
            : SheetDraft.RingOf(pod.BodyBox.Grow(-inset));
    }

    /// <summary>
    /// The corner that the sign of a turned pod stands in, and the way inwards over its square: the first that no port's sign covers.
    /// Null where the pod is not turned, or so small that its number says it.
    /// </summary>
    public static (Point2 Corner, Point2 Inwards)? TurnedCorner(SheetDraft draft, GridBoard board, PlacedPod pod)
    {
        const double leastMm = 2.2, mostMm = 2.6, shareOfSide = 0.28, mostOfSide = 0.6;
        var (body, side) = (pod.BodyBox, Math.Min(pod.ExtentXMm, pod.ExtentYMm));
        var size = Math.Clamp(shareOfSide * side, leastMm * draft.Scale, mostMm * draft.Scale);
        if (!pod.Turned || size > mostOfSide * side)
        {
            return null;
        }

        var ports = PortSigns(draft, board, pod).ToList();
        (Point2 Corner, Point2 Inwards)[] corners =
        [
            (new(body.MinX, body.MaxY), new(size, -size)), (new(body.MaxX, body.MaxY), new(-size, -size)),
            (new(body.MinX, body.MinY), new(size, size)), (new(body.MaxX, body.MinY), new(-size, size)),
        ];
        return corners.Where(c => !ports.Exists(p => p.Touches(Box2.Around([c.Corner, c.Corner + c.Inwards * 0.8]))))
            .Select(c => ((Point2, Point2)?)c).FirstOrDefault();
    }

    /// <summary>What words and bars in a pod must not cover: its ports, and the sign of a turned pod.</summary>
    public static IEnumerable<Box2> Signs(SheetDraft draft, GridBoard board, PlacedPod pod)
    {
        foreach (var sign in PortSigns(draft, board, pod))
        {
            yield return sign;
        }

        if (TurnedCorner(draft, board, pod) is var (corner, inwards))
        {
            yield return Box2.Around([corner, corner + inwards * 0.8]);
        }
    }

    private static IEnumerable<Box2> PortSigns(SheetDraft draft, GridBoard board, PlacedPod pod)
    {
        var radius = 1.3 * Symbols.PortRadius(draft, board.PortDiameterMm) + 0.15 * draft.Scale;
        return board.Ports.Where(p => pod.BodyBox.Contains(p.Centre))
            .Select(p => new Box2(p.Centre.X, p.Centre.Y, p.Centre.X, p.Centre.Y).Grow(radius));
    }
}

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
    public static void Bodies(SheetDraft draft, GridBoard board, Layout layout)
    {
        var radius = Symbols.PortRadius(draft, board.PortDiameterMm);
        var openPorts = LayoutFiling.OpenPorts(layout).ToList();
        for (var i = 0; i < layout.Pods.Length; i++)
        {
            var pod = layout.Pods[i];
            draft.Belongs = LayoutFiling.PodId(i);
            Body(draft, SheetDraft.Pods, "pod", pod);
            Seal(draft, pod);
            if (pod.Turned)
            {
                var corner = UpperLeft(pod);
                Symbols.Turned(draft, SheetDraft.Seals, corner, TurnedSize(draft, pod));
            }

            foreach (var port in board.Ports.Where(p => pod.BodyBox.Contains(p.Centre) && !pod.OpenPorts.Contains(p)))
            {
                Symbols.Port(draft, SheetDraft.OpenPorts, port.Centre, radius, port.State);
            }

            foreach (var port in pod.OpenPorts)
            {
                draft.Belongs = LayoutFiling.PortId(openPorts.IndexOf(port));
                Symbols.OpenPort(draft, SheetDraft.OpenPorts, port.Centre, radius);
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
        if (inset <= 0)
        {
            return;
        }

        if (pod.Type.Footprint is PodFootprint.Round round)
        {
            draft.Add(SheetDraft.Seals, new Primitive.Disc("seal", pod.Centre, round.DiameterMm / 2 - inset));
        }
        else
        {
            draft.AddBox(SheetDraft.Seals, "seal", pod.BodyBox.Grow(-inset));
        }
    }

    /// <summary>Size of the sign of a turned pod.</summary>
    public static double TurnedSize(SheetDraft draft, PlacedPod pod) =>
        Math.Min(2.6 * draft.Scale, 0.28 * Math.Min(pod.ExtentXMm, pod.ExtentYMm));

    /// <summary>The corner that the sign of a turned pod stands in.</summary>
    public static Point2 UpperLeft(PlacedPod pod) => new(pod.BodyBox.MinX, pod.BodyBox.MaxY);

    /// <summary>What words and bars in a pod must not cover: its ports, and the sign of a turned pod.</summary>
    public static IEnumerable<Box2> Signs(SheetDraft draft, GridBoard board, PlacedPod pod)
    {
        var radius = 1.3 * Symbols.PortRadius(draft, board.PortDiameterMm) + 0.15 * draft.Scale;
        foreach (var port in board.Ports.Where(p => pod.BodyBox.Contains(p.Centre)))
        {
            yield return new Box2(port.Centre.X, port.Centre.Y, port.Centre.X, port.Centre.Y).Grow(radius);
        }

        if (pod.Turned)
        {
            var corner = UpperLeft(pod);
            var size = 0.8 * TurnedSize(draft, pod);
            yield return new(corner.X, corner.Y - size, corner.X + size, corner.Y);
        }
    }
}

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
        foreach (var pod in layout.Pods)
        {
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
                Symbols.OpenPort(draft, SheetDraft.OpenPorts, port.Centre, radius);
            }
        }
    }

    /// <summary>Ids, types and names of open ports, each inside its pod and off the ports.</summary>
    /// <param name="draft">The sheet.</param>
    /// <param name="board">The board.</param>
    /// <param name="layout">The layout.</param>
    /// <param name="shortNames">What stands in the pod for each type's name.</param>
    public static void Labels(SheetDraft draft, GridBoard board, Layout layout, IReadOnlyDictionary<string, string> shortNames)
    {
        for (var i = 0; i < layout.Pods.Length; i++)
        {
            Label(draft, board, layout.Pods[i], LayoutFiling.PodId(i), shortNames[layout.Pods[i].Type.Name]);
        }
    }

    private static void Body(SheetDraft draft, string layer, string style, PlacedPod pod)
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

    private static void Seal(SheetDraft draft, PlacedPod pod)
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

    private static double TurnedSize(SheetDraft draft, PlacedPod pod) =>
        Math.Min(2.6 * draft.Scale, 0.28 * Math.Min(pod.ExtentXMm, pod.ExtentYMm));

    private static Point2 UpperLeft(PlacedPod pod) => new(pod.BodyBox.MinX, pod.BodyBox.MaxY);

    private static void Label(SheetDraft draft, GridBoard board, PlacedPod pod, string id, string type)
    {
        var signs = Signs(draft, board, pod);
        double side = Math.Min(pod.ExtentXMm, pod.ExtentYMm), longSide = Math.Max(pod.ExtentXMm, pod.ExtentYMm);
        var largest = Math.Clamp((longSide >= 1.5 * side ? 0.45 : 0.34) * side / draft.Scale, 1.2, 4.2);
        for (var size = largest; ; size *= 0.88)
        {
            var isLast = size < 1.25;
            var words = new[] { (id, size, "pod-id"), (type, Math.Max(0.62 * size, 1.15), "pod-type") };
            var block = TextBlock(draft, pod, words, signs, false, false) ?? TextBlock(draft, pod, words, signs, true, isLast);
            if (block is null)
            {
                continue;
            }

            signs.Add(block.Value);
            PortNames(draft, pod, signs, Math.Clamp(0.6 * size, 1.2, 2.4));
            return;
        }
    }

    // What a label must not cover: ports, the turned mark.
    private static List<Box2> Signs(SheetDraft draft, GridBoard board, PlacedPod pod)
    {
        var radius = 1.3 * Symbols.PortRadius(draft, board.PortDiameterMm) + 0.15 * draft.Scale;
        var signs = board.Ports.Where(p => pod.BodyBox.Contains(p.Centre))
            .Select(p => new Box2(p.Centre.X, p.Centre.Y, p.Centre.X, p.Centre.Y).Grow(radius)).ToList();
        if (pod.Turned)
        {
            var corner = UpperLeft(pod);
            var size = 0.8 * TurnedSize(draft, pod);
            signs.Add(new(corner.X, corner.Y - size, corner.X + size, corner.Y));
        }

        return signs;
    }

    // Upright, or turned to be read from the right; null where there is no room (unless it must stand somewhere).
    private static Box2? TextBlock(
        SheetDraft draft, PlacedPod pod, (string Words, double Size, string Style)[] lines, List<Box2> signs, bool isTurned,
        bool isLast)
    {
        var u = draft.Scale;
        var length = lines.Max(l => TextMeasure.Width(l.Words, l.Size, l.Style == "pod-id")) * u;
        var depth = lines.Sum(l => l.Size) * 1.02 * u;
        var (width, height) = isTurned ? (depth, length) : (length, depth);
        var middle = FreePlace(pod, pod.BodyBox.Grow(-0.45 * u), width, height, signs);
        if (middle is null && !isLast)
        {
            return null;
        }

        var at = middle ?? pod.Centre;
        var block = new Box2(at.X - width / 2, at.Y - height / 2, at.X + width / 2, at.Y + height / 2);
        if (CrossesSeal(pod, block))
        {
            draft.AddBox(SheetDraft.Labels, "knockout", block);
        }

        var down = depth / 2;
        foreach (var (words, size, style) in lines)
        {
            var offset = down - size * u / 2;
            draft.AddText(
                SheetDraft.Labels, style, at + (isTurned ? new Point2(-offset, 0) : new Point2(0, offset)), words, size,
                TextAnchor.Middle, isTurned ? 90 : 0);
            down -= size * 1.02 * u;
        }

        return block;
    }

    private static Point2? FreePlace(PlacedPod pod, Box2 inner, double width, double height, List<Box2> signs)
    {
        var room = new Point2(inner.Width - width, inner.Height - height);
        if (room.X < 0 || room.Y < 0)
        {
            return null;
        }

        const int steps = 16;
        return Enumerable.Range(0, (steps + 1) * (steps + 1))
            .Select(i => pod.Centre + new Point2(room.X * (i % (steps + 1) - steps / 2) / steps, room.Y * (i / (steps + 1) - steps / 2) / steps))
            .Where(p => !signs.Any(s => s.Touches(new(p.X - width / 2, p.Y - height / 2, p.X + width / 2, p.Y + height / 2))))
            .Where(p => pod.Type.Footprint is PodFootprint.Rectangle
                || new Point2(Math.Abs(p.X - pod.Centre.X) + width / 2, Math.Abs(p.Y - pod.Centre.Y) + height / 2).Length
                    <= inner.Width / 2)
            .OrderBy(p => Math.Round((p - pod.Centre).Length, 6))
            .Select(p => (Point2?)p).FirstOrDefault();
    }

    private static bool CrossesSeal(PlacedPod pod, Box2 block) => pod.Type.Footprint is PodFootprint.Rectangle
        ? !pod.BodyBox.Grow(-pod.Type.SealInsetAboveMm).Contains(block)
        : new Point2(
            Math.Max(Math.Abs(block.MinX - pod.Centre.X), Math.Abs(block.MaxX - pod.Centre.X)),
            Math.Max(Math.Abs(block.MinY - pod.Centre.Y), Math.Abs(block.MaxY - pod.Centre.Y))).Length
            > pod.ExtentXMm / 2 - pod.Type.SealInsetAboveMm;

    private static void PortNames(SheetDraft draft, PlacedPod pod, List<Box2> signs, double size)
    {
        var u = draft.Scale;
        foreach (var port in pod.OpenPorts)
        {
            var box = draft.TextBox(default, port.Name, size);
            var sign = signs.First(s => s.Contains(port.Centre));
            double x = sign.Width / 2 + box.Width / 2 + 0.2 * u, y = sign.Height / 2 + box.Height / 2;
            Point2[] around = [new(x, 0), new(-x, 0), new(0, -y), new(0, y), new(x, y), new(x, -y), new(-x, y), new(-x, -y)];
            foreach (var offset in around)
            {
                var place = box.Moved(port.Centre + offset);
                if (pod.BodyBox.Grow(-0.3 * u).Contains(place) && !signs.Any(s => s.Touches(place)))
                {
                    if (CrossesSeal(pod, place))
                    {
                        draft.AddBox(SheetDraft.Labels, "knockout", place);
                    }

                    draft.AddText(SheetDraft.Labels, "port-name", place.Centre, port.Name, size, TextAnchor.Middle);
                    signs.Add(place);
                    break;
                }
            }
        }
    }
}

using PodLayout.Geometry;
using PodLayout.Layouts;
using PodLayout.Shops;

namespace PodLayout.Handover.Picture;

/// <summary>The words in and beside pods: ids, types, names of open ports.</summary>
internal static class PodLabels
{
    /// <summary>Ids, types and names of open ports, each inside its pod and off the ports.</summary>
    /// <param name="draft">The sheet.</param>
    /// <param name="board">The board.</param>
    /// <param name="layout">The layout.</param>
    /// <param name="shortNames">What stands in the pod for each type's name.</param>
    /// <param name="largestMm">The largest type that is used, mm of paper.</param>
    /// <param name="leastIdMm">
    /// Ids that would be smaller than this in their pods stand alone in them, or beside them where there is room; 0 for never.
    /// </param>
    public static void Draw(
        SheetDraft draft, GridBoard board, Layout layout, IReadOnlyDictionary<string, string> shortNames, double largestMm = 4.2,
        double leastIdMm = 0)
    {
        List<(PlacedPod Pod, int Index, Port Port, double Size)> outside = [];
        for (var i = 0; i < layout.Pods.Length; i++)
        {
            draft.Belongs = LayoutFiling.PodId(i);
            var pod = layout.Pods[i];
            var (left, size) = Label(draft, board, pod, draft.Belongs, shortNames[pod.Type.Name], largestMm, leastIdMm);
            outside.AddRange(left.Select(port => (pod, i, port, size)));
        }

        // Names of ports that found no room in their pods stand beside them.
        foreach (var (pod, index, port, size) in outside)
        {
            draft.Belongs = LayoutFiling.PodId(index);
            Beside(draft, pod, port.Centre, "port-name", port.Name, size);
        }

        draft.Belongs = null;
    }

    // The ports whose names found no room, and the size that they would have had.
    private static (IReadOnlyList<Port> Left, double Size) Label(
        SheetDraft draft, GridBoard board, PlacedPod pod, string id, string type, double largestMm,
        double leastIdMm)
    {
        var signs = Signs(draft, board, pod);
        double side = Math.Min(pod.ExtentXMm, pod.ExtentYMm), longSide = Math.Max(pod.ExtentXMm, pod.ExtentYMm);
        var largest = Math.Clamp((longSide >= 1.5 * side ? 0.45 : 0.34) * side / draft.Scale, 1.2, largestMm);
        if (leastIdMm > 0 && IdAlone(draft, pod, id, signs, largest, leastIdMm) is { } alone)
        {
            return (PortNames(draft, pod, signs, alone), alone);
        }

        for (var size = largest; ; size *= 0.88)
        {
            // Where ids have a least size they found no room beside the pod either, and shrink until they fit.
            var isLast = size < (leastIdMm > 0 ? 0.3 : 1.25);
            var words = new[] { (id, size, "pod-id"), (type, Math.Max(0.62 * size, leastIdMm > 0 ? 0 : 1.15), "pod-type") };
            var block = TextBlock(draft, pod, words, signs, false, false) ?? TextBlock(draft, pod, words, signs, true, isLast);
            if (block is null)
            {
                continue;
            }

            signs.Add(block.Value);
            var portSize = Math.Clamp(0.6 * size, 1.5, 0.6 * largestMm);
            return (PortNames(draft, pod, signs, portSize), portSize);
        }
    }

    // An id that would be too small with its type: alone, or beside its pod. The size of a port's name then; null where the id
    // is large enough as it is, or finds no place.
    private static double? IdAlone(SheetDraft draft, PlacedPod pod, string id, List<Box2> signs, double largest, double leastIdMm)
    {
        const double typeShare = 0.62, step = 0.88;
        var least = draft.TextBox(default, id, leastIdMm / step, true);
        if (FreePlace(pod, pod.BodyBox.Grow(-0.45 * draft.Scale), least.Width, least.Height * (1 + typeShare), signs) is not null)
        {
            return null;
        }

        for (var size = largest; size >= leastIdMm; size *= step)
        {
            if (TextBlock(draft, pod, [(id, size, "pod-id")], signs, false, false) is { } block)
            {
                signs.Add(block);
                return Math.Max(0.6 * size, 0.75 * leastIdMm);
            }
        }

        return Beside(draft, pod, pod.Centre, "pod-id", id, leastIdMm) ? 0.75 * leastIdMm : null;
    }

    // What a label must not cover: ports, the turned mark.
    private static List<Box2> Signs(SheetDraft draft, GridBoard board, PlacedPod pod)
    {
        var radius = 1.3 * Symbols.PortRadius(draft, board.PortDiameterMm) + 0.15 * draft.Scale;
        var signs = board.Ports.Where(p => pod.BodyBox.Contains(p.Centre))
            .Select(p => new Box2(p.Centre.X, p.Centre.Y, p.Centre.X, p.Centre.Y).Grow(radius)).ToList();
        if (pod.Turned)
        {
            var corner = PodDrawing.UpperLeft(pod);
            var size = 0.8 * PodDrawing.TurnedSize(draft, pod);
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

    private static List<Port> PortNames(SheetDraft draft, PlacedPod pod, List<Box2> signs, double size)
    {
        var u = draft.Scale;
        List<Port> left = [];
        foreach (var port in pod.OpenPorts)
        {
            var box = draft.TextBox(default, port.Name, size);
            // A pod that was moved by hand may have left its port behind: the name then stands beside the port.
            if (!signs.Exists(s => s.Contains(port.Centre)))
            {
                left.Add(port);
                continue;
            }

            var sign = signs.First(s => s.Contains(port.Centre));
            double x = sign.Width / 2 + box.Width / 2 + 0.2 * u, y = sign.Height / 2 + box.Height / 2;
            Point2[] around = [new(x, 0), new(-x, 0), new(0, -y), new(0, y), new(x, y), new(x, -y), new(-x, y), new(-x, -y)];
            var places = around.Select(offset => box.Moved(port.Centre + offset))
                .Where(place => pod.BodyBox.Grow(-0.3 * u).Contains(place) && !signs.Any(s => s.Touches(place))).ToList();
            if (places.Count == 0)
            {
                left.Add(port);
                continue;
            }

            if (CrossesSeal(pod, places[0]))
            {
                draft.AddBox(SheetDraft.Labels, "knockout", places[0]);
            }

            draft.AddText(SheetDraft.Labels, "port-name", places[0].Centre, port.Name, size, TextAnchor.Middle);
            signs.Add(places[0]);
        }

        return left;
    }

    // Along the pod's sides, as near to a point of it as other pods and words allow; false where there is no room.
    private static bool Beside(SheetDraft draft, PlacedPod pod, Point2 near, string style, string words, double size)
    {
        var u = draft.Scale;
        var box = draft.TextBox(default, words, size, PictureStyles.Of(style).IsBold);
        var body = pod.BodyBox.Grow(0.4 * u);
        double[] steps = [0, 0.25, -0.25, 0.5, -0.5, 0.75, -0.75, 1, -1];
        var places = steps.SelectMany(s => new Point2[]
        {
            new(Math.Clamp(near.X + s * pod.ExtentXMm, body.MinX, body.MaxX), body.MinY - box.Height / 2),
            new(Math.Clamp(near.X + s * pod.ExtentXMm, body.MinX, body.MaxX), body.MaxY + box.Height / 2),
            new(body.MaxX + box.Width / 2, Math.Clamp(near.Y + s * pod.ExtentYMm, body.MinY, body.MaxY)),
            new(body.MinX - box.Width / 2, Math.Clamp(near.Y + s * pod.ExtentYMm, body.MinY, body.MaxY)),
        }).OrderBy(p => Math.Round((p - near).Length, 6)).Select(p => box.Moved(p));
        foreach (var place in places.Where(p => draft.IsFree(p)).Take(1))
        {
            draft.AddBox(SheetDraft.Labels, "knockout", place);
            draft.AddText(SheetDraft.Labels, style, place.Centre, words, size, TextAnchor.Middle);
            draft.Take(place);
            return true;
        }

        return false;
    }
}

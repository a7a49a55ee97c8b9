using PodLayout.Geometry;
using PodLayout.Layouts;
using PodLayout.Shops;

namespace PodLayout.Handover.Picture;

/// <summary>The words in and beside pods: ids, types, names of open ports. None stands on another, on a sign or on a line.</summary>
internal static class PodLabels
{
    // Type of the names of ports, mm of paper: smaller than this it is not read, and the tables name the ports as well.
    private const double LeastPortMm = 1.45;

    // Names of ports are let into a pod at the cost of so much of the size of its id; and ids give way so far to stay off a line.
    private const double GivesWay = 0.7;

    private const double Step = 0.88;
    private const double TypeShare = 0.62;

    /// <summary>Ids, types and names of open ports, each inside its pod and off the ports.</summary>
    /// <param name="draft">The sheet.</param>
    /// <param name="board">The board.</param>
    /// <param name="layout">The layout.</param>
    /// <param name="shortNames">What stands in the pod for each type's name; nothing where it is empty.</param>
    /// <param name="largestMm">The largest type that is used, mm of paper.</param>
    /// <param name="leastIdMm">
    /// Ids that would be smaller than this in their pods stand alone in them, or beside them where there is room; 0 for never.
    /// </param>
    public static void Draw(
        SheetDraft draft, GridBoard board, Layout layout, IReadOnlyDictionary<string, string> shortNames, double largestMm = 4.2,
        double leastIdMm = 0)
    {
        List<PortOutside> outside = [];
        for (var i = 0; i < layout.Pods.Length; i++)
        {
            draft.Belongs = LayoutFiling.PodId(i);
            PodRoom room = new(draft, board, layout.Pods[i]);
            outside.AddRange(Label(room, draft.Belongs, shortNames[room.Pod.Type.Name], largestMm, leastIdMm));
        }

        // Names of ports that found no room in their pods stand beside them. Where pods are so small that their ids alone fill
        // them, either all such names are there or none: a few would be taken for the only ports to open.
        List<(PortOutside Port, Box2 Place, double Size)> beside = [];
        foreach (var port in outside)
        {
            if (Beside(draft, port.Pod, port.Port.Centre, "port-name", port.Port.Name, port.Size, beside.ConvertAll(b => b.Place)) is var (place, size))
            {
                beside.Add((port, place, size));
            }
        }

        var isWhole = outside.Count(p => p.IsCramped) == beside.Count(b => b.Port.IsCramped);
        foreach (var (port, place, size) in beside.Where(b => isWhole || !b.Port.IsCramped))
        {
            draft.Belongs = LayoutFiling.PodId(layout.Pods.IndexOf(port.Pod));
            Write(draft, place, "port-name", port.Port.Name, size);
        }

        draft.Belongs = null;
    }

    // The ports whose names found no room.
    private static IEnumerable<PortOutside> Label(PodRoom room, string id, string type, double largestMm, double leastIdMm)
    {
        double side = Math.Min(room.Pod.ExtentXMm, room.Pod.ExtentYMm), longSide = Math.Max(room.Pod.ExtentXMm, room.Pod.ExtentYMm);
        var largest = Math.Clamp((longSide >= 1.5 * side ? 0.45 : 0.34) * side / room.Draft.Scale, 1.2, largestMm);
        if (leastIdMm > 0 && !FitsWithType(room, id, type, leastIdMm))
        {
            // An id that can be read on a line is better than a smaller one beside it.
            foreach (var overLines in new[] { false, true })
            {
                room.OverLines = overLines;
                foreach (var size in Sizes(Math.Max(largest, leastIdMm), leastIdMm))
                {
                    if (room.Place([(id, size, "pod-id")], isTurned: false) is { } block)
                    {
                        room.Write(block, [(id, size, "pod-id")], isTurned: false);
                        return Left(room, Math.Max(0.6 * size, 0.75 * leastIdMm), isCramped: true);
                    }
                }

                if (Beside(room.Draft, room.Pod, room.Pod.Centre, "pod-id", id, leastIdMm, [], leastIdMm, overLines) is var (place, beside))
                {
                    Write(room.Draft, place, "pod-id", id, beside);
                    return Left(room, 0.75 * leastIdMm, isCramped: true);
                }

                if (room.Place([(id, Step * leastIdMm, "pod-id")], isTurned: false) is { } smaller)
                {
                    room.Write(smaller, [(id, Step * leastIdMm, "pod-id")], isTurned: false);
                    return Left(room, 0.75 * leastIdMm, isCramped: true);
                }
            }

            room.OverLines = false;
        }

        (string, double, string)[] Words(double size) => type.Length == 0
            ? [(id, size, "pod-id")] : [(id, size, "pod-id"), (type, Math.Max(TypeShare * size, leastIdMm > 0 ? 0 : 1.15), "pod-type")];
        double PortSize(double size) => Math.Clamp(0.6 * size, LeastPortMm, 0.6 * largestMm);
        foreach (var size in Sizes(largest, GivesWay * largest))
        {
            if (room.PlaceWithPorts(Words(size), PortSize(size)) is var (block, ports))
            {
                room.Write(block, Words(size), isTurned: false);
                room.WritePorts(ports, PortSize(size));
                return [];
            }
        }

        foreach (var size in Sizes(largest, GivesWay * largest))
        {
            if (room.Place(Words(size), isTurned: false) is { } block)
            {
                room.Write(block, Words(size), isTurned: false);
                return Left(room, PortSize(size), isCramped: false);
            }
        }

        // Nothing fits as it should: smaller and smaller, turned to be read from the right, and over a line.
        room.OverLines = true;
        for (var size = largest; ; size *= Step)
        {
            // Where ids have a least size they found no room beside the pod either, and shrink until they fit.
            var isLast = size < (leastIdMm > 0 ? 0.3 : 1.25);
            var isTurned = room.Place(Words(size), isTurned: false) is null;
            if (room.Place(Words(size), isTurned, isLast) is { } block)
            {
                room.Write(block, Words(size), isTurned);
                return Left(room, PortSize(size), isCramped: false);
            }
        }
    }

    private static IEnumerable<PortOutside> Left(PodRoom room, double size, bool isCramped)
    {
        var inside = room.PlacePorts(size);
        room.WritePorts(inside, size);
        return [.. room.Pod.OpenPorts.Where(p => !inside.Exists(i => i.Port == p)).Select(p => new PortOutside(room.Pod, p, size, isCramped))];
    }

    private static bool FitsWithType(PodRoom room, string id, string type, double leastIdMm)
    {
        const double share = 1 + TypeShare;
        var least = leastIdMm / Step;
        var box = room.Draft.TextBox(default, id, least, true);
        return room.FreePlace(box.Width, box.Height * (type.Length == 0 ? 1 : share)) is not null;
    }

    private static IEnumerable<double> Sizes(double largest, double least)
    {
        for (var size = largest; size >= least; size *= Step)
        {
            yield return size;
        }
    }

    // Along the pod's sides, as near to a point of it as other pods, words and lines allow; null where there is no room.
    private static (Box2 Place, double Size)? Beside(
        SheetDraft draft, PlacedPod pod, Point2 near, string style, string words, double largest, List<Box2> besides, double least = LeastPortMm,
        bool overLines = false)
    {
        var u = draft.Scale;
        var body = pod.BodyBox.Grow(0.4 * u);
        double[] steps = [0, 0.25, -0.25, 0.5, -0.5, 0.75, -0.75, 1, -1];
        foreach (var size in Sizes(largest, Math.Min(least, largest)))
        {
            var box = draft.TextBox(default, words, size, PictureStyles.Of(style).IsBold);
            var places = steps.SelectMany(s => new Point2[]
            {
                new(Math.Clamp(near.X + s * pod.ExtentXMm, body.MinX, body.MaxX), body.MinY - box.Height / 2),
                new(Math.Clamp(near.X + s * pod.ExtentXMm, body.MinX, body.MaxX), body.MaxY + box.Height / 2),
                new(body.MaxX + box.Width / 2, Math.Clamp(near.Y + s * pod.ExtentYMm, body.MinY, body.MaxY)),
                new(body.MinX - box.Width / 2, Math.Clamp(near.Y + s * pod.ExtentYMm, body.MinY, body.MaxY)),
            }).OrderBy(p => Math.Round((p - near).Length, 6)).Select(p => box.Moved(p));
            foreach (var place in places.Where(p => draft.IsFree(p) && (overLines || !draft.IsCrossed(p)) && !besides.Exists(b => b.Touches(p))).Take(1))
            {
                return (place, size);
            }
        }

        return null;
    }

    private static void Write(SheetDraft draft, Box2 place, string style, string words, double size)
    {
        draft.AddBox(SheetDraft.Labels, "knockout", place);
        draft.AddText(SheetDraft.Labels, style, place.Centre, words, size, TextAnchor.Middle);
        draft.Take(place);
        draft.AddWord(place);
    }

    /// <summary>A port whose name stands beside its pod.</summary>
    /// <param name="Pod">The pod.</param>
    /// <param name="Port">The port.</param>
    /// <param name="Size">Size of its name, mm of paper.</param>
    /// <param name="IsCramped">Whether the pod has room for no more than its id.</param>
    private sealed record PortOutside(PlacedPod Pod, Port Port, double Size, bool IsCramped);
}

using PodLayout.Geometry;
using PodLayout.Layouts;
using PodLayout.Shops;

namespace PodLayout.Handover.Picture;

/// <summary>The room for words in one pod: what is left between its ports, the other signs on it and the lines across it.</summary>
internal sealed class PodRoom
{
    // Tries for the names of more ports than this would be too many: they are then put down one after the other.
    private const int MostTries = 512;

    private readonly List<Box2> signs;
    private readonly List<(Point2 A, Point2 B)> lines;

    public PodRoom(SheetDraft draft, GridBoard board, PlacedPod pod)
    {
        (Draft, Pod) = (draft, pod);
        signs = [.. PodDrawing.Signs(draft, board, pod), .. draft.SignsOn(pod.BodyBox)];
        lines = [.. draft.LinesOver(pod.BodyBox)];
    }

    public SheetDraft Draft { get; }

    public PlacedPod Pod { get; }

    /// <summary>Whether words may stand on lines here.</summary>
    public bool OverLines { get; set; }

    /// <summary>A place for lines of text, upright or turned to be read from the right; null where there is no room (unless it must stand somewhere).</summary>
    public Box2? Place((string Words, double Size, string Style)[] words, bool isTurned, bool isLast = false)
    {
        var (length, depth) = Extent(words);
        var (width, height) = isTurned ? (depth, length) : (length, depth);
        var middle = FreePlace(width, height) ?? (isLast ? Pod.Centre : null);
        return middle is { } at ? new(at.X - width / 2, at.Y - height / 2, at.X + width / 2, at.Y + height / 2) : null;
    }

    /// <summary>A place for upright lines of text that leaves room for the names of all open ports; null where there is none.</summary>
    public (Box2 Block, List<(Port Port, Box2 Place)> Ports)? PlaceWithPorts((string Words, double Size, string Style)[] words, double portSize)
    {
        var (width, height) = Extent(words);
        var tries = 0;
        return Pod.OpenPorts.All(IsOnPod) ? Next([]) : null;

        (Box2, List<(Port, Box2)>)? Next(List<(Port Port, Box2 Place)> placed)
        {
            if (placed.Count == Pod.OpenPorts.Length)
            {
                return FreePlace(width, height, placed.ConvertAll(p => p.Place)) is { } at
                    ? (new(at.X - width / 2, at.Y - height / 2, at.X + width / 2, at.Y + height / 2), placed) : null;
            }

            var port = Pod.OpenPorts[placed.Count];
            foreach (var place in PortPlaces(port, portSize).Where(place => !placed.Exists(p => p.Place.Touches(place))))
            {
                if (tries++ > MostTries)
                {
                    return null;
                }

                if (Next([.. placed, (port, place)]) is { } found)
                {
                    return found;
                }
            }

            return null;
        }
    }

    /// <summary>Places for the names of as many open ports as there is room for.</summary>
    public List<(Port Port, Box2 Place)> PlacePorts(double size)
    {
        List<(Port Port, Box2 Place)> placed = [];
        foreach (var port in Pod.OpenPorts.Where(IsOnPod))
        {
            foreach (var place in PortPlaces(port, size).Where(place => !placed.Exists(p => p.Place.Touches(place))).Take(1))
            {
                placed.Add((port, place));
            }
        }

        return placed;
    }

    /// <summary>Writes lines of text into a place, which is then taken.</summary>
    public void Write(Box2 block, (string Words, double Size, string Style)[] lines, bool isTurned)
    {
        var u = Draft.Scale;
        if (CrossesSeal(block) || Crosses(block))
        {
            Draft.AddBox(SheetDraft.Labels, "knockout", block);
        }

        var down = (isTurned ? block.Width : block.Height) / 2;
        foreach (var (words, size, style) in lines)
        {
            var offset = down - size * u / 2;
            Draft.AddText(
                SheetDraft.Labels, style, block.Centre + (isTurned ? new Point2(-offset, 0) : new Point2(0, offset)), words, size,
                TextAnchor.Middle, isTurned ? 90 : 0);
            down -= size * 1.02 * u;
        }

        signs.Add(block);
        Draft.AddWord(block);
    }

    public void WritePorts(List<(Port Port, Box2 Place)> ports, double size)
    {
        foreach (var (port, place) in ports)
        {
            if (CrossesSeal(place))
            {
                Draft.AddBox(SheetDraft.Labels, "knockout", place);
            }

            Draft.AddText(SheetDraft.Labels, "port-name", place.Centre, port.Name, size, TextAnchor.Middle);
            signs.Add(place);
            Draft.AddWord(place);
        }
    }

    /// <summary>The middle of a free place nearest to the pod's own; null where there is none.</summary>
    public Point2? FreePlace(double width, double height, IReadOnlyList<Box2>? besides = null)
    {
        var inner = Pod.BodyBox.Grow(-0.45 * Draft.Scale);
        var room = new Point2(inner.Width - width, inner.Height - height);
        if (room.X < 0 || room.Y < 0)
        {
            return null;
        }

        const int steps = 16;
        return Enumerable.Range(0, (steps + 1) * (steps + 1))
            .Select(i => Pod.Centre + new Point2(room.X * (i % (steps + 1) - steps / 2) / steps, room.Y * (i / (steps + 1) - steps / 2) / steps))
            .Where(p => Pod.Type.Footprint is PodFootprint.Rectangle
                || new Point2(Math.Abs(p.X - Pod.Centre.X) + width / 2, Math.Abs(p.Y - Pod.Centre.Y) + height / 2).Length
                    <= inner.Width / 2)
            .OrderBy(p => Math.Round((p - Pod.Centre).Length, 6))
            .Where(p => IsFree(new(p.X - width / 2, p.Y - height / 2, p.X + width / 2, p.Y + height / 2), besides ?? []))
            .Select(p => (Point2?)p).FirstOrDefault();
    }

    private bool IsFree(Box2 place, IReadOnlyList<Box2> besides) =>
        !signs.Exists(s => s.Touches(place)) && !besides.Any(s => s.Touches(place)) && (OverLines || !Crosses(place));

    private bool Crosses(Box2 place) => lines.Exists(l => EdgePath.Touches(place, l.A, l.B));

    private (double Length, double Depth) Extent((string Words, double Size, string Style)[] lines) => (
        lines.Max(l => TextMeasure.Width(l.Words, l.Size, l.Style == "pod-id")) * Draft.Scale, lines.Sum(l => l.Size) * 1.02 * Draft.Scale);

    // A pod that was moved by hand may have left its port behind: the name then stands beside the port.
    private bool IsOnPod(Port port) => signs.Exists(s => s.Contains(port.Centre));

    // Around the port's sign, inside the pod.
    private IEnumerable<Box2> PortPlaces(Port port, double size)
    {
        var u = Draft.Scale;
        var box = Draft.TextBox(default, port.Name, size);
        var sign = signs.First(s => s.Contains(port.Centre));
        double x = sign.Width / 2 + box.Width / 2 + 0.2 * u, y = sign.Height / 2 + box.Height / 2;
        Point2[] around = [new(x, 0), new(-x, 0), new(0, -y), new(0, y), new(x, y), new(x, -y), new(-x, y), new(-x, -y)];
        return around.Select(offset => box.Moved(port.Centre + offset))
            .Where(place => Pod.BodyBox.Grow(-0.3 * u).Contains(place) && IsFree(place, []));
    }

    private bool CrossesSeal(Box2 block) => Pod.Type.Footprint is PodFootprint.Rectangle
        ? !Pod.BodyBox.Grow(-Pod.Type.SealInsetAboveMm).Contains(block)
        : new Point2(
            Math.Max(Math.Abs(block.MinX - Pod.Centre.X), Math.Abs(block.MaxX - Pod.Centre.X)),
            Math.Max(Math.Abs(block.MinY - Pod.Centre.Y), Math.Abs(block.MaxY - Pod.Centre.Y))).Length
            > Pod.ExtentXMm / 2 - Pod.Type.SealInsetAboveMm;
}

using PodLayout.Geometry;
using PodLayout.Layouts;
using PodLayout.Shops;

namespace PodLayout.Handover.Picture;

/// <summary>The room for words in one pod: what is left between its ports, its seal, the other signs on it and the lines across it.</summary>
internal sealed class PodRoom
{
    // Tries for the names of more ports than this would be too many: they are then put down one after the other.
    private const int MostTries = 512;

    // Half of what the part's edge is wide, and a little.
    private const double HalfLineMm = 0.35;

    private readonly List<Box2> signs;
    private readonly List<Box2> plugged;
    private readonly List<(Point2 A, Point2 B)> lines;
    private readonly List<(Point2 A, Point2 B)> seal;

    public PodRoom(SheetDraft draft, GridBoard board, Layout layout, PlacedPod pod)
    {
        (Draft, Pod) = (draft, pod);
        List<Point2> stayPlugged =
        [
            .. board.Ports.Where(p => p.State == PortState.Working && pod.BodyBox.Contains(p.Centre) && !layout.Pods.Any(o => o.OpenPorts.Any(q => q.Centre == p.Centre))).Select(p => p.Centre),
        ];
        var isPlugged = PodDrawing.Signs(draft, board, pod).ToLookup(s => stayPlugged.Exists(p => (s.Centre - p).Length < 1e-6));
        plugged = [.. isPlugged[true]];
        signs = [.. isPlugged[false], .. draft.SignsOn(pod.BodyBox), .. draft.WordsOn(pod.BodyBox)];
        lines = [.. draft.LinesOver(pod.BodyBox, onPods: true)];
        seal = [.. PodDrawing.SealEdge(pod) is { } ring ? EdgePath.Sides(ring) : []];
    }

    public SheetDraft Draft { get; }

    public PlacedPod Pod { get; }

    /// <summary>Whether words may hide ports that stay plugged under the pod.</summary>
    public bool OverPlugged { get; set; }

    /// <summary>Whether words may interrupt the seal's line.</summary>
    public bool OverSeal { get; set; }

    /// <summary>Whether words may stand on lines here.</summary>
    public bool OverLines { get; set; }

    /// <summary>A place for lines of text that leaves room for the names of all open ports; null where there is none.</summary>
    public (Point2 Middle, List<(Port Port, Box2 Place)> Ports)? PlaceWithPorts(PodBlock block, double portSize)
    {
        var tries = 0;
        return Pod.OpenPorts.All(IsOnPod) ? Next([]) : null;

        (Point2, List<(Port, Box2)>)? Next(List<(Port Port, Box2 Place)> placed)
        {
            if (placed.Count == Pod.OpenPorts.Length)
            {
                return Place(block, placed.ConvertAll(p => p.Place.Grow(0.25 * Draft.Scale))) is { } at ? (at, placed) : null;
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

    /// <summary>Writes a block about a point; its place is then taken.</summary>
    public void Write(PodBlock block, Point2 middle)
    {
        var box = block.At(middle, Draft.Scale);
        if (Crosses(box, seal) || Crosses(box, lines) || plugged.Exists(p => p.Touches(box)))
        {
            Draft.AddBox(SheetDraft.Labels, "knockout", box);
        }

        block.Draw(Draft, middle);
        signs.Add(box);
        Draft.AddWord(box);
    }

    public void WritePorts(List<(Port Port, Box2 Place)> ports, double size)
    {
        foreach (var (port, place) in ports)
        {
            if (plugged.Exists(p => p.Touches(place)))
            {
                Draft.AddBox(SheetDraft.Labels, "knockout", place);
            }

            Draft.AddText(SheetDraft.Labels, "port-name", place.Centre, port.Name, size, TextAnchor.Middle);
            signs.Add(place);
            Draft.AddWord(place);
        }
    }

    /// <summary>The middle of a free place nearest to the pod's own; null where there is none.</summary>
    public Point2? Place(PodBlock block, IReadOnlyList<Box2>? besides = null)
    {
        var inner = Pod.BodyBox.Grow(-0.45 * Draft.Scale);
        var room = new Point2(inner.Width - block.Width * Draft.Scale, inner.Height - block.Height * Draft.Scale);
        if (room.X < 0 || room.Y < 0)
        {
            return null;
        }

        const int steps = 16;
        return Enumerable.Range(0, (steps + 1) * (steps + 1))
            .Select(i => Pod.Centre + new Point2(room.X * (i % (steps + 1) - steps / 2) / steps, room.Y * (i / (steps + 1) - steps / 2) / steps))
            .OrderBy(p => Math.Round((p - Pod.Centre).Length, 6))
            .Where(p => IsFree(block.At(p, Draft.Scale), besides ?? []))
            .Select(p => (Point2?)p).FirstOrDefault();
    }

    private bool IsFree(Box2 place, IReadOnlyList<Box2> besides) => IsInBody(place)
        && !signs.Exists(s => s.Touches(place)) && (OverPlugged || !plugged.Exists(s => s.Touches(place))) && !besides.Any(s => s.Touches(place))
        && (OverSeal || !Crosses(place.Grow(0.15 * Draft.Scale), seal)) && (OverLines || !Crosses(place.Grow(HalfLineMm * Draft.Scale), lines));

    private bool IsInBody(Box2 place) => Pod.Type.Footprint is PodFootprint.Rectangle || new Point2(
        Math.Max(Math.Abs(place.MinX - Pod.Centre.X), Math.Abs(place.MaxX - Pod.Centre.X)),
        Math.Max(Math.Abs(place.MinY - Pod.Centre.Y), Math.Abs(place.MaxY - Pod.Centre.Y))).Length <= Pod.ExtentXMm / 2 - 0.45 * Draft.Scale;

    private static bool Crosses(Box2 place, List<(Point2 A, Point2 B)> lines) => lines.Exists(l => EdgePath.Touches(place, l.A, l.B));

    // A pod that was moved by hand may have left its port behind: the name then stands beside the port.
    private bool IsOnPod(Port port) => signs.Exists(s => s.Contains(port.Centre));

    // Around the port's sign and against it, inside the pod.
    private IEnumerable<Box2> PortPlaces(Port port, double size)
    {
        var u = Draft.Scale;
        var box = Draft.TextBox(default, port.Name, size);
        var sign = signs.First(s => s.Contains(port.Centre));
        double x = sign.Width / 2 + box.Width / 2 + 0.2 * u, y = sign.Height / 2 + box.Height / 2 + 0.1 * u;
        var beside = new[] { 0, 0.4, -0.4, 0.8, -0.8, 1 }.SelectMany(s => new Point2[] { new(x, s * y), new(-x, s * y) });
        var above = new[] { 0, 0.35, -0.35, 0.7, -0.7, 1, -1 }.SelectMany(s => new Point2[] { new(s * x, -y), new(s * x, y) });
        return beside.Concat(above).OrderBy(p => Math.Round(Math.Abs(p.X * p.Y), 6)).Select(offset => box.Moved(port.Centre + offset))
            .Where(place => Pod.BodyBox.Grow(-0.3 * u).Contains(place) && IsFree(place, []));
    }
}

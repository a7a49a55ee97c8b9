using PodLayout.Geometry;
using PodLayout.Layouts;
using PodLayout.Shops;

namespace PodLayout.Handover.Picture;

/// <summary>
/// The words in and beside pods: numbers, types, names of open ports. None stands on another, on a sign or on a line; those that find
/// no room in their pods stand outside with a line to what they name, and what finds none there either is told of in the legend.
/// </summary>
/// <param name="draft">The sheet; everything but words is drawn.</param>
/// <param name="board">The board.</param>
/// <param name="layout">The layout.</param>
/// <param name="shortNames">What stands in the pod for each type's name; nothing where it is empty.</param>
/// <param name="sizes">How large they are.</param>
internal sealed partial class PodLabels(
    SheetDraft draft, GridBoard board, Layout layout, IReadOnlyDictionary<string, string> shortNames, LetterSizes sizes)
{
    // Numbers give way so far to let the names of ports into their pods.
    private const double GivesWay = 0.7;

    private const double Step = 0.9;

    private readonly BesidePods beside = new(draft, board, layout, sizes);
    private readonly List<int> podsOutside = [];
    private readonly List<(int Pod, Port Port)> portsOutside = [];

    /// <summary>The pods that words belong to, where it is not all of them.</summary>
    public IReadOnlyList<int>? Only { get; init; }

    /// <summary>Whether numbers that would be too small to be read are left out, since they are read elsewhere.</summary>
    public bool LeavesOutTooSmall { get; init; }

    /// <summary>The pods whose numbers are too small to be read, once all are written.</summary>
    public IReadOnlyList<int> TooSmall { get; private set; } = [];

    /// <summary>What finds room in the pods.</summary>
    public void Inside() => Each(Only ?? [.. Enumerable.Range(0, layout.Pods.Length)], i =>
    {
        PodRoom room = new(draft, board, layout, layout.Pods[i]);
        foreach (var isOverPlugged in new[] { false, true })
        {
            room.OverPlugged = isOverPlugged;
            if (WithPorts(room, i) || Alone(room, i))
            {
                return;
            }
        }

        podsOutside.Add(i);
    });

    /// <summary>Around the pods whose words will stand beside them, before they do.</summary>
    public IReadOnlyList<Box2> WantedOutside() =>
        [.. podsOutside.Select(i => layout.Pods[i].BodyBox.Grow(1.6 * sizes.LeastId * draft.Scale))];

    /// <summary>The others: first the numbers, then the names of ports.</summary>
    public void Outside()
    {
        var (shares, worthMm) = podsOutside.Count > sizes.Few ? (sizes.WhereMany, sizes.WorthWhereManyMm) : (sizes.WhereFew, sizes.WorthWhereFewMm);
        if (sizes.Narrower.IsEmpty)
        {
            TooSmall = Numbers((podsOutside, shares), worthMm).Without;
        }
        else
        {
            TooSmall = Numbers(Chosen(shares, worthMm), worthMm).Without;
        }

        PortsLeftBehind();
        PortsOutside();
        draft.Belongs = null;
    }

    private void Each(IEnumerable<int> pods, Action<int> write)
    {
        foreach (var i in pods)
        {
            draft.Belongs = LayoutFiling.PodId(i);
            write(i);
        }

        draft.Belongs = null;
    }

    private string TypeOf(PlacedPod pod) => shortNames[pod.Type.Name];

    private bool SaysTurn(PlacedPod pod) => pod.Turned && PodDrawing.TurnedCorner(draft, board, pod) is null;

    // Large in large pods; in a small one, as large as it must be at least.
    private double Largest(PlacedPod pod)
    {
        double side = Math.Min(pod.ExtentXMm, pod.ExtentYMm), longSide = Math.Max(pod.ExtentXMm, pod.ExtentYMm);
        return Math.Clamp((longSide >= 1.5 * side ? 0.45 : 0.34) * side / draft.Scale, sizes.LeastId, sizes.LargestId);
    }

    private PodBlock.Face FaceOf(PlacedPod pod, double size, double narrow = 1) =>
        new(size, Math.Min(sizes.Least, size), SaysTurn(pod), sizes.IsTight, narrow);

    private IEnumerable<PodBlock> Blocks(PlacedPod pod, int index, double size, double narrow = 1)
    {
        var (id, type, face) = (LayoutFiling.PodId(index), TypeOf(pod), FaceOf(pod, size, narrow));
        yield return PodBlock.Stacked(id, type, face);
        if (type.Length > 0)
        {
            yield return PodBlock.InLine(id, type, face);
        }
    }

    private static IEnumerable<double> Sizes(double largest, double least)
    {
        for (var size = largest; size > least; size *= Step)
        {
            yield return size;
        }

        yield return least;
    }

    private double PortSize(double idSize) => Math.Clamp(0.6 * idSize, sizes.Port, Math.Max(sizes.Port, 0.6 * sizes.LargestId));

    private bool WithPorts(PodRoom room, int index)
    {
        var largest = Largest(room.Pod);
        foreach (var size in Sizes(largest, Math.Max(sizes.LeastId, GivesWay * largest)))
        {
            foreach (var portSize in new[] { PortSize(size), (sizes.Port + sizes.Least) / 2 })
            {
                if (Fits(size, portSize))
                {
                    return true;
                }
            }
        }

        return Sizes(largest, sizes.LeastId).Any(size => Fits(size, sizes.Least));

        bool Fits(double size, double portSize)
        {
            foreach (var block in Blocks(room.Pod, index, size))
            {
                if (room.PlaceWithPorts(block, portSize) is var (middle, ports))
                {
                    room.Write(block, middle);
                    room.WritePorts(ports, portSize);
                    return true;
                }
            }

            return false;
        }
    }

    // Together, then wherever each finds room, then a little smaller.
    private bool Alone(PodRoom room, int index)
    {
        foreach (var (size, narrow) in Sizes(Largest(room.Pod), sizes.LeastId).Select(s => (s, 1.0))
            .Append((sizes.LeastInside * sizes.LeastId, 1)))
        {
            foreach (var block in Blocks(room.Pod, index, size, narrow))
            {
                if (room.Place(block) is { } middle)
                {
                    room.Write(block, middle);
                    Ports(room, index);
                    return true;
                }
            }

            if (size <= sizes.LeastId && Parted(room, index, size, narrow))
            {
                Ports(room, index);
                return true;
            }
        }

        return false;
    }

    private bool Small(PodRoom room, int index)
    {
        foreach (var (size, narrow) in Sizes(Step * sizes.LeastId, sizes.LeastInside * sizes.LeastId).Select(s => (s, 1.0))
            .Concat(sizes.Narrower.Select(s => (s.Share * sizes.LeastId, s.Narrow))))
        {
            foreach (var block in Blocks(room.Pod, index, size, narrow))
            {
                if (room.Place(block) is { } middle)
                {
                    room.Write(block, middle);
                    Ports(room, index);
                    return true;
                }
            }
        }

        return false;
    }

    private bool Parted(PodRoom room, int index, double size, double narrow)
    {
        var (number, type) = (PodBlock.InLine(LayoutFiling.PodId(index), "", FaceOf(room.Pod, size, narrow)), PodBlock.Alone(TypeOf(room.Pod), Math.Min(size, sizes.Least)));
        if (TypeOf(room.Pod).Length == 0 || room.Place(number) is not { } middle
            || room.Place(type, [number.At(middle, draft.Scale).Grow(0.25 * draft.Scale)]) is not { } beside)
        {
            return false;
        }

        room.Write(number, middle);
        room.Write(type, beside);
        return true;
    }

    // No room in the pod as it should be, and none outside: over the seal, then smaller, then over a line. Whether it is no smaller
    // than it may be beside pods.
    private bool Squeezed(PodRoom room, int index)
    {
        const double smallest = 0.3;
        room.OverSeal = true;
        var least = sizes.WhereFew[^1].Share * sizes.LeastId;
        foreach (var (size, narrow) in sizes.Narrower.Select(s => (s.Share * sizes.LeastId, s.Narrow)).Concat(Forever(sizes.LeastId)))
        {
            if (LeavesOutTooSmall && size < least)
            {
                break;
            }

            foreach (var overLines in new[] { false, true })
            {
                room.OverLines = overLines;
                foreach (var block in Blocks(room.Pod, index, size, narrow))
                {
                    var middle = room.Place(block) ?? (size < smallest ? room.Pod.Centre : null);
                    if (middle is { } at)
                    {
                        room.Write(block, at);
                        (room.OverSeal, room.OverLines) = (false, false);
                        Ports(room, index);
                        return size >= least;
                    }
                }
            }
        }

        (room.OverSeal, room.OverLines) = (false, false);
        Ports(room, index);
        return false;
    }

    private static IEnumerable<(double Size, double Narrow)> Forever(double largest)
    {
        for (var size = largest; ; size *= Step)
        {
            yield return (size, 1);
        }
    }
}

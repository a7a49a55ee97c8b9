using PodLayout.Geometry;
using PodLayout.Shops;

namespace PodLayout.Handover.Picture;

// The names of open ports, in their pods and beside them.
internal sealed partial class PodLabels
{
    // The longest line to a port's name that runs over the signs of plugged ports, mm of paper.
    private const double MostPortLineMm = 14;

    // Names of ports in a pod whose number stands somewhere; the others wait for a place outside.
    private void Ports(PodRoom room, int index)
    {
        var inside = room.PlacePorts(sizes.Least);
        room.WritePorts(inside, sizes.Least);
        portsOutside.AddRange(room.Pod.OpenPorts.Where(p => !inside.Exists(i => i.Port == p)).Select(p => (index, p)));
    }

    // Where pods of a type stand so close that names find no room beside many of them, none of theirs is there: a few would be taken
    // for the only ports to open.
    private void PortsOutside()
    {
        const double mostMissing = 0.5;
        foreach (var type in portsOutside.GroupBy(p => layout.Pods[p.Pod].Type.Name, StringComparer.Ordinal).ToList())
        {
            var mark = draft.Mark();
            var missing = type.Where(p => !PortOutside(p.Pod, p.Port)).ToList();
            if (missing.Count > mostMissing * type.Count() && missing.Count > 1)
            {
                draft.Back(mark);
                missing = [.. type];
            }

            draft.PortsWithoutName += missing.Count;
        }
    }

    private bool PortOutside(int index, Port port)
    {
        draft.Belongs = LayoutFiling.PodId(index);
        double[] written = [.. Sizes(sizes.Port, sizes.Least)];
        Box2[] boxes = [.. written.Select(s => draft.TextBox(default, port.Name, s))];
        var found = beside.Best(layout.Pods[index], port, boxes);
        if (found is null && beside.Find(layout.Pods[index], port, boxes[^1], anywhere: true) is { Cost: < MostPortLineMm } far)
        {
            found = (boxes.Length - 1, far);
        }

        if (found is not var (best, place))
        {
            return false;
        }

        beside.Take(place);
        draft.AddText(SheetDraft.Labels, "port-name", place.Box.Centre, port.Name, written[best], TextAnchor.Middle);
        return true;
    }

    // Where pods have left them, though the numbers of those stand elsewhere.
    private void PortsLeftBehind()
    {
        bool IsHere(Port port) => draft.Content.Contains(new Box2(port.Centre.X, port.Centre.Y, port.Centre.X, port.Centre.Y))
            && !layout.Pods.Any(p => p.BodyBox.Contains(port.Centre));
        foreach (var i in Enumerable.Range(0, layout.Pods.Length).Where(i => Only?.Contains(i) == false))
        {
            portsOutside.AddRange(layout.Pods[i].OpenPorts.Where(IsHere).Select(p => (i, p)));
        }
    }
}

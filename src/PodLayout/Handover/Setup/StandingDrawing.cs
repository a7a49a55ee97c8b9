using PodLayout.Geometry;
using PodLayout.Handover.Picture;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Shops;

namespace PodLayout.Handover.Setup;

/// <summary>What stands on the board now and is not part of the layout: pods to take up, ports to plug.</summary>
internal static class StandingDrawing
{
    public static void Draw(SheetDraft draft, Job job, Layout layout)
    {
        var board = job.Shop.Board;
        var toPlug = StandingChanges.Of(job, layout).ToPlug.ToHashSet(StringComparer.Ordinal);
        foreach (var port in board.Ports.Where(p => toPlug.Contains(p.Name)))
        {
            var radius = Symbols.PortRadius(draft, board.PortDiameterMm);
            Symbols.PortToPlug(draft, SheetDraft.OpenPorts, port.Centre, radius);
            draft.Take(new Box2(port.Centre.X, port.Centre.Y, port.Centre.X, port.Centre.Y).Grow(1.5 * radius));
        }

        foreach (var pod in StandingChanges.Of(job, layout).TakeUp)
        {
            if (StandingChanges.Placed(pod, job.Shop) is not { } body)
            {
                continue;
            }

            if (body.Type.Footprint is PodFootprint.Round round)
            {
                draft.Add(SheetDraft.Before, new Primitive.Disc("before", body.Centre, round.DiameterMm / 2));
            }
            else
            {
                draft.AddBox(SheetDraft.Before, "before", body.BodyBox);
            }

            draft.KeepOff(SheetDraft.RingOf(body.BodyBox), isUnderPods: true);
            if (Open(body, layout, draft.Scale) is var (at, half))
            {
                Symbols.Cross(draft, SheetDraft.Before, "before-cross", at, half);
                draft.KeepOff(new Box2(at.X, at.Y, at.X, at.Y).Grow(half));
                draft.Take(new Box2(at.X, at.Y, at.X, at.Y).Grow(half));
            }
        }
    }

    // Where the cross of a pod to take up is seen: as near to the pod's middle and as large as the pods of the layout let it be.
    private static (Point2 At, double Half)? Open(PlacedPod body, Layout layout, double scale)
    {
        const int steps = 12;
        const double leastMm = 0.7;
        var box = body.BodyBox;
        List<Box2> over = [.. layout.Pods.Select(p => p.BodyBox.Grow(0.3 * scale)).Where(b => b.Touches(box))];
        var places = (from i in Enumerable.Range(0, steps + 1)
                      from j in Enumerable.Range(0, steps + 1)
                      select new Point2(box.MinX + box.Width * i / steps, box.MinY + box.Height * j / steps))
            .OrderBy(p => Math.Round((p - body.Centre).Length, 6)).ToList();
        for (var half = Math.Min(2.5 * scale, 0.3 * Math.Min(body.ExtentXMm, body.ExtentYMm)); half >= leastMm * scale; half *= 0.8)
        {
            foreach (var at in places)
            {
                var cross = new Box2(at.X, at.Y, at.X, at.Y).Grow(half);
                if (box.Contains(cross) && !over.Exists(b => b.Touches(cross)))
                {
                    return (at, half);
                }
            }
        }

        return null;
    }
}

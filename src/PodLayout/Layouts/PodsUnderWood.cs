using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Shops;

namespace PodLayout.Layouts;

/// <summary>Which pods of a layout that may have been changed by hand can pull at the part at all.</summary>
internal static class PodsUnderWood
{
    // A seal may pass its line by so much, mm; what lies beyond it, times the seal's length, is what two coordinates are off.
    private const double RoomMm = Tolerances.ContactMm + Tolerances.FiledMm;

    /// <summary>
    /// The layout with those pods taken for standing under nothing whose upper seal does not lie wholly under sound wood, and those
    /// that stand where another one stands already; and which they are, with the reason.
    /// </summary>
    /// <param name="job">The job.</param>
    /// <param name="layout">The layout.</param>
    public static (Layout Layout, ImmutableArray<(int Pod, string Why)> LeftOut) Of(Job job, Layout layout)
    {
        var shape = job.Part.Shape;
        var wood = Region.Inside(shape.Outline, shape.Holes)
            .Minus(Region.UnionOf(
            [
                .. shape.Defects.Select(d => Region.Inside(d)), .. shape.Hazards.Where(h => h.KeepsSealsOff && !h.Area.IsEmpty).Select(h => h.Area),
            ]))
            .Laid(Turn.FromDegrees(layout.Placement.AngleDeg), layout.Placement.ZeroOnBoard).Grow(RoomMm);
        var leftOut = ImmutableArray.CreateBuilder<(int, string)>();
        List<(int Index, Region Body)> counted = [];
        for (var i = 0; i < layout.Pods.Length; i++)
        {
            var pod = layout.Pods[i];
            if (pod.Holds is not null)
            {
                continue;
            }

            var body = Body(pod, 0);
            if (!Body(pod, pod.Type.SealInsetAboveMm).Minus(wood).IsEmpty)
            {
                leftOut.Add((i, "its upper seal does not lie wholly under sound wood"));
            }
            else if (counted.FirstOrDefault(c => c.Body.Intersect(body).AreaMm2 > RoomMm * (pod.ExtentXMm + pod.ExtentYMm)) is { Body: not null } other)
            {
                leftOut.Add((i, $"it stands where {Handover.LayoutFiling.PodId(other.Index)} stands"));
            }
            else
            {
                counted.Add((i, body));
            }
        }

        var left = leftOut.Select(l => l.Item1).ToHashSet();
        return (layout with { Pods = [.. layout.Pods.Select((p, i) => left.Contains(i) ? p with { Holds = "" } : p)] }, leftOut.ToImmutable());
    }

    private static Region Body(PlacedPod pod, double insetMm) => pod.Type.Footprint is PodFootprint.Round round
        ? Region.AlongPath([pod.Centre], round.DiameterMm / 2 - insetMm) : Region.Inside(pod.BodyBox.Grow(-insetMm));
}

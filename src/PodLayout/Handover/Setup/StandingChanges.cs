using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Shops;

namespace PodLayout.Handover.Setup;

/// <summary>What changes from the layout that stands on the board now.</summary>
/// <param name="Staying">Indices of the layout's pods that stand already.</param>
/// <param name="TakeUp">Pods that stand and are not wanted where they are.</param>
/// <param name="From">For each of those, the layout's pod that it becomes; -1 for the shelf.</param>
/// <param name="ToPlug">Names of the ports that are open and are to be plugged.</param>
/// <param name="OpenAlready">Names of the ports that are open and stay so.</param>
internal sealed record StandingChanges(
    ImmutableArray<int> Staying,
    ImmutableArray<StandingPod> TakeUp,
    ImmutableArray<int> From,
    ImmutableArray<string> ToPlug,
    ImmutableHashSet<string> OpenAlready)
{
    public static StandingChanges Of(Job job, Layout layout)
    {
        if (job.Standing is not { } standing)
        {
            return new([], [], [], [], []);
        }

        var staying = layout.Staying(standing);
        ImmutableArray<StandingPod> takeUp =
        [
            .. standing.Pods.Where(p => !staying.Any(i =>
                layout.Pods[i] is var pod && (pod.Type.Name, pod.Turned, pod.Column, pod.Row) == (p.Type, p.Turned, p.Column, p.Row))),
        ];

        // Each new pod takes the nearest of its type that is to be taken up.
        var goesTo = Enumerable.Repeat(-1, takeUp.Length).ToArray();
        foreach (var index in Enumerable.Range(0, layout.Pods.Length).Except(staying))
        {
            var pod = layout.Pods[index];
            var nearest = Enumerable.Range(0, takeUp.Length).Where(i => goesTo[i] < 0 && takeUp[i].Type == pod.Type.Name)
                .OrderBy(i => Math.Abs(takeUp[i].Column - pod.Column) + Math.Abs(takeUp[i].Row - pod.Row)).FirstOrDefault(-1);
            if (nearest >= 0)
            {
                goesTo[nearest] = index;
            }
        }

        var open = LayoutFiling.OpenPorts(layout).Select(p => p.Name).ToHashSet(StringComparer.Ordinal);
        return new(
            staying, takeUp, [.. goesTo], [.. standing.OpenPorts.Where(p => !open.Contains(p))],
            [.. standing.OpenPorts.Where(open.Contains)]);
    }

    /// <summary>Where a standing pod stands; null when the shop no longer has its type.</summary>
    public static PlacedPod? Placed(StandingPod pod, Shop shop)
    {
        if (shop.Pods.FirstOrDefault(t => t.Name == pod.Type) is not { } type)
        {
            return null;
        }

        var placed = new PlacedPod(type, pod.Turned, pod.Column, pod.Row, default, []);
        var corner = new Point2(shop.Board.ColumnXMm(pod.Column), shop.Board.RowYMm(pod.Row));
        return placed with { Centre = corner + new Point2(placed.ExtentXMm / 2, placed.ExtentYMm / 2) };
    }
}

using System.Collections.Immutable;
using PodLayout.Holding;
using PodLayout.Jobs;

namespace PodLayout.Layouts;

/// <summary>A layout: where the part lies, the pods, and what is proven.</summary>
/// <param name="Placement">Where the part lies.</param>
/// <param name="Pods">The pods in placing order (row by row from the datum).</param>
/// <param name="SupportPoints">Every point within its limit of a pod, with the nearest one: all of them, unless the plan leaves some unsupported.</param>
/// <param name="Proof">What is proven.</param>
public sealed record Layout(
    Placement Placement,
    ImmutableArray<PlacedPod> Pods,
    ImmutableArray<SupportPoint> SupportPoints,
    Proof Proof)
{
    /// <summary>How it holds the part; null where that was not computed.</summary>
    public HoldingReport? Holding { get; init; }

    /// <summary>The pods that stay where they stand on the board, as indices of <see cref="Pods"/>.</summary>
    public ImmutableArray<int> Staying(StandingLayout standing) =>
    [
        .. Pods.Select((pod, index) => (pod, index))
            .Where(p => standing.Pods.Contains(new(p.pod.Type.Name, p.pod.Turned, p.pod.Column, p.pod.Row))).Select(p => p.index),
    ];

    /// <summary>The worst overhang as a share of its limit; 0 when there are no points.</summary>
    public double WorstShareOfLimit => SupportPoints.IsEmpty ? 0 : SupportPoints.Max(p => p.ShareOfLimit);
}

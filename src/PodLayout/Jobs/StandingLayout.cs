using System.Collections.Immutable;
using PodLayout.Layouts;

namespace PodLayout.Jobs;

/// <summary>What stands on the board now: pods that need not be moved are worth keeping.</summary>
/// <param name="Pods">The pods.</param>
/// <param name="Placement">Where the part lay on them.</param>
public sealed record StandingLayout(ImmutableArray<StandingPod> Pods, Placement Placement)
{
    /// <summary>The pods of a layout that stay where they stand, as indices into the layout's pods.</summary>
    public ImmutableArray<int> Staying(ImmutableArray<PlacedPod> pods) =>
    [
        .. pods.Select((pod, index) => (pod, index))
            .Where(p => Pods.Contains(new(p.pod.Type.Name, p.pod.Turned, p.pod.Column, p.pod.Row))).Select(p => p.index),
    ];
}

using System.Collections.Immutable;

namespace PodLayout.Jobs;

/// <summary>What stands on the board now: pods that need not be moved are worth keeping.</summary>
/// <param name="Pods">The pods.</param>
/// <param name="LaidAt">Where the part lay on them.</param>
public sealed record StandingLayout(ImmutableArray<StandingPod> Pods, PlacementWish.Given LaidAt)
{
    /// <summary>Names of the ports that are open now.</summary>
    public ImmutableArray<string> OpenPorts { get; init; } = [];
}

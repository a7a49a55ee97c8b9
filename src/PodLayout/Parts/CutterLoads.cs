using System.Collections.Immutable;

namespace PodLayout.Parts;

/// <summary>What the cutter does to the part on its way.</summary>
/// <param name="Points">Points of the path with their forces.</param>
/// <param name="Passes">The passes they belong to.</param>
/// <param name="Assumptions">What was assumed for want of a figure, one sentence each.</param>
public sealed record CutterLoads(
    ImmutableArray<PathLoad> Points, ImmutableArray<CutterPass> Passes, ImmutableArray<string> Assumptions)
{
    /// <summary>Whether the job names no cut, so that all of it is assumed.</summary>
    public bool AreAssumed { get; init; }

    /// <summary>Where the tool goes through the last layer of wood: what it does to pieces that come loose beside it.</summary>
    public ImmutableArray<FreeingLoad> Freeing { get; init; } = [];

    /// <summary>Nothing is known of the cutter: holding is not computed.</summary>
    public static CutterLoads None { get; } = new([], [], []);
}

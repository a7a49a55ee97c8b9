using System.Collections.Immutable;
using PodLayout.Layouts;

namespace PodLayout.Handover.Setup;

/// <summary>What speaks against a layout that may have been changed by hand: found by holding it against every rule.</summary>
/// <param name="IsChanged">Whether it is no longer what was planned.</param>
/// <param name="Rules">The rules that it breaks, each with its pods.</param>
/// <param name="Breaches">How it breaks them, one sentence each.</param>
/// <param name="NotCounted">The pods that hold nothing, each with the reason.</param>
public sealed record LayoutDoubts(
    bool IsChanged, ImmutableArray<string> Rules, ImmutableArray<string> Breaches, ImmutableArray<string> NotCounted)
{
    /// <summary>Pods that break a rule or are not counted.</summary>
    public ImmutableArray<PodFault> Faults { get; init; } = [];

    /// <summary>Of a layout as it was planned.</summary>
    public static LayoutDoubts None { get; } = new(false, [], [], []);
}

using System.Collections.Immutable;
using PodLayout.Findings;

namespace PodLayout.Checking;

/// <summary>What became of one rule.</summary>
/// <param name="Rule">The rule.</param>
/// <param name="Measure">What the two figures are.</param>
/// <param name="Worst">The figure that comes nearest to breaking the rule, or breaks it most; null when nothing falls under it.</param>
/// <param name="Needed">What that figure is held against; null likewise.</param>
/// <param name="Where">Which pod, and where; when nothing falls under the rule, why.</param>
/// <param name="Breaches">One finding for each pod (or pair, or kind of point) that breaks it; empty when the rule holds.</param>
public sealed record RuleCheck(
    CheckedRule Rule, Measure Measure, double? Worst, double? Needed, string Where, ImmutableArray<Finding> Breaches)
{
    /// <summary>What is to be known of it though it is not broken.</summary>
    public ImmutableArray<Finding> Warnings { get; init; } = [];

    /// <summary>Indices of the pods that break it; empty where it is not about single pods.</summary>
    public ImmutableArray<int> Pods { get; init; } = [];

    /// <summary>Whether the rule holds.</summary>
    public bool Holds => Breaches.IsEmpty;
}

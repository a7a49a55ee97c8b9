using System.Collections.Immutable;

namespace PodLayout.Placing;

/// <summary>What came of examining a node.</summary>
/// <param name="Bound">No layout of the node has fewer pods than this (as far as it matters beside the best known).</param>
/// <param name="Found">A layout found on the way; null when none.</param>
/// <param name="Children">What is left to examine: empty when the node cannot beat the best known.</param>
/// <param name="IsLeftOpen">Whether the node is too small to split although its bound does not exclude it.</param>
/// <param name="IsCut">Whether examining was cut short.</param>
internal sealed record NodeVerdict(
    int Bound, FoundLayout? Found, ImmutableArray<SearchNode> Children, bool IsLeftOpen, bool IsCut)
{
    /// <summary>What it took.</summary>
    public SearchWork Work { get; init; }

    /// <summary>Choices on the way that hold by pulls and fall short by springs.</summary>
    public int ShortBySprings { get; init; }
}

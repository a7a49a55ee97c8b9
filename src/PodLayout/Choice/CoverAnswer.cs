using System.Collections.Immutable;

namespace PodLayout.Choice;

/// <summary>What the model says.</summary>
/// <param name="Filled">The seats to fill, rising; default when none were found.</param>
/// <param name="LowerBound">No choice has fewer pods than this.</param>
/// <param name="IsProven">Whether the search ended by itself: the choice is best, or none within the limit exists.</param>
public sealed record CoverAnswer(ImmutableArray<int> Filled, int LowerBound, bool IsProven)
{
    /// <summary>Whether there is a choice.</summary>
    public bool HasChoice => !Filled.IsDefault;

    /// <summary>Whether the choice may break rows: it only tells that no proof is near.</summary>
    public bool IsRough { get; init; }
}

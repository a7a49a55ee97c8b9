using System.Collections.Immutable;
using PodLayout.Findings;

namespace PodLayout.Parts;

/// <summary>How a drawing was understood: the part, or why there is none, and what each ring was taken for.</summary>
/// <param name="Shape">The part's shape or the refusal.</param>
/// <param name="Candidates">Parts that the drawing may mean, as --part counts them.</param>
/// <param name="Meanings">What each ring of the drawing is, in the order of its rings.</param>
public sealed record DrawnPart(Outcome<PartShape> Shape, ImmutableArray<PartCandidate> Candidates, ImmutableArray<RingMeaning> Meanings);

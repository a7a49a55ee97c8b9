using PodLayout.Layouts;

namespace PodLayout.Handover.Format;

/// <summary>What is proven about the number of pods.</summary>
/// <param name="Scope">Over which placements the bound holds.</param>
/// <param name="FewestPodsPossible">No layout in the scope has fewer pods.</param>
/// <param name="PlacingToleranceMm">Offsets nearer than this were not told apart; 0 for a single placement.</param>
/// <param name="Words">The same in one sentence.</param>
public sealed record ProofEntry(ProofScope Scope, int FewestPodsPossible, double PlacingToleranceMm, string Words);

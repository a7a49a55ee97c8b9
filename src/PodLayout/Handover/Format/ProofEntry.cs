using PodLayout.Layouts;

namespace PodLayout.Handover.Format;

/// <summary>What is proven about the number of pods.</summary>
/// <param name="Scope">Over which placements the bound holds.</param>
/// <param name="FewestPodsPossible">No layout in the scope has fewer pods.</param>
/// <param name="PlacingToleranceMm">Offsets nearer than this were not told apart; 0 for a single placement.</param>
/// <param name="Words">The same in one sentence.</param>
/// <param name="UnsupportedMm">What the layout leaves beyond its limits: the length of edge, and a millimetre for every 10 cm2 inside and on thin floors; absent where it leaves nothing.</param>
/// <param name="LeastUnsupportedMm">No layout in the scope leaves less.</param>
public sealed record ProofEntry(ProofScope Scope, int FewestPodsPossible, double PlacingToleranceMm, string Words, double? UnsupportedMm = null, double? LeastUnsupportedMm = null);

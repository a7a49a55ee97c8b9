namespace PodLayout.Layouts;

/// <summary>What is proven about the number of pods.</summary>
/// <param name="Scope">Over which placements the bound holds.</param>
/// <param name="FewestPodsPossible">No layout in the scope has fewer pods than this.</param>
/// <param name="PlacingToleranceMm">Offsets nearer than this were not told apart; 0 for a single placement.</param>
/// <param name="Words">The same in one sentence for a person.</param>
public sealed record Proof(ProofScope Scope, int FewestPodsPossible, double PlacingToleranceMm, string Words)
{
    /// <summary>
    /// What the layout leaves beyond its limits, mm: the length of edge, and a millimetre for every 10 cm² inside and
    /// on thin floors; 0 where all is supported.
    /// </summary>
    public double UnsupportedMm { get; init; }

    /// <summary>No layout in the scope leaves less than this, mm.</summary>
    public double LeastUnsupportedMm { get; init; }
}

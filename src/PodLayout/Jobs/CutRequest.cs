using System.Collections.Immutable;

namespace PodLayout.Jobs;

/// <summary>All that a job says of cuts.</summary>
/// <param name="Operations">Cuts by operation.</param>
/// <param name="Program">The posted program; null when none is named.</param>
/// <param name="LowestTipMm">A tip lower than this above the underside counts as cutting below it, mm; negative allows a scratch.</param>
/// <param name="BoardClearanceMm">Least height of the deepest tip above the board, mm.</param>
/// <param name="Blank">The blank; null when offcuts are not asked for.</param>
public sealed record CutRequest(
    ImmutableArray<CutOperation> Operations,
    ProgramRequest? Program,
    double LowestTipMm,
    double BoardClearanceMm,
    BlankRequest? Blank)
{
    /// <summary>
    /// A floor thinner than this is thin, mm. The default is a quarter inch, rounded: thinner floors drum and chatter under the cutter.
    /// Common practice, no source.
    /// </summary>
    public double ThinFloorMm { get; init; } = 6;

    /// <summary>What the vacuum may do to floors.</summary>
    public FloorLimits FloorLimits { get; init; } = FloorLimits.Default;

    /// <summary>The cutter for all that say nothing else; null for nothing.</summary>
    public CutterSetup? Cutter { get; init; }

    /// <summary>Nothing is said.</summary>
    public static CutRequest None { get; } = new([], null, 0.1, 2, null);
}

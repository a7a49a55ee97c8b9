using System.Collections.Immutable;

namespace PodLayout.Woods;

/// <summary>What a thin board of a wood bends and breaks by: flat-sawn, its face along L and T.</summary>
/// <param name="AlongMPa">Modulus along the grain.</param>
/// <param name="AcrossMPa">Modulus across the grain.</param>
/// <param name="ShearMPa">Shear modulus in the board's plane.</param>
/// <param name="Poisson">Poisson's ratio, load along the grain and strain across it.</param>
/// <param name="AlongStrengthMPa">Greatest bending stress along the grain (modulus of rupture).</param>
/// <param name="AcrossStrengthMPa">Greatest stress across the grain.</param>
/// <param name="Assumptions">What was put in for want of a figure, one sentence each.</param>
public sealed record PlateWood(
    double AlongMPa, double AcrossMPa, double ShearMPa, double Poisson, double AlongStrengthMPa, double AcrossStrengthMPa,
    ImmutableArray<string> Assumptions)
{
    /// <summary>
    /// The stand-in for a wood that is not known: each figure the least of the solid woods of the table, which are those of eastern
    /// white pine (elastic ratios of western white pine).
    /// </summary>
    public static PlateWood StandIn { get; } = new(
        8550 * 1.10, WeakestAcross * 8550 * 1.10, WeakestShear * 8550 * 1.10, 0.35, 59, WeakestTensionMPa,
        ["The wood is not known: its floors are reckoned as eastern white pine, the weakest wood of the table."]);

    // The least of the table: ET/EL and GLT/EL of western white pine, tension across the grain of eastern white pine.
    internal const double WeakestAcross = 0.038, WeakestShear = 0.048, WeakestTensionMPa = 2.1;

    /// <summary>The same with another modulus along the grain; that across it and that of shear follow in proportion.</summary>
    public PlateWood WithAlong(double mPa) => this with
    {
        AlongMPa = mPa,
        AcrossMPa = AcrossMPa * mPa / AlongMPa,
        ShearMPa = ShearMPa * mPa / AlongMPa,
    };
}

using System.Collections.Immutable;

namespace PodLayout.Woods;

/// <summary>A row of the table of woods.</summary>
/// <param name="Name">Its name in the trade.</param>
/// <param name="AlsoCalled">Other names that mean no other wood of the table.</param>
/// <param name="Kind">How it is built.</param>
/// <param name="SpecificGravity">Oven-dry mass over the volume at 12 % moisture, or green where <paramref name="IsGreen"/>; of a board, its density over that of water.</param>
/// <param name="IsGreen">Whether the specific gravity is on the volume when green.</param>
/// <param name="BendingGPa">Modulus of elasticity from a bending test, GPa, which the beam's shear makes too small.</param>
/// <param name="Ratios">Elastic ratios; null where the handbook has no row.</param>
/// <param name="LeakLPerMinPerM2">Air through a square metre of its face at 80 kPa, litres of free air a minute; from memory, of the order.</param>
public sealed record WoodSpecies(
    string Name,
    ImmutableArray<string> AlsoCalled,
    WoodKind Kind,
    Figure SpecificGravity,
    bool IsGreen,
    Figure BendingGPa,
    ElasticRatios? Ratios,
    double LeakLPerMinPerM2)
{
    private const double WaterKgPerM3 = 1000;

    // Moisture of wood in a heated shop, and that at which its cells are full.
    private const double DryShare = 0.12;
    private const double FibreSaturationPercent = 30;

    // The bending test's figure leaves out the beam's shear, about a tenth (Wood Handbook, chapter 5, text to table 5-1).
    private const double WithoutShear = 1.10;

    /// <summary>Density at 12 % moisture, kg/m³: Wood Handbook (FPL-GTR-282), equation 4-14.</summary>
    public double DensityKgPerM3 => Kind != WoodKind.Solid
        ? WaterKgPerM3 * SpecificGravity.Value : WaterKgPerM3 * AtTwelvePercent * (1 + DryShare);

    /// <summary>Modulus along the grain without the bending test's shear, MPa.</summary>
    public double AlongGrainMPa => BendingGPa.Value * 1000 * WithoutShear;

    // From the green volume to that at 12 %: G = Gb / (1 - 0.265 a Gb), a = (30 - 12)/30 (Wood Handbook, chapter 4; from memory).
    private double AtTwelvePercent => IsGreen
        ? SpecificGravity.Value / (1 - 0.265 * (FibreSaturationPercent - 100 * DryShare) / FibreSaturationPercent * SpecificGravity.Value)
        : SpecificGravity.Value;
}

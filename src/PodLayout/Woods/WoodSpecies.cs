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

    /// <summary>Modulus of rupture along the grain at 12 % moisture, MPa.</summary>
    public Figure RuptureMPa { get; init; }

    /// <summary>Tension across the grain at 12 % moisture, MPa; null where the handbook has no figure.</summary>
    public Figure? TensionAcrossMPa { get; init; }

    /// <summary>How a thin board of it bends and breaks, with the weakest figures of the table for those that it lacks.</summary>
    public PlateWood Plate => Kind switch
    {
        WoodKind.Plywood => OfPlywood,
        WoodKind.Fibreboard => OfFibreboard,
        _ => OfSolid,
    };

    private PlateWood OfSolid
    {
        get
        {
            List<string> lacking = [
                .. Ratios is null ? ["elastic ratios"] : Ratios.LtOverL is null ? ["shear modulus"] : Array.Empty<string>(),
                .. TensionAcrossMPa is null ? ["strength across the grain"] : Array.Empty<string>()];
            bool isFromMemory = RuptureMPa.IsFromMemory || TensionAcrossMPa is { IsFromMemory: true } || Ratios is { TOverL.IsFromMemory: true } or { LtOverL.IsFromMemory: true };
            return new(
                AlongGrainMPa,
                AlongGrainMPa * (Ratios?.TOverL.Value ?? PlateWood.WeakestAcross),
                AlongGrainMPa * (Ratios?.LtOverL?.Value ?? PlateWood.WeakestShear),
                Ratios?.NuLt.Value ?? PlateWood.StandIn.Poisson,
                RuptureMPa.Value,
                TensionAcrossMPa?.Value ?? PlateWood.WeakestTensionMPa,
                [
                    $"Floors of {Name}: Wood Handbook (FPL-GTR-282), tables 5-1, 5-2, 5-3 and 5-5{(isFromMemory ? ", some figures from memory" : "")}.",
                    .. lacking.Count == 0 ? [] : new[] { $"The table has no {string.Join(" and no ", lacking)} of {Name}: reckoned as of pine, the weakest." },
                ]);
        }
    }

    // A floor of three plies, the weakest that is balanced: the middle ply alone runs across, and the outer ones tear between their
    // fibres. From memory.
    private PlateWood OfPlywood => new(
        AlongGrainMPa, 1300, 700, 0.05, RuptureMPa.Value, TensionAcrossMPa?.Value ?? PlateWood.WeakestTensionMPa,
        [$"Floors of {Name} are reckoned as if three plies were left, whatever is (from memory)."]);

    // Alike in all directions: G = E / 2 (1 + nu).
    private PlateWood OfFibreboard => new(
        AlongGrainMPa, AlongGrainMPa, AlongGrainMPa / 2.5, 0.25, RuptureMPa.Value, RuptureMPa.Value,
        [$"Floors of {Name}: modulus as in the table, strength in bending from memory."]);

    // From the green volume to that at 12 %: G = Gb / (1 - 0.265 a Gb), a = (30 - 12)/30 (Wood Handbook, chapter 4; from memory).
    private double AtTwelvePercent => IsGreen
        ? SpecificGravity.Value / (1 - 0.265 * (FibreSaturationPercent - 100 * DryShare) / FibreSaturationPercent * SpecificGravity.Value)
        : SpecificGravity.Value;
}

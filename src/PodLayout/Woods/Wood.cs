using System.Collections.Immutable;
using System.Globalization;

namespace PodLayout.Woods;

/// <summary>The wood of a part, as it is reckoned with.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="WeightKgPerM3">Density for the part's weight, which helps to hold it.</param>
/// <param name="CutKgPerM3">Density for the cutter's force, which grows with it.</param>
/// <param name="Kind">How it is built.</param>
/// <param name="AlongGrainMPa">Modulus along the grain, MPa; null when not known.</param>
/// <param name="LeakLPerMinPerM2">Air through a square metre of its face at 80 kPa, litres of free air a minute.</param>
/// <param name="Assumptions">What was assumed for want of a figure, one sentence each.</param>
public sealed record Wood(
    string Name, double WeightKgPerM3, double CutKgPerM3, WoodKind Kind, double? AlongGrainMPa, double LeakLPerMinPerM2,
    ImmutableArray<string> Assumptions)
{
    // Lighter than all but the lightest row of the table, and heavier than any of it: each on the side that holds less.
    private const double LightKgPerM3 = 400;
    private const double HeavyKgPerM3 = 900;

    private const double LeakyLPerMinPerM2 = 60;

    /// <summary>How a thin board of it bends and breaks.</summary>
    public PlateWood Plate { get; init; } = PlateWood.StandIn;

    /// <summary>Whether its density is known.</summary>
    public bool IsKnown => WeightKgPerM3 == CutKgPerM3;

    /// <summary>A wood of the table.</summary>
    public static Wood Of(WoodSpecies species) => new(
        species.Name, species.DensityKgPerM3, species.DensityKgPerM3, species.Kind, species.AlongGrainMPa, species.LeakLPerMinPerM2,
        [Text($"{Capital(species.Name)} of {species.DensityKgPerM3:0} kg/m3 at 12 % moisture{Source(species)}.")])
    {
        Plate = species.Plate,
    };

    /// <summary>A wood that is not known, or not named.</summary>
    public static Wood Unknown(string name) => new(
        name, LightKgPerM3, HeavyKgPerM3, WoodKind.Solid, null, LeakyLPerMinPerM2,
        [Text($"The wood is not known: the part's weight is reckoned with {LightKgPerM3:0} kg/m3 and the cutter's force with {HeavyKgPerM3:0} kg/m3.")]);

    /// <summary>The same wood with the job's own density.</summary>
    public Wood WithDensity(double kgPerM3) => this with
    {
        WeightKgPerM3 = kgPerM3,
        CutKgPerM3 = kgPerM3,
        Assumptions = [Text($"Wood of {kgPerM3:0} kg/m3, as the job says.")],
    };

    private static string Source(WoodSpecies species) => (species.Kind, species.SpecificGravity.IsFromMemory) switch
    {
        (WoodKind.Solid, false) => " (Wood Handbook, FPL-GTR-282, tables 5-3 and 5-5, equation 4-14)",
        (WoodKind.Solid, true) => " (specific gravity from memory)",
        (_, false) => " (middle of the usual range)",
        _ => " (from memory)",
    };

    private static string Capital(string name) => char.ToUpperInvariant(name[0]) + name[1..];

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

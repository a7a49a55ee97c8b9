using PodLayout.Woods;

namespace PodLayout.Forces;

/// <summary>Force for each mm² of chip, N/mm², at both ends of the band in which it may lie.</summary>
/// <param name="Least">Lower end.</param>
/// <param name="Most">Upper end, which layouts are made for.</param>
/// <param name="EndGrainLeast">How many times as much it takes to cut across the grain, at the lower end.</param>
/// <param name="EndGrainMost">The same at the upper end.</param>
public readonly record struct CuttingWork(double Least, double Most, double EndGrainLeast, double EndGrainMost)
{
    // At a chip of 0.1 mm, along the grain, for each kg/m3. From memory (+-50 %): softwoods 10 to 20, oak, beech and maple 20 to
    // 40 N/mm2. Particleboard was measured at 32.0 and 37.6 N/mm2 (Palubicki, Materials 14:2208, 2021). The band is wide because
    // force follows density loosely: r = .61 over nine species (Andrade 2022).
    private const double LeastPerDensity = 0.025;
    private const double MostPerDensity = 0.06;

    // Across the grain two to three times as much as along it; from memory.
    private const double EndGrainFrom = 2;
    private const double EndGrainTo = 3;

    // Thin chips take more force for each mm2: kc = kc.1 (0.1 / h)^0.3, the form of Kienzle (1952), the exponent from memory.
    private const double ReferenceChipMm = 0.1;
    private const double ChipExponent = 0.3;
    private const double ThinnestChipMm = 0.01;
    private const double ThickestChipMm = 1;

    /// <summary>A wood's, for a chip.</summary>
    public static CuttingWork Of(Wood wood, double chipMm)
    {
        var size = wood.CutKgPerM3 * Math.Pow(ReferenceChipMm / Math.Clamp(chipMm, ThinnestChipMm, ThickestChipMm), ChipExponent);
        // Of plywood half the plies run across, and of fibreboard none runs any way.
        return wood.Kind switch
        {
            WoodKind.Plywood => new(LeastPerDensity * size * (1 + EndGrainFrom) / 2, MostPerDensity * size * (1 + EndGrainTo) / 2, 1, 1),
            WoodKind.Fibreboard => new(LeastPerDensity * size, MostPerDensity * size, 1, 1),
            _ => new(LeastPerDensity * size, MostPerDensity * size, EndGrainFrom, EndGrainTo),
        };
    }

    /// <summary>A measured one, which needs no band.</summary>
    public static CuttingWork Measured(double nPerMm2) => new(nPerMm2, nPerMm2, 1, 1);

    /// <summary>At the upper end, for a tooth that moves at an angle to the grain whose sine is given.</summary>
    public double MostAt(double sineToGrain) => Most * (1 + (EndGrainMost - 1) * sineToGrain * sineToGrain);

    /// <summary>At the lower end.</summary>
    public double LeastAt(double sineToGrain) => Least * (1 + (EndGrainLeast - 1) * sineToGrain * sineToGrain);
}

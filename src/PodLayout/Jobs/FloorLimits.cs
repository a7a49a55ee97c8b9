namespace PodLayout.Jobs;

/// <summary>What the vacuum of a pod may do to the wood above it.</summary>
/// <param name="SagMm">Greatest sag, mm.</param>
/// <param name="StressFactor">How many times the greatest stress the wood's strength must be.</param>
/// <remarks>
/// Both defaults are common practice, no source. A quarter of a millimetre lets 8 mm of hard maple bridge a pod of 120 mm at 70 kPa
/// and 5 mm not. The strengths are means of small clear pieces: half of them is little enough.
/// </remarks>
public sealed record FloorLimits(double SagMm, double StressFactor)
{
    /// <summary>Where the job says nothing.</summary>
    public static FloorLimits Default { get; } = new(0.25, 2);
}

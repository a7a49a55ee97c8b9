namespace PodLayout.Jobs;

/// <summary>The blank that the part is cut from.</summary>
/// <param name="Layer">Layer of its outline; null when it is the part's outline grown.</param>
/// <param name="GrownByMm">How far it reaches beyond the part's outline, where no layer is named.</param>
/// <param name="DensityKgPerM3">Density of the wood, kg/m³; null for that of the part.</param>
public sealed record BlankRequest(string? Layer, double GrownByMm, double? DensityKgPerM3)
{
    /// <summary>Loose pieces heavier than this are held by pods of their own, kg; null for none.</summary>
    public double? HoldOverKg { get; init; }

    /// <summary>Whether a layout that does not hold all of them is none.</summary>
    public bool MustHold { get; init; }
}

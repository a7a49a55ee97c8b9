using System.Collections.Immutable;
using PodLayout.Woods;

namespace PodLayout.Parts;

/// <summary>The part to be held.</summary>
/// <param name="Name">What the shop calls it.</param>
/// <param name="Shape">Its shape as drawn.</param>
/// <param name="ThicknessMm">Thickness, mm.</param>
/// <param name="Species">The wood, as the user wrote it; empty when not given.</param>
/// <param name="GrainDeg">Direction of the grain in the drawing, degrees counter-clockwise from X.</param>
public sealed record Part(string Name, PartShape Shape, double ThicknessMm, string Species, double GrainDeg)
{
    /// <summary>What the cutter does to it; none when that is not to be looked at.</summary>
    public CutterLoads Loads { get; init; } = CutterLoads.None;

    /// <summary>Wood that cuts take out of it beside its outline and holes.</summary>
    public ImmutableArray<CutAway> CutAway { get; init; } = [];

    /// <summary>Its wood, as it is reckoned with.</summary>
    public Wood Wood { get; init; } = Wood.Unknown(Species);

    /// <summary>Density of the wood as it lies on the pods, kg/m³.</summary>
    public double DensityKgPerM3 { get; init; } = 700;
}

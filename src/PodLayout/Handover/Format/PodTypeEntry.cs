namespace PodLayout.Handover.Format;

/// <summary>A kind of pod: rectangular (width and length) or round (diameter).</summary>
/// <param name="Name">What the shop calls it.</param>
/// <param name="WidthMm">Along X when not turned; null for a round pod.</param>
/// <param name="LengthMm">Along Y when not turned; null for a round pod.</param>
/// <param name="DiameterMm">Diameter of a round pod; null for a rectangular one.</param>
/// <param name="SealInsetAboveMm">From the body's edge to the outer edge of the upper seal.</param>
/// <param name="SealInsetBelowMm">From the body's edge to the inner edge of the lower seal.</param>
/// <param name="HeightMm">From the board's face to the part's underside.</param>
/// <param name="MayTurn">Whether it may stand turned by a quarter.</param>
/// <param name="Stock">How many there are.</param>
/// <param name="PortsNeeded">How many open ports it needs.</param>
public sealed record PodTypeEntry(
    string Name,
    double? WidthMm,
    double? LengthMm,
    double? DiameterMm,
    double SealInsetAboveMm,
    double SealInsetBelowMm,
    double HeightMm,
    bool MayTurn,
    int Stock,
    int PortsNeeded)
{
    /// <summary>How stiff its upper seal is, N/mm for each mm of it.</summary>
    public double SealStiffnessNPerMm2 { get; init; } = Shops.PodType.UsualSealStiffnessNPerMm2;
}

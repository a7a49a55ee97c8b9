namespace PodLayout.Shops;

/// <summary>One kind of pod in stock.</summary>
/// <param name="Name">What the shop calls it.</param>
/// <param name="Footprint">The body, whose edges lie on groove lines.</param>
/// <param name="SealInsetAboveMm">From the body's edge to the outer edge of the upper seal, mm.</param>
/// <param name="SealInsetBelowMm">From the body's edge to the inner edge of the lower seal, mm: a port must lie inside it.</param>
/// <param name="HeightMm">From the board's face to the part's underside, mm.</param>
/// <param name="MayTurn">Whether it may stand turned by a quarter.</param>
/// <param name="Stock">How many there are.</param>
/// <param name="PortsNeeded">How many open ports it needs; at least one.</param>
public sealed record PodType(
    string Name,
    PodFootprint Footprint,
    double SealInsetAboveMm,
    double SealInsetBelowMm,
    double HeightMm,
    bool MayTurn,
    int Stock,
    int PortsNeeded)
{
    /// <summary>
    /// What a millimetre of the upper seal's length pushes back with for each millimetre that it is pressed, N/mm². From memory:
    /// closed-cell gasket of a few millimetres; a weight and a dial gauge on one pod measure it (weight / sinking / seal's length).
    /// </summary>
    public const double UsualSealStiffnessNPerMm2 = 1;

    /// <summary>The same of this kind's seal. Where all kinds have the same it does not matter how stiff they are.</summary>
    public double SealStiffnessNPerMm2 { get; init; } = UsualSealStiffnessNPerMm2;
}

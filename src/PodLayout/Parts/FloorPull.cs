namespace PodLayout.Parts;

/// <summary>What the vacuum of a kind of pod would do to a floor that does not bear it.</summary>
/// <param name="Pod">Name of the kind of pod.</param>
/// <param name="VacuumKPa">The most vacuum that it can have, kPa.</param>
/// <param name="SagMm">How far the floor would sag, mm.</param>
/// <param name="StrengthFactor">How many times its greatest stress the wood bears.</param>
/// <param name="NeededMm">Thickness that would bear it, mm.</param>
public sealed record FloorPull(string Pod, double VacuumKPa, double SagMm, double StrengthFactor, double NeededMm);

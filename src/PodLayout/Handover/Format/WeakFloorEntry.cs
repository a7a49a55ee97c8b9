using System.Collections.Immutable;

namespace PodLayout.Handover.Format;

/// <summary>A floor that the vacuum of some kinds of pod would bend too far or break: none of it may lie inside their upper seals.</summary>
/// <param name="Name">What makes it.</param>
/// <param name="Source">Where that comes from.</param>
/// <param name="LeftMm">Thickness of the wood there.</param>
/// <param name="Pulls">The kinds of pod that it does not bear.</param>
/// <param name="RingsMm">Its extent, ring by ring: an outer one counter-clockwise, its holes clockwise after it, then the next.</param>
public sealed record WeakFloorEntry(
    string Name, string Source, double LeftMm, ImmutableArray<FloorPullEntry> Pulls, ImmutableArray<ImmutableArray<XyMm>> RingsMm);

/// <summary>What a kind of pod would do to a floor.</summary>
/// <param name="Pod">The kind of pod.</param>
/// <param name="VacuumKPa">The most vacuum that it can have.</param>
/// <param name="SagMm">How far the floor would sag; null where nothing is left to sag.</param>
/// <param name="StrengthFactor">How many times its greatest stress the wood bears.</param>
/// <param name="NeededMm">Thickness that would bear it.</param>
public sealed record FloorPullEntry(string Pod, double VacuumKPa, double? SagMm, double StrengthFactor, double NeededMm);

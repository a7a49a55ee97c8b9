using System.Collections.Immutable;

namespace PodLayout.Handover.Format;

/// <summary>A loose piece of the blank that pods of its own hold.</summary>
/// <param name="Name">Its name.</param>
/// <param name="MassKg">Its mass.</param>
/// <param name="IsDemanded">Whether a layout that does not hold it is none.</param>
/// <param name="IsBalanced">Whether its pods are to lie about its centre of mass.</param>
/// <param name="OutlineMm">Its outer edge.</param>
/// <param name="HolesMm">What is cut out of it.</param>
public sealed record HeldPieceEntry(
    string Name, double MassKg, bool IsDemanded, bool IsBalanced, ImmutableArray<XyMm> OutlineMm, ImmutableArray<ImmutableArray<XyMm>> HolesMm);

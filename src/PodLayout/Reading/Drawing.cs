using System.Collections.Immutable;

namespace PodLayout.Reading;

/// <summary>What was read from a file, joined into rings, in millimetres; not yet a part.</summary>
/// <param name="FileName">Name as the user gave it.</param>
/// <param name="Format">Format and version, for instance <c>DXF R2010 (ASCII)</c>.</param>
/// <param name="UnitName">The unit the drawing was taken to be in.</param>
/// <param name="MmPerUnit">Length of one drawing unit, mm.</param>
/// <param name="JoinGapMm">The gap up to which ends were joined, mm.</param>
/// <param name="Rings">Closed lines, the largest first.</param>
/// <param name="OpenContours">Lines that do not close.</param>
/// <param name="Branches">Points where more than two line ends meet.</param>
/// <param name="Layers">Layers in the order of their names.</param>
public sealed record Drawing(
    string FileName,
    string Format,
    string UnitName,
    double MmPerUnit,
    double JoinGapMm,
    ImmutableArray<DrawnRing> Rings,
    ImmutableArray<OpenContour> OpenContours,
    ImmutableArray<Branch> Branches,
    ImmutableArray<LayerContent> Layers)
{
    /// <summary>How lengths of it are told.</summary>
    public DrawnLengths Lengths { get; init; } = DrawnLengths.Mm;
}

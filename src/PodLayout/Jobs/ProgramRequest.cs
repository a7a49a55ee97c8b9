using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Programs;

namespace PodLayout.Jobs;

/// <summary>The posted program that a job names, and what must be known beside it.</summary>
/// <param name="FilePath">The program, as written.</param>
/// <param name="Tools">Its tools by number.</param>
/// <param name="ZZero">Where its Z zero lies.</param>
/// <param name="Offset">Where its X and Y zero lies in the drawing.</param>
/// <param name="ArcToleranceMm">As <see cref="ProgramOptions.ArcToleranceMm"/>.</param>
/// <param name="LeavesOutSlashLines">As <see cref="ProgramOptions.LeavesOutSlashLines"/>.</param>
public sealed record ProgramRequest(
    string FilePath,
    ImmutableSortedDictionary<int, Tool> Tools,
    ZZero ZZero,
    Point2 Offset,
    double? ArcToleranceMm,
    bool LeavesOutSlashLines)
{
    /// <summary>What is said of its tools' cutting, by number.</summary>
    public ImmutableSortedDictionary<int, CutterSetup> Cutters { get; init; } = ImmutableSortedDictionary<int, CutterSetup>.Empty;

    /// <summary>How the program is to be read.</summary>
    public ProgramOptions Options => new() { Tools = Tools, ArcToleranceMm = ArcToleranceMm, LeavesOutSlashLines = LeavesOutSlashLines };
}

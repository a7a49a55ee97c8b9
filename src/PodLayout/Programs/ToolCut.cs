using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Programs;

/// <summary>Where one tool goes lower than it may above pods.</summary>
/// <param name="Tool">The tool.</param>
/// <param name="Swept">All that it sweeps there, in the drawing; never too small.</param>
/// <param name="TipPaths">Where its tip runs there, in the drawing, simplified for showing.</param>
/// <param name="FirstLine">First line of the program that takes it there.</param>
/// <param name="LastLine">Last line that does.</param>
/// <param name="LowestTipMm">Its lowest tip above the part's underside, mm; negative below it.</param>
/// <param name="LowestLine">The line that takes it lowest.</param>
public sealed record ToolCut(
    Tool Tool,
    Region Swept,
    ImmutableArray<ImmutableArray<Point2>> TipPaths,
    int FirstLine,
    int LastLine,
    double LowestTipMm,
    int LowestLine);

using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Programs;

namespace PodLayout.Jobs;

/// <summary>Where the job's program has its zero.</summary>
/// <param name="File">The program, as the job names it.</param>
/// <param name="Z">Where its Z zero lies.</param>
/// <param name="InDrawing">Where its X and Y zero lies in the drawing, mm.</param>
public sealed record ProgramZero(string File, ZZero Z, Point2 InDrawing)
{
    /// <summary>The tools that it moves, in order of first use; empty in files of before they were kept.</summary>
    public ImmutableArray<ProgramTool> Tools { get; init; } = [];

    /// <summary>Whether any of its lines is in inches; null where that was not kept. The control then shows inches.</summary>
    public bool? IsInInches { get; init; }
}

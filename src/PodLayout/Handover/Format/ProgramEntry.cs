using System.Collections.Immutable;
using PodLayout.Programs;

namespace PodLayout.Handover.Format;

/// <summary>The job's program: where it has its zero.</summary>
/// <param name="File">The program, as the job names it.</param>
/// <param name="ZZero">Where its Z zero lies.</param>
/// <param name="ZeroInDrawingMm">Where its X and Y zero lies in the drawing.</param>
/// <param name="Tools">The tools that it moves, in order of first use; files of before it was written have no such member.</param>
/// <param name="IsInInches">Whether any of its lines is in inches; files of before it was written have no such member.</param>
public sealed record ProgramEntry(
    string File, ZZero ZZero, XyMm ZeroInDrawingMm, ImmutableArray<ProgramToolEntry>? Tools = null, bool? IsInInches = null);

using System.Collections.Immutable;

namespace PodLayout.Programs;

/// <summary>What a program makes the tool do, move by move.</summary>
/// <param name="FileName">The program, as the user named it.</param>
/// <param name="Stretches">All moves whose place is known, in order.</param>
/// <param name="Tools">Numbers of the tools that move, in order of first use.</param>
/// <param name="DwellSeconds">Time in dwells, seconds.</param>
/// <param name="ToolChanges">How often the tool is changed.</param>
/// <param name="LineCount">Lines of the program.</param>
/// <param name="InInches">Whether any of its lines is in inches.</param>
public sealed record ToolPath(
    string FileName,
    ImmutableArray<Stretch> Stretches,
    ImmutableArray<int> Tools,
    double DwellSeconds,
    int ToolChanges,
    int LineCount,
    bool InInches);

using PodLayout.Geometry;

namespace PodLayout.Programs;

/// <summary>What a program does with one tool, in the program's own coordinates.</summary>
/// <param name="ToolNumber">The tool.</param>
/// <param name="FirstLine">Line of its first move.</param>
/// <param name="Extent">Box around its fed moves (of all, where none is fed), mm.</param>
/// <param name="LowestZMm">Lowest Z of its tip, mm.</param>
/// <param name="LowestLine">The line that takes it there.</param>
/// <param name="HighestZMm">Highest Z of its tip, mm.</param>
/// <param name="FedMm">Length of its fed moves, mm.</param>
/// <param name="RapidMm">Length of its rapid moves whose place is known, mm.</param>
/// <param name="CuttingSeconds">Time of its fed moves at the feed that the program names, seconds; without acceleration.</param>
/// <param name="UntimedMm">Length of fed moves without a feed, which the time leaves out, mm.</param>
public sealed record ToolUse(
    int ToolNumber,
    int FirstLine,
    Box2 Extent,
    double LowestZMm,
    int LowestLine,
    double HighestZMm,
    double FedMm,
    double RapidMm,
    double CuttingSeconds,
    double UntimedMm);

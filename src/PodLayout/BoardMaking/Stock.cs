using PodLayout.Shops;

namespace PodLayout.BoardMaking;

/// <summary>The sheet the board is cut from.</summary>
/// <param name="Material">What it is.</param>
/// <param name="ThicknessMm">Its thickness.</param>
/// <param name="SheetAlongGrainMm">Size along the grain of its face.</param>
/// <param name="SheetAcrossGrainMm">Size across the grain of its face.</param>
/// <param name="Grain">How the grain runs on the board.</param>
public sealed record Stock(
    string Material, double ThicknessMm, double SheetAlongGrainMm, double SheetAcrossGrainMm, GrainRun Grain);

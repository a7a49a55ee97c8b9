using System.Globalization;
using PodLayout.Findings;
using PodLayout.Parts;
using PodLayout.Programs;

namespace PodLayout.Cuts;

/// <summary>What a posted program keeps pods off, and what it says of heights.</summary>
public static class ProgramHazards
{
    /// <summary>One hazard a tool that goes below the height that counts; all heights and low rapids as findings.</summary>
    public static Outcome<IReadOnlyList<Hazard>> Of(ToolPath path, ProgramSetting setting, PartShape shape) =>
        Sweeping.Of(path, setting).Then(cuts =>
        {
            IReadOnlyList<Hazard> hazards = [.. cuts.Select(cut => new Hazard(
                "cut of the program",
                Source(path, cut),
                cut.Swept,
                true,
                true) { TipPaths = cut.TipPaths })];
            return Outcome<IReadOnlyList<Hazard>>.Of(
                hazards, [.. cuts.Select(cut => Depth(path, cut)), .. LowRapids.Of(path, setting, shape)]);
        });

    /// <summary>Where a tool's cuts stand in the program.</summary>
    internal static string Source(ToolPath path, ToolCut cut) =>
        Text($"{path.FileName} lines {cut.FirstLine} to {cut.LastLine}, tool {cut.Tool.Number}");

    private static Finding Depth(ToolPath path, ToolCut cut) => new(
        "tool-below",
        Severity.Note,
        FindingKind.Program,
        cut.LowestTipMm < 0
            ? Text($"tool {cut.Tool.Number} goes {-cut.LowestTipMm:0.##} mm below the underside")
            : Text($"tool {cut.Tool.Number} comes to {cut.LowestTipMm:0.##} mm above the underside"),
        new Place.InFile(path.FileName, cut.LowestLine));

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

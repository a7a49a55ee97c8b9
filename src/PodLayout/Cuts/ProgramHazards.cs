using System.Globalization;
using PodLayout.Findings;
using PodLayout.Parts;
using PodLayout.Programs;
using PodLayout.Reading;

namespace PodLayout.Cuts;

/// <summary>What a posted program keeps pods off, and what it says of heights.</summary>
public static class ProgramHazards
{
    /// <summary>One hazard a tool that goes below the height that counts; heights, low rapids and cuts across the part as findings.</summary>
    /// <param name="path">The program.</param>
    /// <param name="setting">How it stands to the part.</param>
    /// <param name="drawing">The drawing.</param>
    /// <param name="shape">The part.</param>
    /// <param name="operations">What operations cut.</param>
    public static Outcome<IReadOnlyList<Hazard>> Of(
        ToolPath path, ProgramSetting setting, Drawing drawing, PartShape shape, IReadOnlyList<Hazard> operations) =>
        Sweeping.Of(path, setting).Then(cuts =>
        {
            IReadOnlyList<Hazard> hazards = [.. cuts.Select(cut => new Hazard(
                "cut of the program",
                Source(path, cut),
                cut.Swept,
                true,
                true) { TipPaths = cut.TipPaths })];
            return Outcome<IReadOnlyList<Hazard>>.Of(
                hazards, [.. cuts.Select(cut => Depth(path, cut)), .. LowRapids.Of(path, setting, shape), .. CutsAcross.Of(path, setting, cuts, drawing, shape, operations)]);
        });

    /// <summary>Where a tool's cuts stand in the program.</summary>
    internal static string Source(ToolPath path, ToolCut cut) => Source(path, cut.FirstLine, cut.LastLine, cut.Tool.Number);

    /// <summary>The same from its lines.</summary>
    internal static string Source(ToolPath path, int firstLine, int lastLine, int toolNumber) =>
        firstLine == lastLine
            ? Text($"{path.FileName} line {firstLine}, tool {toolNumber}")
            : Text($"{path.FileName} lines {firstLine} to {lastLine}, tool {toolNumber}");

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

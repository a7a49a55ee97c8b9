using PodLayout.Findings;
using PodLayout.Layouts;

namespace PodLayout.Handover.Setup;

/// <summary>What is looked at before the spindle starts, and who has done so.</summary>
internal static class CheckSteps
{
    // Finding of a piece that comes loose.
    private const string Offcut = "offcut";

    private const string WatchHeading = "Offcuts and warnings";

    /// <summary>What the head of the card says of the warnings that stand further down.</summary>
    public static IEnumerable<string> Head(PlanResult result)
    {
        var count = result.Findings.Count(f => f.Severity == Severity.Warning);
        return count == 0 ? [] : [$"{(count == 1 ? "A warning stands" : $"{CsvText.Count(count)} warnings stand")} under \"{WatchHeading}\": read before setting up."];
    }

    public static IEnumerable<CardSection> Of(PlanResult result, Layout layout, CardUnit unit) =>
    [
        new("holding", "Vacuum and holding", [.. HoldingSteps.Of(layout, unit)]),
        new("offcuts", WatchHeading, [.. Watch(result)]),
        new("start", "Before the spindle starts",
        [
            new CardBlock.Steps(
            [
                ("S1", "The board lies flat on its pins; grooves and seals are clean."),
                ("S2", $"All {CsvText.Count(layout.Pods.Length)} pods stand as listed, none wobbles."),
                ("S3", $"The {CsvText.Count(LayoutFiling.OpenPorts(layout).Count())} ports are open, all others plugged, valves as listed."),
                ("S4", "The part lies at its marks, grain and face as stated."),
                ("S5", "Vacuum is on, the gauge reading is reached and stays there."),
                ("S6", "The part does not move when pushed by hand from each side."),
                ("S7", "Work offset and tool lengths are set and checked against the heights above."),
                ("S8", "A dry run above the part has been watched over pods, pins and stops."),
            ]),
            new CardBlock.Lines(["Gauge reading", "Set up by", "Checked by", "Date"]),
        ]),
        new("cautions", "Cautions", [.. Cautions.Of(result).Select(c => new CardBlock.Words(c))]),
        new("basis", "What was proven and assumed", [new CardBlock.Words(Proven(layout)), .. HoldingSteps.Assumed(layout)]),
    ];

    private static string Proven(Layout layout) => layout.Proof.Words
        + (layout.SupportPoints.IsEmpty ? "" : $" Worst overhang: {Summary.Percent(layout.WorstShareOfLimit)} of its limit.");

    private static IEnumerable<CardBlock> Watch(PlanResult result)
    {
        var offcuts = result.Findings.Where(f => f.Code == Offcut).ToList();
        if (offcuts.Count == 0)
        {
            yield return new CardBlock.Words(
                "No loose piece is listed: either the job states no blank, or nothing larger than swarf comes loose. Look at the cut.");
        }

        foreach (var piece in offcuts)
        {
            var words = piece.Remedy is { } remedy ? $"{piece.Message} {remedy}" : piece.Message;
            yield return new CardBlock.Words(char.ToUpperInvariant(words[0]) + words[1..], piece.Severity >= Severity.Warning);
        }

        foreach (var other in result.Findings.Where(f => f.Code != Offcut && f.Severity == Severity.Warning))
        {
            // The code of a finding is for scripts.
            var code = $" [{other.Code}]";
            yield return new CardBlock.Words("Warning: " + other.ToString()[..^code.Length], IsStrong: true);
        }
    }
}

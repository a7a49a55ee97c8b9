using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Layouts;
using PodLayout.Parts;

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

    public static IEnumerable<CardSection> Of(PlanResult result, Layout layout, StopWords stop, CardUnit unit) =>
    [
        new("holding", "Vacuum and holding", [.. stop.Lines.Select(w => new CardBlock.Words(w, IsStrong: true)), .. HoldingSteps.Of(layout, unit)]),
        new("offcuts", WatchHeading, [.. Watch(result, layout, unit), .. Left(result.Job.Part.Shape, layout, unit)]),
        new("start", "Before the spindle starts",
        [
            new CardBlock.Steps(
            [
                .. stop.Stops ? [("S0", "Whoever programs this job has cleared what stands at the head of this card, and has signed below.")] : Array.Empty<(string, string)>(),
                ("S1", "The board lies flat on its pins; grooves and seals are clean."),
                ("S2", $"All {CsvText.Count(layout.Pods.Length)} pods stand as listed, none wobbles."),
                ("S3", $"The {CsvText.Count(LayoutFiling.OpenPorts(layout).Count())} ports are open, all others plugged, valves as listed."),
                ("S4", "The part lies at its marks, grain and face as stated."),
                ("S5", "Vacuum is on, the gauge reading is reached and stays there."),
                ("S6", "The part does not move when pushed by hand from each side."),
                ("S7", "Work offset and tool lengths are set and checked against the heights above."),
                ("S8", "A dry run above the part has been watched over pods, pins and stops."),
            ]),
            new CardBlock.Lines([.. stop.Stops ? ["Cleared by", "On"] : Array.Empty<string>(), "Gauge reading", "Set up by", "Checked by", "Date"]),
        ]),
        new("cautions", "Cautions", [.. Cautions.Of(result).Select(c => new CardBlock.Words(c))]),
        new("basis", "What was proven and assumed", [new CardBlock.Words(unit.Words(Proven(layout))), .. HoldingSteps.Assumed(result.Job, layout, unit), .. Files(unit)]),
    ];

    private static IEnumerable<CardBlock> Files(CardUnit unit) =>
    [
        new CardBlock.Words(unit.InInches
            ? "Beside this card: pods.csv and ports.csv have the same places in inches (columns x_in and y_in) and in mm (x_mm and y_mm); layout.dxf is in mm."
            : "Beside this card: pods.csv, ports.csv and layout.dxf have the same places, in mm."),
    ];

    private static string Proven(Layout layout) => layout.Proof.Words
        + (layout.SupportPoints.IsEmpty ? "" : $" Worst overhang: {Summary.Percent(layout.WorstShareOfLimit)} of its limit.");

    // What the cuts leave: skins that the part hangs on, and floors that give under a hand.
    private static IEnumerable<CardBlock> Left(PartShape shape, Layout layout, CardUnit unit)
    {
        foreach (var ring in shape.Skinned)
        {
            yield return new CardBlock.Words(ring == 0
                ? "The part hangs in its blank on a skin along the outline: it comes free only when the skin is cut."
                : $"What is cut out of hole {CsvText.Count(ring)} hangs on a skin: it comes free only when the skin is cut.");
        }

        var turn = Turn.FromDegrees(layout.Placement.AngleDeg);
        foreach (var floor in shape.Floors)
        {
            var at = turn.Apply(floor.Area.Bounds.Centre) + layout.Placement.ZeroOnBoard;
            yield return new CardBlock.Words(
                $"A thin floor of {unit.LengthAndUnit(floor.LeastMm)} is left about X {unit.Rough(at.X)}, Y {unit.Rough(at.Y)} {unit.Name} on the board ({floor.Name}).");
        }
    }

    private static IEnumerable<CardBlock> Watch(PlanResult result, Layout layout, CardUnit unit)
    {
        var offcuts = result.Findings.Where(f => f.Code == Offcut).ToList();
        foreach (var block in LooseSteps.Of(result.Job, layout, unit))
        {
            yield return block;
        }

        // Those of the table are not told again, in the drawing's coordinates, which the operator cannot find.
        var told = result.Job.Offcuts.Select(o => o.Name + " ").ToList();
        if (offcuts.Count == 0)
        {
            yield return new CardBlock.Words(
                "No loose piece is listed: either the job states no blank, or nothing larger than swarf comes loose. Look at the cut.");
        }

        foreach (var piece in offcuts.Where(f => !told.Exists(name => f.Message.StartsWith(name, StringComparison.Ordinal))))
        {
            var words = piece.Remedy is { } remedy ? $"{piece.Message} {remedy}" : piece.Message;
            yield return new CardBlock.Words(unit.Words(char.ToUpperInvariant(words[0]) + words[1..]), piece.Severity >= Severity.Warning);
        }

        // Files of before the table have the sentences alone.
        foreach (var held in result.Job.Offcuts.IsEmpty ? Summary.Pieces(result, layout) : [])
        {
            yield return new CardBlock.Words(char.ToUpperInvariant(held[0]) + held[1..]);
        }

        foreach (var other in result.Findings.Where(f => f.Code != Offcut && f.Severity == Severity.Warning))
        {
            // The code of a finding is for scripts.
            var code = $" [{other.Code}]";
            yield return new CardBlock.Words(unit.Words("Warning: " + other.ToString()[..^code.Length]), IsStrong: true);
        }
    }
}

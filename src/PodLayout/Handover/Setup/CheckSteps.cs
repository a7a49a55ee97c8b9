using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Parts;
using PodLayout.Shops;

namespace PodLayout.Handover.Setup;

/// <summary>What is looked at before the spindle starts, and who has done so.</summary>
internal static class CheckSteps
{
    public static IEnumerable<CardSection> Of(PlanResult result, Layout layout, Laying laying, StopWords stop, CardUnit unit) =>
    [
        new(CardSection.Holding, "Vacuum and holding", [.. stop.Lines.Select(w => new CardBlock.Words(w, IsStrong: true)), .. HoldingSteps.Of(result.Job.Shop, layout, stop, unit)]),
        new(CardSection.Warnings, CardWarnings.Heading, [.. Watch(result, layout, unit), .. Unsupported(result, layout, unit), .. Left(result.Job.Part.Shape, layout, unit)]),
        new("start", "Before the spindle starts",
        [
            new CardBlock.Steps(
            [
                .. stop.Stops ? [("S0", "Whoever programs this job has cleared what stands at the head of this card, and has signed below.")] : Array.Empty<(string, string)>(),
                .. result.IsPartial ? [("S10", StretchWords.ToTick(result))] : Array.Empty<(string, string)>(),
                .. Read(CardWarnings.Of(result, layout, unit).Length),
                ("S1", "The board lies flat on its pins; grooves and seals are clean."),
                ("S3", $"The {CsvText.Count(LayoutFiling.OpenPorts(layout).Count())} ports are open, all others plugged{Stuck(result.Job.Shop.Board, layout)}; valves {(result.Job.Shop.Zones.IsEmpty ? $"open as written in {CardSection.Named(CardSection.Valves)}" : "as listed")}."),
                ("S2", $"All {CsvText.Count(layout.Pods.Length)} pods stand as listed, none wobbles."),
                ("S4", $"The {laying.Thing} lies at its marks, grain and face as stated."),
                ("S5", HoldingSteps.Check(result.Job.Shop, layout, unit)),
                ("S6", "The part does not move when pushed by hand from each side."),
                ("S7", "Work offset and tool lengths are set and checked against the heights above."),
                ("S8", "A dry run above the part has been watched over pods, pins and stops."),
            ]),
            new CardBlock.Lines([.. stop.Stops ? ["Cleared by", "On"] : Array.Empty<string>(), "Gauge reading", "Set up by", "Checked by", "Date"]),
        ]),
        new("cautions", "Cautions", [.. Cautions.Of(result).Select(c => new CardBlock.Words(c))]),
        new("basis", "What was proven and assumed", [new CardBlock.Words(unit.Words(Proven(layout))), .. HoldingSteps.Assumed(result.Job, layout, unit), .. Files(unit)]),
    ];

    private static (string, string)[] Read(int warnings) => warnings == 0 ? []
        : [("S9", $"{(warnings == 1 ? "The warning" : $"The {CsvText.Count(warnings)} warnings")} of {CardSection.Named(CardSection.Warnings)} {(warnings == 1 ? "has" : "have")} been read.")];

    private static string Stuck(GridBoard board, Layout layout) =>
        board.Ports.Any(p => p.State == PortState.StuckOpen && !LayoutFiling.OpenPorts(layout).Contains(p)) ? " or covered" : "";

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
        foreach (var (warning, index) in CardWarnings.Of(result, layout, unit).Select((w, i) => (w, i)))
        {
            yield return new CardBlock.Words($"Warning {CsvText.Count(index + 1)}: {warning}", IsStrong: true) { LeadsOn = true };
        }

        foreach (var block in LooseSteps.Of(result.Job, layout, unit))
        {
            yield return block;
        }

        var offcuts = result.Findings.Where(CardWarnings.IsOfPiece).ToList();
        if (offcuts.Count == 0 && result.Job.Offcuts.IsEmpty)
        {
            yield return new CardBlock.Words(NoneLoose(result.Job));
        }

        // Those of the table are not told again, in the drawing's coordinates, which the operator cannot find.
        foreach (var piece in offcuts.Where(f => f.Severity < Severity.Warning && !CardWarnings.IsInTable(result, f)))
        {
            yield return new CardBlock.Words(CardWarnings.Words(piece, unit));
        }

        // Files of before the table have the sentences alone.
        foreach (var held in result.Job.Offcuts.IsEmpty ? Summary.Pieces(result, layout) : [])
        {
            yield return new CardBlock.Words(char.ToUpperInvariant(held[0]) + held[1..]);
        }
    }

    private static IEnumerable<CardBlock> Unsupported(PlanResult result, Layout layout, CardUnit unit) =>
        StretchWords.OnBoard(result, layout, unit).Select(line => new CardBlock.Words(line));

    private static string NoneLoose(Job job) => (job.IsBlankStated ?? !job.Part.Shape.Blank.IsEmpty, job.IsBlankStated is not null) switch
    {
        (true, _) => "The job states the blank: when the part is cut out nothing larger than swarf comes loose.",
        (false, true) => "The job states no blank: which pieces come loose is not known here. Look at the cut.",
        _ => "This layout's file does not say whether the job states a blank: which pieces come loose is not known here. Look at the cut.",
    };
}

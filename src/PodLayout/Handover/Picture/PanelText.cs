using System.Globalization;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Shops;

namespace PodLayout.Handover.Picture;

/// <summary>The words beside the drawing: title block, where the part lies, what is proven, legend, cautions.</summary>
internal static class PanelText
{
    private const int MostStretches = 6;

    /// <param name="result">What is drawn.</param>
    /// <param name="shortNames">What stands in the pods for each type's name.</param>
    /// <param name="grainDeg">The grain on the board.</param>
    /// <param name="drawn">The drawing, for its legend; null where it is not drawn yet.</param>
    public static IReadOnlyList<PanelItem> Items(
        PlanResult result, IReadOnlyDictionary<string, string> shortNames, double grainDeg, SheetDraft? drawn) =>
    [
        .. TitleBlock(result),
        .. result.Layout is { } layout ? LayoutWords(result, layout, shortNames) : NoLayoutWords(result),
        .. PanelItem.Under("Signs", Legend.Items(result, grainDeg, shortNames, drawn)),
        .. PanelItem.Under("Cautions", Cautions.Of(result).SelectMany(c => PanelItem.Words(c))),
    ];

    private static IEnumerable<PanelItem> TitleBlock(PlanResult result)
    {
        var (job, part, board) = (result.Job, result.Job.Part, result.Job.Shop.Board);
        var species = part.Species.Length > 0 ? ", " + part.Species : "";
        return
        [
            .. PanelItem.Title(job.Name.Length > 0 ? job.Name : part.Name),
            .. PanelItem.Words($"Part: {part.Name}, {Mm(part.ThicknessMm)} mm thick{species}", 2),
            .. PanelItem.Words($"Board: {BoardName(board)}, grooves every {Mm(board.PitchMm)} mm", 3),
            .. PanelItem.Words($"Plan: {LayoutMark.Of(result)}"),
            ScaleBar(),
        ];
    }

    /// <summary>The board's name with its size, which many a name holds already.</summary>
    internal static string BoardName(GridBoard board)
    {
        var size = $"{Mm(board.WidthMm)} x {Mm(board.LengthMm)}";
        return board.Name.Contains(size, StringComparison.Ordinal) ? board.Name : $"{board.Name}, {size} mm";
    }

    private static IEnumerable<PanelItem> LayoutWords(
        PlanResult result, Layout layout, IReadOnlyDictionary<string, string> shortNames)
    {
        var support = result.Job.Support;
        var ports = LayoutFiling.OpenPorts(layout).Count();
        var types = layout.Pods.GroupBy(p => p.Type.Name, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal);
        var pods = string.Create(CultureInfo.InvariantCulture, $"Pods: {layout.Pods.Length}; open ports: {ports}");
        return [.. PanelItem.Under(pods,
        [
            .. PanelItem.Words("All other ports stay plugged."),
            .. types.SelectMany(g => PanelItem.Words(
                (shortNames[g.Key] == g.Key || shortNames[g.Key].Length == 0 ? "" : shortNames[g.Key] + " = ")
                    + string.Create(CultureInfo.InvariantCulture, $"{g.Key}: {g.Count()}"), 2)),
            .. Summary.Asked(result).SelectMany(line => PanelItem.Words(line)),
            .. Summary.Pieces(result, layout).SelectMany(line => PanelItem.Words(line)),
            .. PanelItem.Words(layout.Proof.Words),
            .. PanelItem.Words(Summary.WhereItLies(result, layout.Placement)),
            .. PanelItem.Words(
                $"Worst overhang {Summary.Percent(layout.WorstShareOfLimit)} of its limit. The limit is "
                    + $"{Mm(support.OverhangAlongGrainMm)} mm along the grain, {Mm(support.OverhangAcrossGrainMm)} mm across it."),
        ]), .. result.IsPartial ? PanelItem.Under(Summary.Capital(UnsupportedFindings.Amount(layout, result.Unsupported)) + " unsupported", Unsupported(result)) : [],
            .. HoldingDrawing.Words(layout)];
    }

    private static IEnumerable<PanelItem> NoLayoutWords(PlanResult result)
    {
        return PanelItem.Under(result.Interrupted ? "Cut short: no layout yet" : "No layout is possible as asked",
        [
            .. result.Job.Placement is not PlacementWish.Given
                ? PanelItem.Words("The part is drawn in the middle of the board; no placement was found.") : [],
            .. result.Findings.Where(f => f.Kind == FindingKind.NoLayout && f.Code != StretchWords.Told).Take(3).SelectMany(f => PanelItem.Words(f.Message, 5)),
            .. PanelItem.Words("The summary says what would help."),
            .. Unsupported(result),
        ]);
    }

    private static IEnumerable<PanelItem> Unsupported(PlanResult result) =>
        StretchWords.Of(result, MostStretches).SelectMany(line => PanelItem.Words(line, 8));

    /// <summary>A bar to measure against, and the scale.</summary>
    public static PanelItem ScaleBar(string paper = "A4", bool inInches = false) => new(9.5, (draft, at) =>
    {
        var u = draft.Scale;
        double[] lengths = [1000, 500, 300, 200, 100, 50, 20, 10, 5, 2, 1];
        var (unitMm, unit) = inInches ? (25.4, "in") : (1.0, "mm");
        var count = lengths.FirstOrDefault(l => l * unitMm / u <= 42, 1);
        var length = count * unitMm;
        var left = at - new Point2(0, 5.6 * u);
        for (var i = 0; i < 4; i++)
        {
            var x = left.X + length * i / 4;
            draft.AddBox(SheetDraft.Panel, i % 2 == 0 ? "datum-fill" : "bar-light", new(x, left.Y, x + length / 4, left.Y + 1.3 * u));
        }

        draft.AddBox(SheetDraft.Panel, "rule", new(left.X, left.Y, left.X + length, left.Y + 1.3 * u));
        draft.AddText(SheetDraft.Panel, "text", left + new Point2(0, 3.2 * u), $"Scale 1:{Mm(u)} on {paper}", 2.6);
        draft.AddText(SheetDraft.Panel, "text", left + new Point2(0, -1.9 * u), "0", 2.3);
        draft.AddText(SheetDraft.Panel, "text", left + new Point2(length, -1.9 * u), $"{Mm(count)} {unit}", 2.3, TextAnchor.Middle);
    });

    private static string Mm(double value) => CsvText.Mm(value);
}

using System.Collections.Immutable;
using PodLayout.Handover.Picture;
using PodLayout.Layouts;

namespace PodLayout.Handover.Setup;

/// <summary>The pictures of the card on paper, the same in the PDF and where a browser prints the page.</summary>
internal static class CardPicture
{
    /// <param name="result">The plan.</param>
    /// <param name="card">What the card says.</param>
    /// <param name="options">What the caller adds.</param>
    /// <param name="textPages">How many pages of text there are.</param>
    /// <returns>The first page, and the last ones where a part of it is shown larger.</returns>
    public static ImmutableArray<Sheet> OnPaper(PlanResult result, SetupCard card, CardOptions options, int textPages) => SetupPicture.OnPaper(
        result, card.Laying, (card.Title, Head(card)), textPages, options.Paper, CardUnit.Of(result, options).InInches, card.Faults,
        Besides(card), CardPages.Running(card, options.Paper), First(card));

    /// <summary>
    /// The same sheet for a page whose margins are those of the sheet, so that they hold the foot that the browser writes: without
    /// a foot of its own, and without what names the card on each page.
    /// </summary>
    public static Sheet ForBrowser(Sheet sheet, string foot, string running) => sheet with
    {
        Extent = sheet.Extent.Grow(-PageFrame.MarginMm * sheet.Scale),
        Layers = [.. sheet.Layers.Select(l => l.Name != SheetDraft.Panel ? l : l with
        {
            Primitives = [.. l.Primitives.Where(p => p.Style != "page-rule" && (p is not Primitive.Text text || (text.Words != foot && text.Words != running)))],
        })],
    };

    // What keeps from starting must be seen whichever page is looked at.
    public static ImmutableArray<string> First(SetupCard card) => card.Stop.Short is { } stop ? [stop]
        : card.Warnings.Length <= 1 ? card.Warnings : [$"READ FIRST: {CsvText.Count(card.Warnings.Length)} notes at the head of page 2."];

    // What must be seen beside the picture.
    private static ImmutableArray<string> Head(SetupCard card) =>
    [
        $"Face: {Said(card, "Face")}",
        $"Pods: {Said(card, "Pods")}",
        $"Ports to open: {Said(card, "Ports to open")}; all others stay plugged.",
        $"Gauge before the spindle starts: {Said(card, "Gauge before the spindle starts")}",
        $"Holding factor: {Said(card, "Holding factor")}",
    ];

    // Rows that repeat the title are left out of the head.
    private static ImmutableArray<string> Besides(SetupCard card) =>
    [
        .. card.Edition,
        Part(card) + Said(card, "Wood"),
        $"Grain: {Said(card, "Grain")}",
        $"Board: {Said(card, "Board")}",
    ];

    private static string Part(SetupCard card) => card.Head.Rows.All(r => r.Name != "Part") ? "Wood: "
        : $"Part: {Said(card, "Part")}, {(Said(card, "Wood").StartsWith("not given", StringComparison.Ordinal) ? "wood " : "")}";

    private static string Said(SetupCard card, string name) => card.Head.Rows.First(r => r.Name == name).Value;
}

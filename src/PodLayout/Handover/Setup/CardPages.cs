using System.Collections.Immutable;
using PodLayout.Handover.Picture;
using PodLayout.Layouts;

namespace PodLayout.Handover.Setup;

/// <summary>The card on paper: the picture on the first page, then what is done, in the order of work.</summary>
internal static class CardPages
{
    public static IEnumerable<Sheet> Of(PlanResult result, SetupCard card, CardOptions options)
    {
        var draft = Written(card, options.Paper);
        yield return SetupPicture.OnPaper(
            result, card.Laying, (card.Title, Head(card)), PaperDraft.Number(1, 1 + draft.Count), options.Paper, CardUnit.Of(result, options).InInches,
            First(card));
        foreach (var page in draft.Finish(before: 1))
        {
            yield return page;
        }
    }

    // What keeps from starting must be seen whichever page is looked at.
    private static ImmutableArray<string> First(SetupCard card) => card.Stop.Short is { } stop ? [stop]
        : card.Warnings.Length <= 1 ? card.Warnings : [$"READ FIRST: {CsvText.Count(card.Warnings.Length)} warnings at the head of page 2."];

    // What must be seen beside the picture.
    private static ImmutableArray<string> Head(SetupCard card)
    {
        // Rows that repeat the title are left out of the head.
        string Said(string name) => card.Head.Rows.First(r => r.Name == name).Value;
        var part = card.Head.Rows.Any(r => r.Name == "Part") ? $"Part: {Said("Part")}, " : "Wood: ";
        return
        [
            card.Edition,
            part + Said("Wood"),
            $"Face: {Said("Face")}",
            $"Grain: {Said("Grain")}",
            $"Board: {Said("Board")}",
            $"Pods: {Said("Pods")}",
            $"Ports to open: {Said("Ports to open")}; all others stay plugged.",
            $"Gauge before the spindle starts: {Said("Gauge before the spindle starts")}",
            $"Holding factor: {Said("Holding factor")}",
        ];
    }

    /// <summary>The pages of text, as they are when only their numbers are missing.</summary>
    public static PaperDraft Written(SetupCard card, PaperSize paper)
    {
        PaperDraft draft = new(paper, $"{card.Title}    {card.Edition}");
        PaperFlow.Fill(draft, [.. PaperBlocks.Of(card, draft)]);
        return draft;
    }
}

using PodLayout.Handover.Picture;
using PodLayout.Layouts;

namespace PodLayout.Handover.Setup;

/// <summary>The card on paper: the picture on the first page, then what is done, in the order of work.</summary>
internal static class CardPages
{
    public static IEnumerable<Sheet> Of(PlanResult result, SetupCard card, CardOptions options)
    {
        card = Paged(card, options.Paper);
        var draft = Written(card, options.Paper);
        yield return CardPicture.OnPaper(result, card, options, PaperDraft.Number(1, 1 + draft.Count));
        foreach (var page in draft.Finish(before: 1))
        {
            yield return page;
        }
    }

    // On paper whoever is sent to the warnings is told the page, which is known once the pages are filled.
    private static SetupCard Paged(SetupCard card, PaperSize paper)
    {
        if (card.Warnings.IsEmpty)
        {
            return card;
        }

        const int likely = 4;
        var section = CardSection.Named(CardSection.Warnings);
        SetupCard With(int page) => card with
        {
            Warnings = [.. card.Warnings.Select(w => w.Replace(section, $"{section} on page {CsvText.Count(page)}", StringComparison.Ordinal))],
        };
        return With(1 + Written(With(likely), paper).PageOf(CardSection.Warnings));
    }

    /// <summary>The pages of text, as they are when only their numbers are missing.</summary>
    public static PaperDraft Written(SetupCard card, PaperSize paper)
    {
        PaperDraft draft = new(paper, (card.Stop.Stops ? "DO NOT START    " : "") + $"{card.Title}    {card.Edition}", card.Stop.Stops);
        PaperFlow.Fill(draft, [.. PaperBlocks.Of(card, draft)]);
        return draft;
    }
}

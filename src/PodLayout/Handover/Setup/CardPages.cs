using PodLayout.Handover.Picture;
using PodLayout.Layouts;

namespace PodLayout.Handover.Setup;

/// <summary>The card on paper: the picture on the first page, then what is done, in the order of work.</summary>
internal static class CardPages
{
    public static IEnumerable<Sheet> Of(PlanResult result, SetupCard card, CardOptions options)
    {
        var draft = Written(card, options.Paper);
        yield return CardPicture.OnPaper(result, card, options, PaperDraft.Number(1, 1 + draft.Count));
        foreach (var page in draft.Finish(before: 1))
        {
            yield return page;
        }
    }

    /// <summary>The pages of text, as they are when only their numbers are missing.</summary>
    public static PaperDraft Written(SetupCard card, PaperSize paper)
    {
        PaperDraft draft = new(paper, $"{card.Title}    {card.Edition}");
        PaperFlow.Fill(draft, [.. PaperBlocks.Of(card, draft)]);
        return draft;
    }
}

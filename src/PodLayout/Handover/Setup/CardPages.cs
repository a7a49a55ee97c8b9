using System.Collections.Immutable;
using PodLayout.Handover.Lettering;
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

    /// <summary>The sheet with the picture for a browser that prints: its pages end where it likes, so that it is told no page of the PDF.</summary>
    /// <param name="result">The plan.</param>
    /// <param name="card">What the card says.</param>
    /// <param name="options">What the caller adds.</param>
    /// <param name="pages">The pages of the PDF.</param>
    public static Sheet ForBrowser(PlanResult result, SetupCard card, CardOptions options, ImmutableArray<Sheet> pages)
    {
        var foot = PaperDraft.Number(1, pages.Length);
        var isSame = CardPicture.First(card).SequenceEqual(CardPicture.First(Paged(card, options.Paper)));
        return CardPicture.ForBrowser(isSame ? pages[0] : CardPicture.OnPaper(result, card, options, foot), foot);
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

    /// <summary>
    /// What stands at the head of every page of text: whether the work may not start, the job, revision and date. Where that is too
    /// long for the page the job's name gives way, and then the longer of the others.
    /// </summary>
    public static string Running(SetupCard card, PaperSize paper, double shareOfWidth = 1)
    {
        const string between = "   |   ";
        var face = TypeFace.Of(isBold: true);
        double Width(string words) => face.Width(words, PaperDraft.RunningMm);
        string[] parts = [card.Title, .. card.Edition];
        var stop = card.Stop.Stops ? "DO NOT START" + between : "";
        var room = (paper.WidthMm - 2 * PaperDraft.Left) * shareOfWidth - Width(stop) - (parts.Length - 1) * Width(between);

        // None is cut below its share; what one leaves of its own the others have.
        var order = Enumerable.Range(0, parts.Length).OrderBy(i => Width(parts[i])).ToList();
        for (var k = 0; k < order.Count; k++)
        {
            parts[order[k]] = PaperDraft.Cut(face, parts[order[k]], room / (order.Count - k));
            room -= Width(parts[order[k]]);
        }

        return stop + string.Join(between, parts);
    }

    /// <summary>The pages of text, as they are when only their numbers are missing.</summary>
    public static PaperDraft Written(SetupCard card, PaperSize paper)
    {
        PaperDraft draft = new(paper, Running(card, paper), card.Stop.Stops);
        PaperFlow.Fill(draft, [.. PaperBlocks.Of(card, draft)]);
        return draft;
    }
}

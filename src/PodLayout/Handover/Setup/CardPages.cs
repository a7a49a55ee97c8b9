using System.Collections.Immutable;
using PodLayout.Handover.Lettering;
using PodLayout.Handover.Picture;
using PodLayout.Layouts;

namespace PodLayout.Handover.Setup;

/// <summary>The card on paper: the picture on the first page, then what is done, in the order of work, then parts of the picture that are shown larger.</summary>
/// <param name="Text">The pages of text.</param>
/// <param name="Pictures">The first page, and those after the text.</param>
internal sealed record CardPages(ImmutableArray<Sheet> Text, ImmutableArray<Sheet> Pictures)
{
    // Of an equal share of the head of a page, what the job's name keeps.
    private const double NameShare = 0.7;

    /// <summary>All of them.</summary>
    public ImmutableArray<Sheet> InOrder => [Pictures[0], .. Text, .. Pictures[1..]];

    public static CardPages Of(PlanResult result, SetupCard card, CardOptions options)
    {
        card = Paged(card, options.Paper);
        var draft = Written(card, options.Paper);
        var pictures = CardPicture.OnPaper(result, card, options, draft.Count);
        return new([.. draft.Finish(before: 1, after: pictures.Length - 1)], pictures);
    }

    /// <summary>The sheets with pictures for a browser that prints: its pages end where it likes, so that it is told no page of the PDF.</summary>
    /// <param name="result">The plan.</param>
    /// <param name="card">What the card says.</param>
    /// <param name="options">What the caller adds.</param>
    public ImmutableArray<Sheet> ForBrowser(PlanResult result, SetupCard card, CardOptions options)
    {
        var isSame = CardPicture.First(card).SequenceEqual(CardPicture.First(Paged(card, options.Paper)));
        var sheets = isSame ? Pictures : CardPicture.OnPaper(result, card, options, Text.Length);
        var total = Text.Length + sheets.Length;
        return [.. sheets.Select((sheet, i) => CardPicture.ForBrowser(sheet, PaperDraft.Number(i == 0 ? 1 : 1 + Text.Length + i, total), Running(card, options.Paper)))];
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

        // The name keeps a part of its share: it stands on the first page in full, and a revision, date or mark that is cut tells nothing.
        // None of the others is cut below its own; what one leaves of it the others have, and the name last.
        var name = Math.Min(Width(parts[0]), NameShare * room / parts.Length);
        var order = Enumerable.Range(1, parts.Length - 1).OrderBy(i => Width(parts[i])).ToList();
        for (var k = 0; k < order.Count; k++)
        {
            parts[order[k]] = PaperDraft.Cut(face, parts[order[k]], (room - name) / (order.Count - k));
            room -= Width(parts[order[k]]);
        }

        parts[0] = PaperDraft.Cut(face, parts[0], room);

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

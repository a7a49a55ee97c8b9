using PodLayout.Handover.Lettering;
using PodLayout.Handover.Picture;
using PodLayout.Layouts;

namespace PodLayout.Handover.Setup;

/// <summary>The card on paper: the picture on the first page, then what is done, in the order of work.</summary>
internal static class CardPages
{
    private const double TitleMm = 6.2;
    private const double HeadingMm = 5;
    private const double TextMm = 3.9;
    private const double StrongMm = 4.4;
    private const double LineMm = 5.4;
    private const double TickMm = 6;
    private const double StepMm = 9.5;
    private const double NameMm = 62;

    public static IEnumerable<Sheet> Of(PlanResult result, SetupCard card, CardOptions options)
    {
        PaperDraft draft = new(options.Paper, $"{card.Title}    {card.Edition}");
        draft.Need(double.PositiveInfinity);
        Words(draft, TypeFace.Of(isBold: true), "heading", card.Title, TitleMm, TitleMm * 1.25, 2);
        Words(draft, TypeFace.Of(isBold: false), "text", card.Edition, StrongMm, StrongMm * 1.5, 3);
        draft.Down(2);
        Block(draft, card.Head);
        foreach (var warning in card.Warnings)
        {
            Block(draft, new CardBlock.Words(warning, IsStrong: true));
        }

        for (var i = 0; i < card.Sections.Length; i++)
        {
            Section(draft, card.Sections[i], i + 1);
        }

        yield return CardPicture.OnPaper(result, card, options, PaperDraft.Number(1, 1 + draft.Count));
        foreach (var page in draft.Finish(before: 1))
        {
            yield return page;
        }
    }

    private static void Section(PaperDraft draft, CardSection section, int number)
    {
        // A heading stays with what follows it, and with the first rows of a table that a line or two lead to.
        draft.Need(HeadingMm * 2.4 + 3 * LineMm + (section.Blocks.Take(3).Any(b => b is CardBlock.Table) ? PaperTable.BeginningMm : 0));
        draft.Down(HeadingMm * 1.4);
        draft.Text("heading", PaperDraft.Left, draft.Y, $"{CsvText.Count(number)}. {section.Heading}", HeadingMm);
        draft.Down(HeadingMm * 0.8);
        draft.Rule("page-rule", PaperDraft.Left, PaperDraft.Left + draft.Width, draft.Y);
        draft.Down(1.5);
        foreach (var block in section.Blocks)
        {
            Block(draft, block);
        }
    }

    private static void Block(PaperDraft draft, CardBlock block)
    {
        switch (block)
        {
            case CardBlock.Words { IsStrong: true } words:
                Words(draft, TypeFace.Of(isBold: true), "text-bold", words.Text, StrongMm, StrongMm * 1.35, int.MaxValue);
                draft.Down(1.2);
                break;
            case CardBlock.Words words:
                Words(draft, TypeFace.Of(isBold: false), "text", words.Text, TextMm, LineMm, int.MaxValue);
                draft.Down(1.2);
                break;
            case CardBlock.Facts facts:
                Facts(draft, facts);
                break;
            case CardBlock.Table table:
                PaperTable.Draw(draft, table);
                break;
            case CardBlock.Steps steps:
                Steps(draft, steps);
                break;
            case CardBlock.Lines lines:
                Lines(draft, lines);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(block), block, "Unknown block.");
        }
    }

    private static void Words(PaperDraft draft, TypeFace face, string style, string text, double size, double line, int mostLines)
    {
        foreach (var words in face.Wrap(text, draft.Width, size).Take(mostLines))
        {
            draft.Need(line);
            draft.Text(style, PaperDraft.Left, draft.Y - line / 2, words, size);
            draft.Down(line);
        }
    }

    private static void Facts(PaperDraft draft, CardBlock.Facts facts)
    {
        var rows = facts.Rows.Select(r => (
            Names: TypeFace.Of(isBold: false).Wrap(r.Name, NameMm - 3, TextMm), Values: TypeFace.Of(isBold: true).Wrap(r.Value, draft.Width - NameMm, TextMm), r.Value)).ToList();
        double Height((IReadOnlyList<string> Names, IReadOnlyList<string> Values, string Value) row) => Math.Max(row.Names.Count, row.Values.Count) * LineMm + 1;

        // What is read together stands together, where that leaves no large gap.
        if (rows.Sum(Height) is var all && all < draft.FullRoom / 3)
        {
            draft.Need(all);
        }

        foreach (var row in rows)
        {
            var (names, values, value) = row;
            var height = Height(row);
            draft.Need(height);
            for (var i = 0; i < names.Count; i++)
            {
                draft.Text("text", PaperDraft.Left, draft.Y - (i + 0.5) * LineMm, names[i], TextMm);
            }

            for (var i = 0; i < values.Count && value.Length > 0; i++)
            {
                draft.Text("text-bold", PaperDraft.Left + NameMm, draft.Y - (i + 0.5) * LineMm, values[i], TextMm);
            }

            draft.Down(height);
            draft.Rule(value.Length == 0 ? "rule" : "row-rule", PaperDraft.Left + (value.Length == 0 ? NameMm : 0), PaperDraft.Left + draft.Width, draft.Y + 0.5);
        }

        draft.Down(2);
    }

    private static void Steps(PaperDraft draft, CardBlock.Steps steps)
    {
        foreach (var (_, text) in steps.Items)
        {
            var lines = TypeFace.Of(isBold: false).Wrap(text, draft.Width - TickMm - 4, TextMm);
            var height = Math.Max(StepMm, lines.Count * LineMm + 2);
            draft.Need(height);
            draft.Box("tick-box", PaperDraft.Left, draft.Y - height / 2 - TickMm / 2, TickMm);
            for (var i = 0; i < lines.Count; i++)
            {
                draft.Text("text", PaperDraft.Left + TickMm + 4, draft.Y - height / 2 + (lines.Count - 1 - 2 * i) * LineMm / 2, lines[i], TextMm);
            }

            draft.Down(height);
        }
    }

    private static void Lines(PaperDraft draft, CardBlock.Lines lines)
    {
        const double rowMm = 15, gapMm = 10;
        var width = (draft.Width - gapMm) / 2;
        for (var i = 0; i < lines.Names.Length; i++)
        {
            if (i % 2 == 0)
            {
                draft.Need(rowMm);
                draft.Down(rowMm);
            }

            var left = PaperDraft.Left + i % 2 * (width + gapMm);
            var named = TypeFace.Of(isBold: false).Width(lines.Names[i], TextMm) + 2;
            draft.Text("text", left, draft.Y + 2, lines.Names[i], TextMm);
            draft.Rule("rule", left + named, left + width, draft.Y);
        }

        draft.Down(3);
    }
}

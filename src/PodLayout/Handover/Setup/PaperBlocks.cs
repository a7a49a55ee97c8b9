using System.Collections.Immutable;
using PodLayout.Handover.Lettering;

namespace PodLayout.Handover.Setup;

/// <summary>The blocks of the card as runs for paper.</summary>
internal static class PaperBlocks
{
    private const double TitleMm = 6.2;
    private const double HeadingMm = 5;
    private const double TextMm = 3.9;
    private const double StrongMm = 4.4;
    private const double LineMm = 5.4;
    private const double TickMm = 6;
    private const double StepMm = 9.5;
    private const double NameMm = 62;
    private const double WriteMm = 15;

    /// <summary>The whole of a card, from its title to the last section.</summary>
    public static IEnumerable<PaperRun> Of(SetupCard card, PaperDraft draft)
    {
        yield return Paragraph(card.Title, isBold: true, "heading", TitleMm, TitleMm * 1.25, draft, 0) with { LeadsOn = true };
        foreach (var line in card.Edition)
        {
            yield return Paragraph(line, isBold: false, "text", StrongMm, StrongMm * 1.4, draft, line == card.Edition[^1] ? 2 : 0) with { LeadsOn = true };
        }

        foreach (var block in card.Warnings.Select(w => (CardBlock)new CardBlock.Words(w, IsStrong: true)).Append(card.Head))
        {
            yield return Of(block, draft);
        }

        for (var i = 0; i < card.Sections.Length; i++)
        {
            yield return Heading(card.Sections[i].Id, $"{CsvText.Count(i + 1)}. {card.Sections[i].Heading}");
            var blocks = card.Sections[i].Blocks;
            for (var b = 0; b < blocks.Length; b++)
            {
                yield return Of(blocks[b], draft) with { LeadsOn = (blocks[b].LeadsOn && b < blocks.Length - 1) || Leads(blocks, b) };
            }
        }
    }

    // Words above a table say how to read it, words that end in a colon what follows; whoever has ticked a list signs it.
    private static bool Leads(ImmutableArray<CardBlock> blocks, int index) => (blocks[index], blocks.ElementAtOrDefault(index + 1)) switch
    {
        (CardBlock.Words, CardBlock.Table or CardBlock.Facts or CardBlock.Steps) => true,
        (CardBlock.Words words, CardBlock.Words) => words.Text.EndsWith(':') || Leads(blocks, index + 1),
        (CardBlock.Steps, CardBlock.Lines) => true,
        _ => false,
    };

    private static PaperRun Heading(string id, string words)
    {
        const double above = HeadingMm * 1.4, below = HeadingMm * 0.8;
        return new(
            [
                new(above + below, draft =>
                {
                    draft.Begin(id);
                    draft.Text("heading", PaperDraft.Left, draft.Y - above, words, HeadingMm);
                    draft.Rule("page-rule", PaperDraft.Left, PaperDraft.Left + draft.Width, draft.Y - above - below);
                }),
            ],
            1.5)
        {
            LeadsOn = true,
        };
    }

    private static PaperRun Of(CardBlock block, PaperDraft draft) => block switch
    {
        CardBlock.Words { IsStrong: true } words => Paragraph(words.Text, isBold: true, "text-bold", StrongMm, StrongMm * 1.35, draft, 1.2),
        CardBlock.Words words => Paragraph(words.Text, isBold: false, "text", TextMm, LineMm, draft, 1.2),
        CardBlock.Facts facts => new([.. facts.Rows.SelectMany(row => Fact(row, draft))], 2),
        CardBlock.Table table => PaperTable.Of(table, draft),
        CardBlock.Steps steps => new([.. steps.Items.Select(item => Step(item.Text, draft))], 0),
        CardBlock.Lines lines => new([.. lines.Names.Chunk(2).Select(pair => ToWriteOn(pair, draft.Width))], 3),
        _ => throw new ArgumentOutOfRangeException(nameof(block), block, "Unknown block."),
    };

    private static PaperRun Paragraph(string text, bool isBold, string style, double size, double line, PaperDraft draft, double gap) => new(
        [
            .. TypeFace.Of(isBold).Wrap(text, draft.Width, size)
                .Select(words => new PaperPiece(line, d => d.Text(style, PaperDraft.Left, d.Y - line / 2, words, size))),
        ],
        gap);

    // A fact that is longer than a page goes on over the next one.
    private static IEnumerable<PaperPiece> Fact((string Name, string Value) row, PaperDraft draft)
    {
        var names = TypeFace.Of(isBold: false).Wrap(row.Name, NameMm - 3, TextMm);
        var values = TypeFace.Of(isBold: true).Wrap(row.Value, draft.Width - NameMm, TextMm);
        var most = (int)((draft.FullRoom - PaperRun.HeadingMm - 1) / LineMm);
        var lines = Math.Max(names.Count, values.Count);
        for (var first = 0; first < lines; first += most)
        {
            var (from, count, isEmpty) = (first, Math.Min(most, lines - first), row.Value.Length == 0);
            var height = count * LineMm + 1;
            yield return new(height, d =>
            {
                for (var i = 0; i < count; i++)
                {
                    Line(d, "text", PaperDraft.Left, names, from + i, d.Y - (i + 0.5) * LineMm);
                    Line(d, "text-bold", PaperDraft.Left + NameMm, values, from + i, d.Y - (i + 0.5) * LineMm);
                }

                d.Rule(isEmpty ? "rule" : "row-rule", PaperDraft.Left + (isEmpty ? NameMm : 0), PaperDraft.Left + d.Width, d.Y - height + 0.5);
            });
        }
    }

    private static void Line(PaperDraft draft, string style, double x, IReadOnlyList<string> lines, int index, double at)
    {
        if (index < lines.Count && lines[index].Length > 0)
        {
            draft.Text(style, x, at, lines[index], TextMm);
        }
    }

    private static PaperPiece Step(string text, PaperDraft draft)
    {
        var lines = TypeFace.Of(isBold: false).Wrap(text, draft.Width - TickMm - 4, TextMm);
        var height = Math.Max(StepMm, lines.Count * LineMm + 2);
        return new(height, d =>
        {
            d.Box("tick-box", PaperDraft.Left, d.Y - height / 2 - TickMm / 2, TickMm);
            for (var i = 0; i < lines.Count; i++)
            {
                d.Text("text", PaperDraft.Left + TickMm + 4, d.Y - height / 2 + (lines.Count - 1 - 2 * i) * LineMm / 2, lines[i], TextMm);
            }
        });
    }

    private static PaperPiece ToWriteOn(string[] names, double pageMm)
    {
        const double gapMm = 10;
        var width = (pageMm - gapMm) / 2;
        return new(WriteMm, draft =>
        {
            for (var i = 0; i < names.Length; i++)
            {
                var left = PaperDraft.Left + i * (width + gapMm);
                var named = TypeFace.Of(isBold: false).Width(names[i], TextMm) + 2;
                draft.Text("text", left, draft.Y - WriteMm + 2, names[i], TextMm);
                draft.Rule("rule", left + named, left + width, draft.Y - WriteMm);
            }
        });
    }
}

using System.Collections.Immutable;
using System.Text.RegularExpressions;
using FsCheck;
using FsCheck.Fluent;
using PodLayout.Handover.Lettering;
using PodLayout.Handover.Picture;
using PodLayout.Handover.Setup;

namespace PodLayout.Tests.Handover.Setup;

/// <summary>Where pages end, on cards of blocks at random.</summary>
public partial class PageBreaksTests
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Headings_stay_with_what_follows_and_tables_and_paragraphs_are_parted_only_where_they_must(bool isLetter) =>
        Check(isLetter, (card, pages) =>
        {
            for (var s = 0; s < card.Sections.Length; s++)
            {
                var page = Single(pages, $"{s + 1}. head{s}");
                Assert.Equal(page, Pages(pages, card.Sections[s].Blocks[0])[0].Page);
                var blocks = card.Sections[s].Blocks;
                for (var b = 0; b < blocks.Length; b++)
                {
                    var block = blocks[b];
                    var parts = Pages(pages, block);

                    // What takes one page together with what leads to it is never parted.
                    var first = b;
                    while (first > 0 && Leads(blocks, first - 1))
                    {
                        first--;
                    }

                    Assert.True(parts.Count == 1 || Written(RandomCards.Alone(blocks[first..(b + 1)]), isLetter).Count > 1, $"{block} is parted");

                    // Rows of a page and more cannot stand two by two.
                    if (parts.Count > 1 && (block is CardBlock.Steps || (block is CardBlock.Table { Rows: var rows } && rows.All(r => r.Cells.All(c => c.Length < 30)))))
                    {
                        Assert.All(parts, p => Assert.True(p.Rows >= 2, $"{p.Rows} row of {block} stands alone"));
                    }

                    if (block is CardBlock.Table table)
                    {
                        Assert.All(parts, p => Assert.All(table.Columns, h => Assert.Single(pages[p.Page], t => t.Words == h)));
                    }
                }
            }
        });

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Every_word_is_printed_once_within_the_margins_and_pages_are_numbered(bool isLetter) =>
        Check(isLetter, (card, pages) =>
        {
            var paper = isLetter ? PaperSize.Letter : PaperSize.A4;
            var wanted = card.Sections.SelectMany(s => s.Blocks).SelectMany(b => RandomCards.Words(b)).Order(StringComparer.Ordinal);
            var printed = pages.SelectMany(p => p).SelectMany(t => t.Words.Split(' ')).Where(w => Tag().IsMatch(w)).Order(StringComparer.Ordinal);
            Assert.Equal(wanted, printed);
            for (var i = 0; i < pages.Count; i++)
            {
                Assert.Contains(pages[i], t => t.Words == $"page {i + 2} of {pages.Count + 1}");
                foreach (var text in pages[i])
                {
                    var width = TypeFace.Of(text.Style is "text-bold" or "heading").Width(text.Words, text.SizeMm);
                    var left = text.Anchor == TextAnchor.End ? text.At.X - width : text.At.X;
                    Assert.True(left >= 14 - 1e-6 && left + width <= paper.WidthMm - 14 + 1e-6, $"{text.Words} passes the margin");
                    Assert.True(text.At.Y - text.SizeMm / 2 >= 7 && text.At.Y + text.SizeMm / 2 <= paper.HeightMm - 7, $"{text.Words} leaves the page");
                }

                Apart(pages[i]);
            }
        });

    [Fact]
    public void A_cell_longer_than_a_page_goes_on_over_the_next_one()
    {
        var words = string.Join(' ', Enumerable.Range(0, 900).Select(w => $"b1w{w}"));
        CardBlock.Table table = new("", "Set", ["b1h0", "b1h1"], [new("R0", ["b1r0", "short"]), new("R1", ["b1r1", words]), new("R2", ["b1r2", "short"])]);
        var pages = Written(RandomCards.Alone([table]), isLetter: false);
        Assert.Equal(
            RandomCards.Words(table).Where(w => Tag().IsMatch(w)).Order(StringComparer.Ordinal),
            pages.SelectMany(p => p).SelectMany(t => t.Words.Split(' ')).Where(w => Tag().IsMatch(w)).Order(StringComparer.Ordinal));
        Assert.True(pages.Count > 1);
    }

    // As the card promises: words stand with the table, the facts or the list that they tell how to read, a list with where it is signed.
    private static bool Leads(ImmutableArray<CardBlock> blocks, int index) => index + 1 < blocks.Length && (blocks[index], blocks[index + 1]) switch
    {
        (CardBlock.Words, CardBlock.Table or CardBlock.Facts or CardBlock.Steps) => true,
        (CardBlock.Words, CardBlock.Words) => Leads(blocks, index + 1),
        (CardBlock.Steps, CardBlock.Lines) => true,
        _ => false,
    };

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_table_of_any_length_begins_under_its_heading_with_two_rows_and_leaves_no_page_nearly_empty(bool isLetter)
    {
        // A row with its box takes 8 mm: a page has about 28 of them. So many words before as fill a page to any height.
        for (var rows = 1; rows <= 70; rows++)
        {
            for (var before = 1; before <= 400; before += 57)
            {
                CardBlock.Words first = new(string.Join(' ', Enumerable.Range(0, before).Select(w => $"b1w{w}"))), lead = new("b2w0 b2w1 b2w2");
                CardBlock.Table table = new("", "Set", ["b3h0", "b3h1"], [.. Enumerable.Range(0, rows).Select(r => new CardRow($"R{r}", [$"b3r{r}", "short"]))]);
                var pages = Written(
                    RandomCards.Alone([first]) with { Sections = [new("s", "head", [first]), new("t", "head1", [lead, table])] }, isLetter);
                var (page, parts) = (Single(pages, "2. head1"), Pages(pages, table));
                Assert.Equal((page, page), (Pages(pages, lead)[0].Page, parts[0].Page));
                Assert.True(parts[0].Rows >= Math.Min(rows, 2), $"{rows} rows after {before} words: {parts[0].Rows}");

                // A page that the table goes on from is full: two rows more at most would have had room.
                Assert.All(parts.Take(parts.Count - 1), p => Assert.True(pages[p.Page].Where(t => t.Words == "short").Min(t => t.At.Y) < 17 + 3 * 8, $"{rows} rows after {before} words"));
            }
        }
    }

    [Fact]
    public void The_last_page_is_never_one_of_a_line()
    {
        for (var lines = 5; lines <= 120; lines++)
        {
            var pages = Written(RandomCards.Alone([.. Enumerable.Range(0, lines).Select(b => new CardBlock.Words($"b{b}w0"))]), isLetter: false);
            Assert.Equal(lines, pages.Sum(p => p.Count(t => Tag().IsMatch(t.Words))));
            Assert.InRange(pages[^1].Count(t => Tag().IsMatch(t.Words)), 4, 60);
        }
    }

    private static void Check(bool isLetter, Action<SetupCard, List<List<Primitive.Text>>> holds) =>
        Prop.ForAll(Gen.Choose(0, 10_000_000).ToArbitrary(), seed =>
        {
            var card = RandomCards.Of(new Random(seed));
            holds(card, Written(card, isLetter));
        }).Check(Config.QuickThrowOnFailure.WithMaxTest(80).WithReplay(new Replay(new Rnd(17, 5), null)));

    private static List<List<Primitive.Text>> Written(SetupCard card, bool isLetter) =>
    [
        .. CardPages.Written(card, isLetter ? PaperSize.Letter : PaperSize.A4).Finish(before: 1)
            .Select(sheet => sheet.Layers.SelectMany(l => l.Primitives).OfType<Primitive.Text>().Where(t => t.Words.Length > 0).ToList()),
    ];

    private static int Single(List<List<Primitive.Text>> pages, string words) =>
        Enumerable.Range(0, pages.Count).Single(p => pages[p].Exists(t => t.Words == words));

    // The pages that a block stands on, and how many rows begin on each.
    private static List<(int Page, int Rows)> Pages(List<List<Primitive.Text>> pages, CardBlock block)
    {
        var first = RandomCards.Words(block)[0];
        var prefix = first[..first.IndexOfAny(['w', 'r'])];
        return
        [
            .. Enumerable.Range(0, pages.Count)
                .Select(p => (Page: p, Words: pages[p].SelectMany(t => t.Words.Split(' ')).Where(w => Tag().IsMatch(w) && w.StartsWith(prefix, StringComparison.Ordinal)
                    && w[prefix.Length] is 'w' or 'r' && w.StartsWith(prefix, StringComparison.Ordinal)).ToList()))
                .Where(p => p.Words.Count > 0).Select(p => (p.Page, p.Words.Count(w => w[prefix.Length] == 'r'))),
        ];
    }

    // No two texts lie over each other: in height by less than their size, across by their width.
    private static void Apart(List<Primitive.Text> page)
    {
        var boxes = page.Select(t =>
        {
            var width = TypeFace.Of(t.Style is "text-bold" or "heading").Width(t.Words, t.SizeMm);
            var left = t.Anchor == TextAnchor.End ? t.At.X - width : t.At.X;
            return (t.Words, Left: left, Right: left + width, Low: t.At.Y - 0.45 * t.SizeMm, High: t.At.Y + 0.45 * t.SizeMm);
        }).ToList();
        for (var i = 0; i < boxes.Count; i++)
        {
            for (var k = i + 1; k < boxes.Count; k++)
            {
                var (a, b) = (boxes[i], boxes[k]);
                Assert.False(a.Left < b.Right && b.Left < a.Right && a.Low < b.High && b.Low < a.High, $"{a} lies over {b}");
            }
        }
    }

    [GeneratedRegex("^b[0-9]+[wr][0-9]+$")]
    private static partial Regex Tag();
}

using PodLayout.Geometry;

namespace PodLayout.Handover.Picture;

/// <summary>One row of the panel of text beside the drawing.</summary>
/// <param name="HeightMm">Its height, mm of paper.</param>
/// <param name="Draw">Draws it below its upper left corner.</param>
internal sealed record PanelItem(double HeightMm, Action<SheetDraft, Point2> Draw)
{
    /// <summary>The style in the drawing that a row of the legend explains; null for other rows.</summary>
    public string? Explains { get; init; }

    private const double Size = 2.6;
    private const double LineMm = 3.7;
    private const double SignMm = 10;

    /// <summary>A heading with a rule above it.</summary>
    private static PanelItem Heading(string words) => new(6.4, (draft, at) =>
    {
        var u = draft.Scale;
        draft.AddLine(SheetDraft.Panel, "rule", at - new Point2(0, 1.2 * u), at + new Point2(PageFrame.ColumnWidthMm * u, -1.2 * u));
        draft.AddText(SheetDraft.Panel, "heading", at - new Point2(0, 4.2 * u), words, 2.8);
    });

    /// <summary>A heading that is not parted from the first two items below it.</summary>
    public static IEnumerable<PanelItem> Under(string heading, IEnumerable<PanelItem> items)
    {
        var below = items.ToList();
        return below.Skip(2).Prepend(Joined([Heading(heading), .. below.Take(2)]));
    }

    /// <summary>Items of which the last so many are not parted.</summary>
    public static IEnumerable<PanelItem> EndingIn(int count, IReadOnlyList<PanelItem> items) => items.Count <= count
        ? [Joined(items)] : items.Take(items.Count - count).Append(Joined([.. items.Skip(items.Count - count)]));

    private static PanelItem Joined(IReadOnlyList<PanelItem> items) => new(items.Sum(i => i.HeightMm), (draft, at) =>
    {
        foreach (var item in items)
        {
            item.Draw(draft, at);
            at -= new Point2(0, item.HeightMm * draft.Scale);
        }
    });

    /// <summary>The title.</summary>
    public static IEnumerable<PanelItem> Title(string words) =>
        TextMeasure.Wrap(words, PageFrame.ColumnWidthMm, 4.2, 3, true).Select(line => new PanelItem(5.4, (draft, at) =>
            draft.AddText(SheetDraft.Panel, "heading", at - new Point2(0, 2.7 * draft.Scale), line, 4.2)));

    /// <summary>Text over as many rows as it needs.</summary>
    public static IEnumerable<PanelItem> Words(string words, int mostLines = 8, bool isBold = false, double size = Size)
    {
        var lineMm = LineMm / Size * size;
        return TextMeasure.Wrap(words, PageFrame.ColumnWidthMm, size, mostLines, isBold).Select(line => new PanelItem(lineMm, (draft, at) =>
            draft.AddText(
                SheetDraft.Panel, isBold ? "text-bold" : "text", at - new Point2(0, lineMm / 2 * draft.Scale), line, size)));
    }

    /// <summary>Text whose rows are not parted.</summary>
    public static IEnumerable<PanelItem> Paragraph(string words, int mostLines, double size) => [Joined([.. Words(words, mostLines, size: size)])];

    /// <summary>A warning: bold, in a frame, on one page and in one column.</summary>
    public static PanelItem Warning(string words)
    {
        const double insetMm = 2, aboveMm = 1, belowMm = 1.5;
        const int mostLines = 9;
        double[] sizes = [4.1, 3.45, 2.8];
        IReadOnlyList<string> Lines(double s) => TextMeasure.Wrap(words, PageFrame.ColumnWidthMm - 2 * insetMm, s, int.MaxValue, true);
        var size = sizes.FirstOrDefault(s => Lines(s).Count <= mostLines, sizes[^1]);
        IReadOnlyList<string> lines = TextMeasure.Wrap(words, PageFrame.ColumnWidthMm - 2 * insetMm, size, 2 * mostLines, true);
        var lineMm = 1.25 * size;
        return new(aboveMm + lines.Count * lineMm + 2 * insetMm + belowMm, (draft, at) =>
        {
            var u = draft.Scale;
            at -= new Point2(0, aboveMm * u);
            draft.AddBox(SheetDraft.Panel, "warning-frame", new(
                at.X + 0.4 * u, at.Y - (lines.Count * lineMm + 2 * insetMm) * u, at.X + (PageFrame.ColumnWidthMm - 0.4) * u, at.Y));
            for (var i = 0; i < lines.Count; i++)
            {
                draft.AddText(SheetDraft.Panel, "text-bold", at + new Point2(insetMm, -insetMm - (i + 0.5) * lineMm) * u, lines[i], size);
            }
        });
    }

    /// <summary>A row of the legend that is there whatever is drawn.</summary>
    public static PanelItem Sign(string words, Action<SheetDraft, Point2> sign) => Sign(words, null, sign);

    /// <summary>A row of the legend: a sign and what it means.</summary>
    /// <param name="words">What it means.</param>
    /// <param name="explains">The style without which the sign is not in a drawing.</param>
    /// <param name="sign">Draws it about a point.</param>
    public static PanelItem Sign(string words, string? explains, Action<SheetDraft, Point2> sign)
    {
        var lines = TextMeasure.Wrap(words, PageFrame.ColumnWidthMm - SignMm - 1.5, Size, 3);
        var height = Math.Max(4.4, lines.Count * 3.4 + 0.6);
        return new(height, (draft, at) =>
        {
            var u = draft.Scale;
            sign(draft, at + new Point2(SignMm / 2 * u, -height / 2 * u));
            for (var i = 0; i < lines.Count; i++)
            {
                var y = -height / 2 + (lines.Count - 1) * 1.7 - i * 3.4;
                draft.AddText(SheetDraft.Panel, "text", at + new Point2((SignMm + 1.5) * u, y * u), lines[i], Size);
            }
        })
        {
            Explains = explains,
        };
    }

    /// <summary>Puts the items into the columns of the frame.</summary>
    public static void DrawAll(SheetDraft draft, PageFrame frame, IReadOnlyList<PanelItem> items)
    {
        List<double> heights = [.. items.Select(i => i.HeightMm)];
        foreach (var (item, (column, downMm)) in items.Zip(PageFrame.Filled(heights, frame.Evened(heights))))
        {
            item.Draw(draft, frame.Columns[column].Top - new Point2(0, downMm * draft.Scale));
        }
    }
}

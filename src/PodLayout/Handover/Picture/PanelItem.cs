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

    /// <summary>A heading that is not parted from the first item below it.</summary>
    public static IEnumerable<PanelItem> Under(string heading, IEnumerable<PanelItem> items)
    {
        var head = Heading(heading);
        var below = items.ToList();
        var first = new PanelItem(head.HeightMm + below[0].HeightMm, (draft, at) =>
        {
            head.Draw(draft, at);
            below[0].Draw(draft, at - new Point2(0, head.HeightMm * draft.Scale));
        });
        return below.Skip(1).Prepend(first);
    }

    /// <summary>The title.</summary>
    public static IEnumerable<PanelItem> Title(string words) =>
        TextMeasure.Wrap(words, PageFrame.ColumnWidthMm, 4.2, 2, true).Select(line => new PanelItem(5.4, (draft, at) =>
            draft.AddText(SheetDraft.Panel, "heading", at - new Point2(0, 2.7 * draft.Scale), line, 4.2)));

    /// <summary>Text over as many rows as it needs.</summary>
    public static IEnumerable<PanelItem> Words(string words, int mostLines = 8, bool isBold = false) =>
        TextMeasure.Wrap(words, PageFrame.ColumnWidthMm, Size, mostLines, isBold).Select(line => new PanelItem(LineMm, (draft, at) =>
            draft.AddText(
                SheetDraft.Panel, isBold ? "text-bold" : "text", at - new Point2(0, LineMm / 2 * draft.Scale), line, Size)));

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
        var column = 0;
        double used = 0;
        foreach (var item in items)
        {
            if (used > 0 && used + item.HeightMm > frame.ColumnHeightMm)
            {
                column++;
                used = 0;
            }

            item.Draw(draft, frame.ColumnTops[column] - new Point2(0, used * draft.Scale));
            used += item.HeightMm;
        }
    }
}

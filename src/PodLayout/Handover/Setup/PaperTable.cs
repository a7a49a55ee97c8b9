using PodLayout.Handover.Lettering;

namespace PodLayout.Handover.Setup;

/// <summary>A table on paper: its heading on every page, no row parted, no cell cut.</summary>
internal static class PaperTable
{
    private const double TextMm = 4.1;
    private const double HeadMm = 3.5;
    private const double LineMm = 5.2;
    private const double PadMm = 2.2;
    private const double TickMm = 6;
    private const double TickColumnMm = 14;
    private const double LeastMm = 12;

    /// <summary>About the height of a head and the rows that stay with it, mm.</summary>
    public const double BeginningMm = 40;

    // A head with fewer rows below it is taken to the next page.
    private const int RowsTogether = 3;

    // A cell of more lines than this would fill the page; it is cut.
    private const int MostLines = 8;

    public static void Draw(PaperDraft draft, CardBlock.Table table)
    {
        var tick = table.Tick is null ? 0 : TickColumnMm;
        var widths = Widths(table, draft.Width - tick);
        var head = table.Columns.Select((c, i) => TypeFace.Of(isBold: true).Wrap(c, widths[i] - PadMm, HeadMm)).ToList();
        var headHeight = head.Max(h => h.Count) * HeadMm * 1.3 + 2;
        var rows = table.Rows.Select(r => r.Cells.Select((c, i) => Lines(TypeFace.Of(isBold: i == 0).Wrap(c, widths[i] - PadMm, TextMm))).ToList()).ToList();
        draft.Need(headHeight + rows.Take(RowsTogether).Sum(r => Height(r, tick)));
        Head(draft, table, head, widths, tick, headHeight);
        foreach (var row in rows)
        {
            var height = Height(row, tick);
            if (draft.Need(height + 0.1))
            {
                Head(draft, table, head, widths, tick, headHeight);
            }

            Row(draft, row, widths, tick, height);
        }

        draft.Down(3);
    }

    private static IReadOnlyList<string> Lines(IReadOnlyList<string> lines) => lines.Count <= MostLines
        ? lines : [.. lines.Take(MostLines - 1), lines[MostLines - 1] + " …"];

    private static double Height(List<IReadOnlyList<string>> cells, double tick) =>
        Math.Max(tick > 0 ? TickMm + 2 : LineMm + 1.4, cells.Max(c => c.Count) * LineMm + 1.4);

    private static void Head(
        PaperDraft draft, CardBlock.Table table, List<IReadOnlyList<string>> head, double[] widths, double tick, double height)
    {
        var bottom = draft.Y - height;
        if (table.Tick is { } word)
        {
            draft.Text("text-bold", PaperDraft.Left, bottom + 1 + HeadMm * 0.65, word, HeadMm);
        }

        var x = PaperDraft.Left + tick;
        for (var i = 0; i < head.Count; i++)
        {
            for (var k = 0; k < head[i].Count; k++)
            {
                draft.Text("text-bold", x, bottom + 1 + (head[i].Count - 1 - k + 0.5) * HeadMm * 1.3, head[i][k], HeadMm);
            }

            x += widths[i];
        }

        draft.Down(height);
        draft.Rule("page-rule", PaperDraft.Left, PaperDraft.Left + draft.Width, draft.Y);
    }

    private static void Row(PaperDraft draft, List<IReadOnlyList<string>> cells, double[] widths, double tick, double height)
    {
        var middle = draft.Y - height / 2;
        if (tick > 0)
        {
            draft.Box("tick-box", PaperDraft.Left, middle - TickMm / 2, TickMm);
        }

        var x = PaperDraft.Left + tick;
        for (var i = 0; i < cells.Count; i++)
        {
            for (var k = 0; k < cells[i].Count; k++)
            {
                draft.Text(i == 0 ? "text-bold" : "text", x, middle + (cells[i].Count - 1 - 2 * k) * LineMm / 2, cells[i][k], TextMm);
            }

            x += widths[i];
        }

        draft.Down(height);
        draft.Rule("row-rule", PaperDraft.Left, PaperDraft.Left + draft.Width, draft.Y);
    }

    // As wide as its widest cell; where that is too much for the page the widest columns give way and their cells are broken.
    private static double[] Widths(CardBlock.Table table, double room)
    {
        var widths = table.Columns.Select((c, i) => PadMm + table.Rows
            .Select(r => TypeFace.Of(isBold: i == 0).Width(r.Cells[i], TextMm))
            .Append(c.Split(' ').Max(w => TypeFace.Of(isBold: true).Width(w, HeadMm))).Max() + 0.1).ToArray();
        for (var over = widths.Sum() - room; over > 0.01; over = widths.Sum() - room)
        {
            var widest = widths.Max();
            var next = widths.Where(w => w < widest - 0.01).DefaultIfEmpty(LeastMm).Max();
            var equal = widths.Count(w => w >= widest - 0.01);
            var target = Math.Max(Math.Max(next, LeastMm), widest - over / equal);
            if (target >= widest - 0.01)
            {
                target = widest - over / equal;
            }

            widths = [.. widths.Select(w => w >= widest - 0.01 ? target : w)];
        }

        // What is left over goes between the columns, as far as it helps the eye along the row.
        var spare = Math.Min(6, (room - widths.Sum()) / widths.Length);
        return [.. widths.Select(w => w + spare)];
    }
}

using PodLayout.Handover.Lettering;

namespace PodLayout.Handover.Setup;

/// <summary>A table on paper: its heading on every page that it is on, no row parted unless it is longer than a page, no cell cut.</summary>
internal static class PaperTable
{
    private const double TextMm = 4.1;
    private const double HeadMm = 3.5;
    private const double LineMm = 5.2;
    private const double PadMm = 3.2;
    private const double TickMm = 6;
    private const double TickColumnMm = 14;
    private const int HalvingsOfWidth = 40;
    private const double RowMm = 1.4;

    // "X mm": a heading of no more characters than this is not broken.
    private const int ShortHeading = 5;

    public static PaperRun Of(CardBlock.Table given, PaperDraft draft)
    {
        var table = given with { Columns = [.. given.Columns.Select(c => c.Length <= ShortHeading ? c.Replace(' ', '\u00a0') : c)] };
        var tick = table.Tick is null ? 0 : Math.Max(TickColumnMm, TypeFace.Of(isBold: true).Width(table.Tick, HeadMm) + PadMm);
        var widths = Widths(table, draft.Width - tick);
        var words = table.Columns.Select((c, i) => TypeFace.Of(isBold: true).Wrap(c, widths[i] - PadMm, HeadMm)).ToList();
        var height = words.Max(h => h.Count) * HeadMm * 1.3 + 2;
        PaperPiece head = new(height, d => Head(d, table, words, widths, tick, height));
        var most = Math.Max(1, (int)((draft.FullRoom - PaperRun.HeadingMm - height - RowMm) / LineMm));
        return new([.. table.Rows.SelectMany(r => Row(r, widths, tick, most))], 3) { Head = head };
    }

    // A row of more lines than a page has goes on over the next one.
    private static IEnumerable<PaperPiece> Row(CardRow row, double[] widths, double tick, int mostLines)
    {
        var cells = row.Cells.Select((c, i) => TypeFace.Of(isBold: i == 0).Wrap(c, widths[i] - PadMm, TextMm)).ToList();
        var lines = cells.Max(c => c.Count);
        for (var first = 0; first < lines; first += mostLines)
        {
            var (part, isLast) = (cells.Select(c => c.Skip(first).Take(mostLines).ToList()).ToList(), first + mostLines >= lines);
            var box = first == 0 ? tick : 0;
            var height = Math.Max(tick > 0 ? TickMm + 2 : LineMm + RowMm, part.Max(c => c.Count) * LineMm + RowMm);
            yield return new(height, d => Row(d, part, widths, tick, (box, height, isLast)));
        }
    }

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

        draft.Rule("page-rule", PaperDraft.Left, PaperDraft.Left + draft.Width, bottom);
    }

    private static void Row(PaperDraft draft, List<List<string>> cells, double[] widths, double tick, (double Box, double Height, bool IsLast) row)
    {
        var middle = draft.Y - row.Height / 2;
        if (row.Box > 0)
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

        if (row.IsLast)
        {
            draft.Rule("row-rule", PaperDraft.Left, PaperDraft.Left + draft.Width, draft.Y - row.Height);
        }
    }

    // As wide as its widest cell; where that is too much for the page the widest columns give way and their cells are broken, but
    // none below the widest word of its heading, which no page has without it.
    private static double[] Widths(CardBlock.Table table, double room)
    {
        double[] heads = [.. table.Columns.Select(c => PadMm + c.Split(' ').Max(w => TypeFace.Of(isBold: true).Width(w, HeadMm)) + 0.1)];
        double[] widths =
        [
            .. heads.Select((h, i) => table.Rows.Select(r => PadMm + TypeFace.Of(isBold: i == 0).Width(r.Cells[i], TextMm) + 0.1).Append(h).Max()),
        ];
        if (widths.Sum() > room)
        {
            double[] least = heads.Sum() <= room ? heads : [.. heads.Select(_ => 0.0)];
            var (low, high) = (0.0, widths.Max());
            double[] Capped(double cap) => [.. widths.Select((w, i) => Math.Max(least[i], Math.Min(w, cap)))];
            for (var i = 0; i < HalvingsOfWidth; i++)
            {
                var middle = (low + high) / 2;
                (low, high) = Capped(middle).Sum() <= room ? (middle, high) : (low, middle);
            }

            widths = Capped(low);
        }

        // A heading is broken only where there is no room for it in one line.
        for (var i = 0; i < widths.Length; i++)
        {
            var whole = Math.Max(widths[i], PadMm + TypeFace.Of(isBold: true).Width(table.Columns[i], HeadMm) + 0.1);
            widths[i] = widths.Sum() - widths[i] + whole <= room ? whole : widths[i];
        }

        // What is left over goes between the columns, as far as it helps the eye along the row.
        var spare = Math.Min(6, (room - widths.Sum()) / widths.Length);
        return [.. widths.Select(w => w + spare)];
    }
}

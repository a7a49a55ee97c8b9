using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Handover.Picture;

/// <summary>How the drawing and the panel of text share a page.</summary>
/// <param name="Scale">Board millimetres for a millimetre of paper.</param>
/// <param name="Page">The page in board coordinates.</param>
/// <param name="Columns">The panel's columns in the order in which they are filled.</param>
internal sealed record PageFrame(double Scale, Box2 Page, ImmutableArray<PanelColumn> Columns)
{
    /// <summary>Width of a column of the panel, mm of paper.</summary>
    public const double ColumnWidthMm = 61;

    /// <summary>What is left white along the edges of the page, mm of paper.</summary>
    public const double MarginMm = 8;

    private const double GapMm = 5;

    private const int MostBeside = 3;

    // Around the board: numbers on all sides; the datum's arrows left and below.
    private const double LeftMm = 13;
    private const double BelowMm = 13;
    private const double RightMm = 7;
    private const double AboveMm = 7;

    // Scales that a person can measure with.
    private static readonly ImmutableArray<double> Steps = [1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 7.5, 8, 9, 10];

    /// <summary>The board and what is drawn around it.</summary>
    /// <param name="content">The board and the part, board coordinates.</param>
    /// <param name="scale">Board millimetres for a millimetre of paper.</param>
    public static Box2 Around(Box2 content, double scale) => new(
        content.MinX - LeftMm * scale, content.MinY - BelowMm * scale, content.MaxX + RightMm * scale, content.MaxY + AboveMm * scale);

    /// <summary>The frame that draws the board largest.</summary>
    /// <param name="content">The board and the part, board coordinates.</param>
    /// <param name="itemHeights">Heights of the panel's items in order, mm of paper.</param>
    /// <param name="paper">The paper; A4 when not given.</param>
    public static PageFrame Fit(Box2 content, IReadOnlyList<double> itemHeights, PaperSize? paper = null)
    {
        var (shortSide, longSide) = ((paper ?? PaperSize.A4).WidthMm, (paper ?? PaperSize.A4).HeightMm);
        var frames = new[] { (longSide, shortSide), (shortSide, longSide) }
            .SelectMany(p => Enumerable.Range(0, MostBeside + 1).OrderBy(n => n == 0 ? 1.5 : n).Select(n => Beside(content, itemHeights, p, n)))
            .OfType<PageFrame>();
        return frames.MinBy(f => f.Scale)!;
    }

    /// <summary>The column of each item and how far down in it the item begins, mm; what fits in no column stands in the first empty one, and the last takes the rest.</summary>
    public static List<(int Column, double DownMm)> Filled(IReadOnlyList<double> itemHeights, IReadOnlyList<double> columnHeights)
    {
        List<(int, double)> places = [];
        var column = 0;
        double used = 0;
        foreach (var item in itemHeights)
        {
            while (used + item > columnHeights[column] + 1e-9 && column < columnHeights.Count - 1
                && (used > 0 || columnHeights.Skip(column + 1).Any(h => item <= h + 1e-9)))
            {
                column++;
                used = 0;
            }

            places.Add((column, used));
            used += item;
        }

        return places;
    }

    /// <summary>Heights of the columns, those below the drawing no higher than these items need.</summary>
    public IReadOnlyList<double> Evened(IReadOnlyList<double> itemHeights)
    {
        for (var height = 1.0; ; height++)
        {
            List<double> columns = [.. Columns.Select(c => c.IsBelow ? Math.Min(c.HeightMm, height) : c.HeightMm)];
            if (Fits(itemHeights, columns) || height >= Columns.Max(c => c.HeightMm))
            {
                return columns;
            }
        }
    }

    private static bool Fits(IReadOnlyList<double> itemHeights, List<double> columnHeights)
    {
        var places = Filled(itemHeights, columnHeights);
        return Enumerable.Range(0, itemHeights.Count).All(i => places[i].DownMm + itemHeights[i] <= columnHeights[places[i].Column] + 1e-9);
    }

    // So many columns beside the drawing, and as low ones below it as take the rest.
    private static PageFrame? Beside(Box2 content, IReadOnlyList<double> items, (double Width, double Height) page, int beside)
    {
        double width = page.Width - 2 * MarginMm - beside * (ColumnWidthMm + GapMm), height = page.Height - 2 * MarginMm;
        var below = (int)((width + GapMm) / (ColumnWidthMm + GapMm));
        if (below < 1)
        {
            return null;
        }

        List<double> Heights(double low) => [.. Enumerable.Repeat(height, beside), .. Enumerable.Repeat(low, below)];
        double low = 0;
        while (!Fits(items, Heights(low)))
        {
            if (++low > height)
            {
                return null;
            }
        }

        var drawing = height - (low > 0 ? low + GapMm : 0);
        if (drawing < ColumnWidthMm)
        {
            return null;
        }

        var pitch = below == 1 ? 0 : (width - below * ColumnWidthMm) / (below - 1) + ColumnWidthMm;
        return Make(content, page, width, drawing,
        [
            .. Enumerable.Range(0, beside).Select(i => new PanelColumn(
                new(page.Width - MarginMm - (beside - i) * (ColumnWidthMm + GapMm) + GapMm, page.Height - MarginMm), height, IsBelow: false)),
            .. Enumerable.Range(0, low > 0 ? below : 0).Select(i => new PanelColumn(new(MarginMm + i * pitch, MarginMm + low), low, IsBelow: true)),
        ]);
    }

    private static PageFrame Make(
        Box2 content, (double Width, double Height) page, double drawingWidth, double drawingHeight,
        IEnumerable<PanelColumn> columns)
    {
        double room = drawingWidth - LeftMm - RightMm, roomUp = drawingHeight - BelowMm - AboveMm;
        var scale = RoundUp(Math.Max(content.Width / room, content.Height / roomUp));

        // The drawing sits in the upper left of the page, in the middle of its share of it.
        var left = MarginMm + LeftMm + (room - content.Width / scale) / 2;
        var below = page.Height - MarginMm - AboveMm - (roomUp + content.Height / scale) / 2;
        var corner = new Point2(content.MinX - left * scale, content.MinY - below * scale);
        return new(
            scale,
            new(corner.X, corner.Y, corner.X + page.Width * scale, corner.Y + page.Height * scale),
            [.. columns.Select(c => c with { Top = corner + c.Top * scale })]);
    }

    /// <summary>The next coarser scale that a person can measure with.</summary>
    public static double RoundUp(double scale)
    {
        var decade = Math.Pow(10, Math.Floor(Math.Log10(scale)));
        return Steps.Select(s => s * decade).First(s => s >= scale * (1 - 1e-9));
    }
}

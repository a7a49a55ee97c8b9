using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Handover.Picture;

/// <summary>How the drawing and the panel of text share a page.</summary>
/// <param name="Scale">Board millimetres for a millimetre of paper.</param>
/// <param name="Page">The page in board coordinates.</param>
/// <param name="ColumnTops">Upper left corners of the panel's columns, board coordinates.</param>
/// <param name="ColumnHeightMm">Height of the columns, mm of paper.</param>
internal sealed record PageFrame(double Scale, Box2 Page, ImmutableArray<Point2> ColumnTops, double ColumnHeightMm)
{
    /// <summary>Width of a column of the panel, mm of paper.</summary>
    public const double ColumnWidthMm = 61;

    /// <summary>What is left white along the edges of the page, mm of paper.</summary>
    public const double MarginMm = 8;

    private const double GapMm = 5;

    // Around the board: numbers on all sides; the datum's arrows left and below.
    private const double LeftMm = 13;
    private const double BelowMm = 13;
    private const double RightMm = 7;
    private const double AboveMm = 7;

    // Scales that a person can measure with.
    private static readonly ImmutableArray<double> Steps = [1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 7.5, 8, 10];

    /// <summary>The frame that draws the board largest.</summary>
    /// <param name="content">The board and the part, board coordinates.</param>
    /// <param name="itemHeights">Heights of the panel's items in order, mm of paper.</param>
    /// <param name="paper">The paper; A4 when not given.</param>
    public static PageFrame Fit(Box2 content, IReadOnlyList<double> itemHeights, PaperSize? paper = null)
    {
        var (shortSide, longSide) = ((paper ?? PaperSize.A4).WidthMm, (paper ?? PaperSize.A4).HeightMm);
        var frames = new[] { (longSide, shortSide), (shortSide, longSide) }
            .SelectMany(p => new[] { Beside(content, itemHeights, p), Below(content, itemHeights, p) })
            .OfType<PageFrame>();
        return frames.MinBy(f => f.Scale)!;
    }

    /// <summary>How many columns of a height the items fill in order.</summary>
    public static int ColumnsFilled(IReadOnlyList<double> itemHeights, double height)
    {
        var columns = 1;
        double used = 0;
        foreach (var item in itemHeights)
        {
            if (used > 0 && used + item > height)
            {
                columns++;
                used = 0;
            }

            used += item;
        }

        return columns;
    }

    private static PageFrame? Beside(Box2 content, IReadOnlyList<double> items, (double Width, double Height) page)
    {
        var height = page.Height - 2 * MarginMm;
        var columns = ColumnsFilled(items, height);
        var drawing = page.Width - 2 * MarginMm - columns * (ColumnWidthMm + GapMm);
        if (drawing < ColumnWidthMm)
        {
            return null;
        }

        return Make(content, page, drawing, height, height, Enumerable.Range(0, columns).Select(i => new Point2(
            page.Width - MarginMm - (columns - i) * (ColumnWidthMm + GapMm) + GapMm, page.Height - MarginMm)));
    }

    private static PageFrame? Below(Box2 content, IReadOnlyList<double> items, (double Width, double Height) page)
    {
        var width = page.Width - 2 * MarginMm;
        var columns = (int)((width + GapMm) / (ColumnWidthMm + GapMm));
        var height = Math.Ceiling(items.Sum() / columns);
        while (ColumnsFilled(items, height) > columns)
        {
            height++;
        }

        var drawing = page.Height - 2 * MarginMm - GapMm - height;
        if (drawing < ColumnWidthMm)
        {
            return null;
        }

        var pitch = (width - columns * ColumnWidthMm) / (columns - 1) + ColumnWidthMm;
        return Make(content, page, width, drawing, height, Enumerable.Range(0, columns).Select(i => new Point2(
            MarginMm + i * pitch, MarginMm + height)));
    }

    private static PageFrame Make(
        Box2 content, (double Width, double Height) page, double drawingWidth, double drawingHeight, double columnHeight,
        IEnumerable<Point2> columnTops)
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
            [.. columnTops.Select(p => corner + p * scale)],
            columnHeight);
    }

    private static double RoundUp(double scale)
    {
        var decade = Math.Pow(10, Math.Floor(Math.Log10(scale)));
        return Steps.Select(s => s * decade).First(s => s >= scale * (1 - 1e-9));
    }
}

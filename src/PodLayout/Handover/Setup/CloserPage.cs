using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Handover.Picture;
using PodLayout.Layouts;

namespace PodLayout.Handover.Setup;

/// <summary>A page of paper with a part of the board shown larger.</summary>
internal static class CloserPage
{
    // What is left around the picture for the page's head and foot, and the numbers of the grooves.
    private const double AboveMm = 36;
    private const double BelowMm = 26;
    private const double BesideMm = 22;

    // No larger than that pods have this size.
    private const double MostPodMm = 24;

    private const double HeadingMm = 4.2;

    /// <summary>Width of the room for a picture as a share of its height.</summary>
    /// <param name="page">The page as it lies.</param>
    public static double Shape((double WidthMm, double HeightMm) page) => Room(page).Width / Room(page).Height;

    private static (double Width, double Height) Room((double WidthMm, double HeightMm) page) => (page.WidthMm - 2 * BesideMm, page.HeightMm - AboveMm - BelowMm);

    /// <summary>An empty sheet for a part of the board.</summary>
    /// <param name="page">The page as it lies.</param>
    /// <param name="window">The part.</param>
    /// <param name="pods">The pods in it.</param>
    public static (SheetDraft Draft, LetterSizes Sizes) Draft((double WidthMm, double HeightMm) page, Box2 window, ImmutableArray<PlacedPod> pods)
    {
        var (width, height) = Room(page);
        var scale = PageFrame.RoundUp(new[]
        {
            window.Width / width, window.Height / height, pods.Select(p => Math.Min(p.ExtentXMm, p.ExtentYMm)).DefaultIfEmpty(0).Min() / MostPodMm,
        }.Max());

        // Below the heading, in the middle.
        Point2 corner = new(window.Centre.X - page.WidthMm / 2 * scale, window.MaxY - (page.HeightMm - AboveMm) * scale);
        return (new(scale, new(corner.X, corner.Y, corner.X + page.WidthMm * scale, corner.Y + page.HeightMm * scale), window), LetterSizes.OnPaper);
    }

    /// <summary>The page with its head and foot.</summary>
    /// <param name="view">The part of the board.</param>
    /// <param name="page">The page as it lies.</param>
    /// <param name="running">What names the card on each page.</param>
    /// <param name="foot">What stands at the foot of the page.</param>
    public static Sheet Written(CloserView view, (double WidthMm, double HeightMm) page, string running, string foot)
    {
        var (sheet, u) = (view.Picture, view.Picture.Scale);
        Point2 At(double x, double y) => new(sheet.Extent.MinX + x * u, sheet.Extent.MinY + y * u);
        Primitive.Text Text(string style, double x, double y, string words, double size, TextAnchor anchor = TextAnchor.Start) =>
            new(style, At(x, y), words, size * u, anchor);
        double left = PaperDraft.Left, right = page.WidthMm - PaperDraft.Left, top = page.HeightMm - PaperDraft.HeadMm;
        Primitive[] words =
        [
            Text("text", left, top, running, PaperDraft.RunningMm),
            new Primitive.Line("page-rule", [At(left, top - 3), At(right, top - 3)]),
            Text("heading", left, top - 9, view.Title, HeadingMm),
            Text("text", right, top - 9, $"larger than on page 1, scale 1 : {CsvText.Mm(u)}", PaperDraft.RunningMm, TextAnchor.End),
            Text("text", right, PaperDraft.FootMm, foot, PaperDraft.RunningMm, TextAnchor.End),
        ];
        return sheet with { Layers = [.. sheet.Layers.Select(l => l.Name == SheetDraft.Panel ? l with { Primitives = [.. l.Primitives, .. words] } : l)] };
    }
}

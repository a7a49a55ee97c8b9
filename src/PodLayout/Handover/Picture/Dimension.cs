using PodLayout.Geometry;

namespace PodLayout.Handover.Picture;

/// <summary>Dimension lines with their figures.</summary>
internal static class Dimension
{
    private const double SizeMm = 2.6;

    /// <summary>Spans shorter than this take their arrows from outside, mm of paper.</summary>
    private const double ShortMm = 7;

    /// <summary>A horizontal dimension.</summary>
    public static void Across(SheetDraft draft, string layer, double fromX, double toX, double featureY, double lineY, string words)
    {
        var u = draft.Scale;
        var over = Math.Sign(lineY - featureY) * u;
        foreach (var x in (double[])[fromX, toX])
        {
            draft.AddLine(layer, "extension", new(x, featureY + over), new(x, lineY + over));
        }

        Line(draft, layer, new(fromX, lineY), new(toX, lineY));
        var isShort = (toX - fromX) / u < ShortMm;
        var width = TextMeasure.Width(words, SizeMm) * u;
        var fits = width + 2 * u < toX - fromX || !isShort;

        // Over its line when there is room; past the right arrow when there is not.
        Point2 at = fits ? new((fromX + toX) / 2, lineY + 2 * u) : new(toX + 6 * u, lineY);
        var middle = fits ? at.X : at.X + width / 2;
        draft.AddBox(layer, "knockout", new(middle - width / 2, at.Y - 1.3 * u, middle + width / 2, at.Y + 1.3 * u));
        draft.AddText(layer, "text", at, words, SizeMm, fits ? TextAnchor.Middle : TextAnchor.Start);
    }

    /// <summary>A vertical dimension.</summary>
    public static void Up(
        SheetDraft draft, string layer, double fromY, double toY, double featureX, double lineX, string words, bool textOnLeft,
        bool isShown = true)
    {
        if (!isShown)
        {
            return;
        }

        var u = draft.Scale;
        var over = Math.Sign(lineX - featureX) * u;
        foreach (var y in (double[])[fromY, toY])
        {
            if (over != 0)
            {
                draft.AddLine(layer, "extension", new(featureX + over, y), new(lineX + over, y));
            }
        }

        Line(draft, layer, new(lineX, fromY), new(lineX, toY));
        var width = TextMeasure.Width(words, SizeMm) * u;
        var y0 = (fromY + toY) / 2;
        Point2 at = new(lineX + (textOnLeft ? -1.4 * u : 1.4 * u), y0);
        var left = textOnLeft ? at.X - width : at.X;
        draft.AddBox(layer, "knockout", new(left - 0.4 * u, y0 - 1.5 * u, left + width, y0 + 1.5 * u));
        draft.AddText(layer, "text", at, words, SizeMm, textOnLeft ? TextAnchor.End : TextAnchor.Start);
    }

    private static void Line(SheetDraft draft, string layer, Point2 from, Point2 to)
    {
        var u = draft.Scale;
        if ((to - from).Length / u >= ShortMm)
        {
            Symbols.Arrow(draft, layer, "dimension", "datum-fill", from, to, both: true);
            return;
        }

        var out5 = (to - from) * (5 * u / (to - from).Length);
        Symbols.Arrow(draft, layer, "dimension", "datum-fill", from - out5, from, both: false);
        Symbols.Arrow(draft, layer, "dimension", "datum-fill", to + out5, to, both: false);
        draft.AddLine(layer, "dimension", from, to);
    }
}

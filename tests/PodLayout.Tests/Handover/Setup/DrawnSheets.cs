using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Handover.Picture;
using PodLayout.Handover.Setup;
using PodLayout.Layouts;

namespace PodLayout.Tests.Handover.Setup;

/// <summary>What a sheet shows, as its primitives say.</summary>
internal static class DrawnSheets
{
    public static Box2 Around(Primitive.Disc disc) => new Box2(disc.Centre.X, disc.Centre.Y, disc.Centre.X, disc.Centre.Y).Grow(disc.RadiusMm);

    public static IEnumerable<Sheet> Pictures(PlanResult plan)
    {
        var laying = Laying.Of(plan, plan.Layout!);
        yield return SetupPicture.OnScreen(plan, laying).Picture;
        yield return SetupPicture.OnPaper(plan, laying, ("x", ["y"]), 1, PaperSize.A4)[0];
        yield return SetupPicture.OnPaper(plan, laying, ("x", ["y"]), 1, PaperSize.Letter)[0];
    }

    public static IEnumerable<(Point2 A, Point2 B)> Lines(Sheet sheet, params string[] styles)
    {
        foreach (var primitive in sheet.Layers.Where(l => l.Name != "panel").SelectMany(l => l.Primitives).Where(p => styles.Contains(p.Style)))
        {
            var rings = primitive switch
            {
                Primitive.Area area => area.Rings.Select(r => r.Points.Append(r.Points[0])),
                Primitive.Line line => [line.Points],
                _ => [],
            };
            foreach (var points in rings.Select(r => r.ToList()))
            {
                for (var i = 1; i < points.Count; i++)
                {
                    yield return (points[i - 1], points[i]);
                }
            }
        }
    }

    // By points a tenth of a millimetre of paper apart.
    public static bool Reaches((Point2 A, Point2 B) line, Box2 box, double scale)
    {
        var near = Box2.Around([line.A, line.B]);
        if (!near.Touches(box))
        {
            return false;
        }

        var count = 1 + (int)((line.B - line.A).Length / (0.1 * scale));
        return Enumerable.Range(0, count + 1).Any(i => box.Contains(line.A + (line.B - line.A) * ((double)i / count)));
    }

    // Type of nine pixels is what can still be read at arm's length. Common practice, no source.
    public const double LeastPixels = 9;

    // A tablet held upright shows 820 x 1180 CSS pixels. Of the width the page's margins take 1.25 rem of 17 pixels on each side and the
    // frame two pixels on each side: 773.5 are left for a picture; in height it has 86 of 100 of what the browser's bars leave, which
    // take up to 110 pixels: from memory.
    public static double TabletPixels(double width, double height) => Math.Min((820 - 2 * 1.25 * 17 - 4) / width, 0.86 * (1180 - 110) / height);

    public static double TabletPixels(Sheet sheet) => TabletPixels(sheet.Extent.Width, sheet.Extent.Height);

    // The ink of a word: a capital is about 0.7 of the type high, and a digit 0.56 wide in a usual bold face, 0.5 in a plain one.
    public static Box2 Ink(Primitive.Text text)
    {
        var (width, height) = (text.WidthMm ?? (text.Style is "port-name" or "pod-type" ? 0.5 : 0.56) * text.Words.Length * text.SizeMm, 0.7 * text.SizeMm);
        var left = text.Anchor switch { TextAnchor.Start => 0, TextAnchor.Middle => width / 2, _ => width };
        return new(text.At.X - left, text.At.Y - height / 2, text.At.X - left + width, text.At.Y + height / 2);
    }

    // The same, no larger than it is in any face: digits and capitals are about .55 em wide and .7 em high.
    public static Box2 Inside(Primitive.Text text)
    {
        double width = text.Words.Length * 0.5 * text.SizeMm, height = 0.65 * text.SizeMm;
        (width, height) = text.AngleDeg == 90 ? (height, width) : (width, height);
        var left = text.Anchor switch { TextAnchor.Start => 0, TextAnchor.Middle => width / 2, _ => width };
        return new(text.At.X - left, text.At.Y - height / 2, text.At.X - left + width, text.At.Y + height / 2);
    }

    // But for what is no sign of the legend, and the three weights of ticks, of which a picture may show one.
    public static HashSet<string> Styles(Sheet sheet, string? layer) =>
    [
        .. sheet.Layers.Where(l => layer is null ? l.Name != "panel" : l.Name == layer).SelectMany(l => l.Primitives)
            .Where(p => p is not Primitive.Text && p.Style is not ("rule" or "bar-light" or "datum-fill" or "support-low" or "support-middle" or "support-high")).Select(p => p.Style),
    ];
}

using System.Xml.Linq;
using PodLayout.Geometry;
using PodLayout.Reading.Curves;

namespace PodLayout.Reading.Svg;

/// <summary>The page of an SVG, where it has a size.</summary>
/// <param name="Box">Its edges, mm.</param>
internal sealed record SvgPage(Box2 Box)
{
    /// <summary>A background may end this far inside the page, mm: pages are rounded to whole pixels.</summary>
    private const double EdgeMm = 0.3;

    public static SvgPage? Of(XElement root, Affine3 toMm, double? width, double? height)
    {
        if (width is not { } w || height is not { } h)
            return null;
        var (x, y) = SvgReader.ViewBox(root) is { } box ? (box[0], box[1]) : default;
        Point3 low = toMm.Apply(new(x, y, 0)), high = toMm.Apply(new(x + w, y + h, 0));
        return new(Box2.Around([new(low.X, low.Y), new(high.X, high.Y)]));
    }

    /// <summary>Whether a rectangle covers the page to its edges: programs put a background there.</summary>
    public bool IsCoveredBy(Chain chain) =>
        chain.Points.Count <= 5 && Box2.Around(chain.Points.Select(p => new Point2(p.X, p.Y))).Grow(EdgeMm).Contains(Box);
}

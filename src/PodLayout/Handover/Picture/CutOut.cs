using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Handover.Picture;

/// <summary>A sheet of which only a part of the board is shown.</summary>
internal static class CutOut
{
    /// <summary>The same sheet without what lies outside a part of it; what reaches out of it is covered up to the page's edge.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <remarks>The cover ends far beyond the page: a browser shows what lies beside it where its frame has another shape.</remarks>
    /// <param name="window">The part, board coordinates. Numbers of grooves and words of the page stand around it.</param>
    public static Sheet Of(Sheet sheet, Box2 window) => sheet with
    {
        Layers = [.. sheet.Layers.Select(layer => layer.Name switch
        {
            SheetDraft.Paper or SheetDraft.Numbers or SheetDraft.Panel => layer,
            SheetDraft.Edge => layer with { Primitives = [new Primitive.Area("paper", [SheetDraft.RingOf(sheet.Extent.Grow(Math.Max(sheet.Extent.Width, sheet.Extent.Height))), SheetDraft.RingOf(window)]), new Primitive.Area("rule", [SheetDraft.RingOf(window)])] },
            _ => layer with { Primitives = [.. layer.Primitives.Select(p => Within(p, window)).OfType<Primitive>()] },
        })],
    };

    private static Primitive? Within(Primitive primitive, Box2 window) => primitive switch
    {
        Primitive.Strokes strokes => Strokes(strokes, strokes.Ends, window),
        Primitive.Hatch hatch => Strokes(hatch, HatchLines.Of(hatch), window),
        Primitive.Line line => window.Touches(Box2.Around([.. line.Points])) ? line : null,
        Primitive.Area area => window.Touches(Box2.Around([.. area.Rings.SelectMany(r => r.Points)])) ? area : null,
        Primitive.Disc disc => window.Grow(disc.RadiusMm).Contains(disc.Centre) ? disc : null,
        Primitive.Ellipse ellipse => window.Grow(Math.Max(ellipse.HalfAxisMm, ellipse.OtherHalfAxisMm)).Contains(ellipse.Centre) ? ellipse : null,
        Primitive.Text text => window.Contains(text.At) ? text : null,
        _ => throw new ArgumentOutOfRangeException(nameof(primitive), primitive, "Unknown primitive."),
    };

    private static Primitive.Strokes? Strokes(Primitive of, ImmutableArray<Point2> ends, Box2 window)
    {
        var left = ImmutableArray.CreateBuilder<Point2>();
        for (var i = 0; i + 1 < ends.Length; i += 2)
        {
            var (a, b) = (ends[i], ends[i + 1]);
            if (EdgePath.Within(window, a, b) is var (from, to))
            {
                left.AddRange(a + (b - a) * from, a + (b - a) * to);
            }
        }

        return left.Count == 0 ? null : new Primitive.Strokes(of.Style, left.ToImmutable()) { Of = of.Of };
    }
}

using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Handover.Picture;

/// <summary>Parallel strokes clipped to an area: every output draws the same ones, whatever patterns it knows.</summary>
public static class HatchLines
{
    /// <summary>The ends of the strokes, two by two.</summary>
    public static ImmutableArray<Point2> Of(Primitive.Hatch hatch)
    {
        // In coordinates where the strokes run along X.
        var back = Turn.FromDegrees(-hatch.AngleDeg);
        var forth = back.Inverse;
        var rings = hatch.Rings.Select(r => r.Laid(back, default)).ToList();
        var minY = rings.Min(r => r.Bounds.MinY);
        var maxY = rings.Max(r => r.Bounds.MaxY);
        var ends = ImmutableArray.CreateBuilder<Point2>();
        for (var k = Math.Ceiling(minY / hatch.SpacingMm); k * hatch.SpacingMm <= maxY; k++)
        {
            var y = k * hatch.SpacingMm;
            var crossings = rings.SelectMany(r => Crossings(r, y)).Order().ToList();
            for (var i = 0; i + 1 < crossings.Count; i += 2)
            {
                ends.Add(forth.Apply(new(crossings[i], y)));
                ends.Add(forth.Apply(new(crossings[i + 1], y)));
            }
        }

        return ends.ToImmutable();
    }

    private static IEnumerable<double> Crossings(Ring ring, double y)
    {
        var n = ring.Points.Length;
        for (var i = 0; i < n; i++)
        {
            var a = ring.Points[i];
            var b = ring.Points[(i + 1) % n];

            // Half-open, so that a vertex on the line counts once.
            if (a.Y <= y != b.Y <= y)
            {
                yield return a.X + (y - a.Y) / (b.Y - a.Y) * (b.X - a.X);
            }
        }
    }
}

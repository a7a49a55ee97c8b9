using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Parts;

namespace PodLayout.Tests.Independent;

/// <summary>
/// The points that must be supported, by the definition in words: on each ring, every vertex that turns by more than 10
/// degrees is a corner; from corner to corner (round from the first vertex where there is none) equal steps of at most the
/// edge step. Interior points: whole multiples of the interior step in the drawing's coordinates, strictly inside the wood.
/// Thin floors: equal steps around each of their edges from its first vertex, of at most a quarter of their span and the interior
/// step; whole multiples of that step strictly inside.
/// </summary>
public static class PointsToSupport
{
    public static List<Point2> OnEdges(PartShape shape, double stepMm) =>
        [.. OnRing(shape.Outline.Points, stepMm), .. shape.Holes.SelectMany(h => OnRing(h.Points, stepMm))];

    public static List<Point2> OnFloors(PartShape shape, SupportRules rules)
    {
        var step = Math.Min(rules.ThinFloorSpanMm / 4, rules.InteriorStepMm);
        var points = new List<Point2>();
        foreach (var floor in shape.Floors)
        {
            var rings = floor.Area.Boundary.Select(r => r.Points).ToList();
            points.AddRange(rings.SelectMany(ring => OnRing(ring, step, isPlain: true)));
            var all = rings.SelectMany(r => r).ToList();
            for (var row = (int)Math.Floor(all.Min(p => p.Y) / step); row <= all.Max(p => p.Y) / step; row++)
            {
                for (var column = (int)Math.Floor(all.Min(p => p.X) / step); column <= all.Max(p => p.X) / step; column++)
                {
                    var p = new Point2(column * step, row * step);
                    if (rings.All(r => Plane.PointToRing(r, p) > 1e-4) && rings.Count(r => Plane.IsInside(r, p)) % 2 == 1)
                    {
                        points.Add(p);
                    }
                }
            }
        }

        return points;
    }

    public static List<Point2> Inside(PartShape shape, SupportRules rules)
    {
        var points = new List<Point2>();
        if (rules.InteriorSpanMm is null)
        {
            return points;
        }

        var outline = shape.Outline.Points;
        var step = rules.InteriorStepMm;
        var columns = (From: (int)Math.Floor(outline.Min(p => p.X) / step), To: (int)Math.Ceiling(outline.Max(p => p.X) / step));
        var rows = (From: (int)Math.Floor(outline.Min(p => p.Y) / step), To: (int)Math.Ceiling(outline.Max(p => p.Y) / step));
        for (var row = rows.From; row <= rows.To; row++)
        {
            for (var column = columns.From; column <= columns.To; column++)
            {
                var p = new Point2(column * step, row * step);
                var isOnEdge = shape.Holes.Prepend(shape.Outline).Any(r => Plane.PointToRing(r.Points, p) < 1e-9);
                if (!isOnEdge && Plane.IsInside(outline, p) && !shape.Holes.Any(h => Plane.IsInside(h.Points, p)))
                {
                    points.Add(p);
                }
            }
        }

        return points;
    }

    private static IEnumerable<Point2> OnRing(ImmutableArray<Point2> ring, double stepMm, bool isPlain = false)
    {
        // Length along the ring up to each vertex, from the first.
        var upTo = new double[ring.Length + 1];
        for (var i = 0; i < ring.Length; i++)
        {
            upTo[i + 1] = upTo[i] + Plane.Span(ring[i], ring[(i + 1) % ring.Length]);
        }

        var around = upTo[^1];
        var marks = Enumerable.Range(0, ring.Length).Where(i => !isPlain && TurnsSharply(ring, i)).Select(i => upTo[i]).ToList();
        if (marks.Count == 0)
        {
            marks.Add(0);
        }

        for (var m = 0; m < marks.Count; m++)
        {
            var length = (m + 1 < marks.Count ? marks[m + 1] : marks[0] + around) - marks[m];
            var steps = Math.Max(1, (int)Math.Ceiling(length / stepMm - 1e-9));
            for (var k = 0; k < steps; k++)
            {
                yield return At(ring, upTo, (marks[m] + length * k / steps) % around);
            }
        }
    }

    private static bool TurnsSharply(ImmutableArray<Point2> ring, int i)
    {
        Point2 before = ring[(i + ring.Length - 1) % ring.Length], here = ring[i], after = ring[(i + 1) % ring.Length];
        var turn = Math.Atan2(after.Y - here.Y, after.X - here.X) - Math.Atan2(here.Y - before.Y, here.X - before.X);
        return Math.Abs(Math.IEEERemainder(turn, 2 * Math.PI)) > 10 * Math.PI / 180;
    }

    private static Point2 At(ImmutableArray<Point2> ring, double[] upTo, double length)
    {
        var i = 0;
        while (i + 1 < ring.Length && upTo[i + 1] <= length)
        {
            i++;
        }

        Point2 a = ring[i], b = ring[(i + 1) % ring.Length];
        var t = upTo[i + 1] > upTo[i] ? (length - upTo[i]) / (upTo[i + 1] - upTo[i]) : 0;
        return new(a.X + (b.X - a.X) * t, a.Y + (b.Y - a.Y) * t);
    }
}

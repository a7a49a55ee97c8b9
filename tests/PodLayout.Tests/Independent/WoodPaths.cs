using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Tests.Independent;

/// <summary>
/// Shortest paths through the wood in a metric in which the limit is the unit circle. Straight where the straight line stays
/// in the wood; else Dijkstra over all vertices at which a path can bend, each line of sight tested against every edge by
/// cutting it at the edges and asking of each piece whether its middle lies in the wood.
/// </summary>
public sealed class WoodPaths
{
    // A path may cut a corner by this much: curves are chords, and edge points are rounded.
    private const double GrazeMm = 0.005;

    // Farther than this many limits the exact length does not matter.
    private const double Far = 3;

    private readonly ImmutableArray<ImmutableArray<Point2>> rings;
    private readonly List<(Point2 A, Point2 B)> edges;
    private readonly List<Point2> bends;
    private readonly Dictionary<(int, int), bool> sights = [];
    private readonly double cos;
    private readonly double sin;
    private readonly double alongMm;
    private readonly double acrossMm;

    public WoodPaths(ImmutableArray<ImmutableArray<Point2>> rings, double alongMm, double acrossMm, double grainDeg)
    {
        this.rings = rings;
        (sin, cos) = Math.SinCos(grainDeg * Math.PI / 180);
        this.alongMm = alongMm;
        this.acrossMm = acrossMm;
        edges = [.. rings.SelectMany(r => r.Select((p, i) => (p, r[(i + 1) % r.Length])))];
        bends = [.. rings.SelectMany((r, k) => r.Where((_, i) => BendsIntoWood(r, i, k == 0)))];
    }

    /// <summary>Shortest path from a point to the nearest of the pods, in limits; infinite beyond a few limits.</summary>
    public double ShareOfLimit(Point2 from, IReadOnlyList<ImmutableArray<Point2>> pods)
    {
        var best = double.PositiveInfinity;
        var hidden = new List<ImmutableArray<Point2>>();
        foreach (var (pod, length, end) in pods.Select(p => Straight(from, p)).OrderBy(p => p.Length))
        {
            if (length >= best || length > Far)
            {
                break;
            }

            if (Sees(from, end))
            {
                best = length;
            }
            else
            {
                hidden.Add(pod);
            }
        }

        return hidden.Count == 0 ? best : Math.Min(best, AroundCorners(from, hidden, best));
    }

    private double AroundCorners(Point2 from, List<ImmutableArray<Point2>> pods, double best)
    {
        var spent = Enumerable.Repeat(double.PositiveInfinity, bends.Count).ToArray();
        var queue = new PriorityQueue<int, double>();
        for (var i = 0; i < bends.Count; i++)
        {
            var length = Length(from, bends[i]);
            if (length < Math.Min(best, Far) && Sees(from, bends[i]))
            {
                spent[i] = length;
                queue.Enqueue(i, length);
            }
        }

        while (queue.TryDequeue(out var here, out var soFar) && soFar < best)
        {
            if (soFar > spent[here])
            {
                continue;
            }

            foreach (var (_, length, end) in pods.Select(p => Straight(bends[here], p)))
            {
                if (soFar + length < best && Sees(bends[here], end))
                {
                    best = soFar + length;
                }
            }

            for (var i = 0; i < bends.Count; i++)
            {
                var total = soFar + Length(bends[here], bends[i]);
                if (total < Math.Min(Math.Min(best, Far), spent[i]) && SeesBend(here, i))
                {
                    spent[i] = total;
                    queue.Enqueue(i, total);
                }
            }
        }

        return best;
    }

    private bool SeesBend(int a, int b)
    {
        var key = (Math.Min(a, b), Math.Max(a, b));
        if (!sights.TryGetValue(key, out var sees))
        {
            sees = Sees(bends[a], bends[b]);
            sights.Add(key, sees);
        }

        return sees;
    }

    private bool Sees(Point2 a, Point2 b)
    {
        // Most lines that are blocked are blocked in the middle.
        if (!IsWood(new((a.X + b.X) / 2, (a.Y + b.Y) / 2)))
        {
            return false;
        }

        var cuts = new List<double> { 0, 1 };
        double minX = Math.Min(a.X, b.X), maxX = Math.Max(a.X, b.X), minY = Math.Min(a.Y, b.Y), maxY = Math.Max(a.Y, b.Y);
        foreach (var (c, d) in edges)
        {
            if (Math.Max(c.X, d.X) < minX || Math.Min(c.X, d.X) > maxX || Math.Max(c.Y, d.Y) < minY || Math.Min(c.Y, d.Y) > maxY)
            {
                continue;
            }

            double abX = b.X - a.X, abY = b.Y - a.Y, cdX = d.X - c.X, cdY = d.Y - c.Y;
            var cross = abX * cdY - abY * cdX;
            if (cross == 0)
            {
                continue;
            }

            var t = ((c.X - a.X) * cdY - (c.Y - a.Y) * cdX) / cross;
            var s = ((c.X - a.X) * abY - (c.Y - a.Y) * abX) / cross;
            if (t > 0 && t < 1 && s >= -1e-9 && s <= 1 + 1e-9)
            {
                cuts.Add(t);
            }
        }

        cuts.Sort();
        var length = Plane.Span(a, b);
        for (var i = 0; i + 1 < cuts.Count; i++)
        {
            if ((cuts[i + 1] - cuts[i]) * length < GrazeMm)
            {
                continue;
            }

            var t = (cuts[i] + cuts[i + 1]) / 2;
            if (!IsWood(new(a.X + (b.X - a.X) * t, a.Y + (b.Y - a.Y) * t)))
            {
                return false;
            }
        }

        return true;
    }

    private bool IsWood(Point2 p) =>
        (Plane.IsInside(rings[0], p) && !rings.Skip(1).Any(h => Plane.IsInside(h, p)))
        || rings.Any(r => Plane.PointToRing(r, p) <= GrazeMm);

    private (ImmutableArray<Point2> Pod, double Length, Point2 End) Straight(Point2 from, ImmutableArray<Point2> pod)
    {
        if (Plane.IsInside(pod, from))
        {
            return (pod, 0, from);
        }

        var start = ToMetric(from);
        var nearest = Enumerable.Range(0, pod.Length)
            .Select(i => Plane.NearestOnSegment(ToMetric(pod[i]), ToMetric(pod[(i + 1) % pod.Length]), start))
            .MinBy(p => Plane.Span(p, start));
        return (pod, Plane.Span(nearest, start), FromMetric(nearest));
    }

    private double Length(Point2 a, Point2 b) => Plane.Span(ToMetric(a), ToMetric(b));

    private Point2 ToMetric(Point2 p) => new((p.X * cos + p.Y * sin) / alongMm, (p.Y * cos - p.X * sin) / acrossMm);

    private Point2 FromMetric(Point2 m) =>
        new(m.X * alongMm * cos - m.Y * acrossMm * sin, m.X * alongMm * sin + m.Y * acrossMm * cos);

    // The wood lies on the left of a counter-clockwise outline and outside a counter-clockwise hole.
    private static bool BendsIntoWood(ImmutableArray<Point2> ring, int i, bool isOutline)
    {
        Point2 a = ring[(i + ring.Length - 1) % ring.Length], b = ring[i], c = ring[(i + 1) % ring.Length];
        var turn = (b.X - a.X) * (c.Y - b.Y) - (b.Y - a.Y) * (c.X - b.X);
        var area = ring.Select((p, k) => p.X * ring[(k + 1) % ring.Length].Y - p.Y * ring[(k + 1) % ring.Length].X).Sum();
        return (turn * area < 0) == isOutline && turn != 0;
    }
}

using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Forces;

/// <summary>Convex hulls of forces in the plane (N), for what holds against every corner holds against all within.</summary>
internal static class ForceHull
{
    // A hull around another that has fewer corners may be this much larger, as a share of its area; but none of its corners may be
    // a larger force than the largest before.
    private const double MostGrowth = 0.015;

    /// <summary>
    /// Corners of the hull of no force at all and of all forces whose reach in some directions is known; the corner of no force
    /// is left out, since a part that lies still holds against it.
    /// </summary>
    /// <param name="directions">Unit vectors all around, counter-clockwise, an even step apart.</param>
    /// <param name="reach">The greatest force in each of these directions, N; at least 0.</param>
    public static ImmutableArray<Point2> FromReach(ReadOnlySpan<Point2> directions, ReadOnlySpan<double> reach)
    {
        var corners = new List<Point2>();
        for (var i = 0; i < directions.Length; i++)
        {
            var j = (i + 1) % directions.Length;
            var (a, b) = (directions[i], directions[j]);
            var turn = a.Cross(b);
            corners.Add(new((reach[i] * b.Y - reach[j] * a.Y) / turn, (reach[j] * a.X - reach[i] * b.X) / turn));
        }

        return Around(corners);
    }

    /// <summary>The hull of some forces, counter-clockwise, made of few corners, without the corner of no force.</summary>
    public static ImmutableArray<Point2> Around(IReadOnlyList<Point2> forces)
    {
        var hull = Hull(forces);
        Simplify(hull);
        var size = hull.Count == 0 ? 0 : hull.Max(p => p.Length);
        return [.. hull.Where(p => p.Length > 1e-9 * size)];
    }

    /// <summary>The convex hull, counter-clockwise (Andrew 1979).</summary>
    public static List<Point2> Hull(IReadOnlyList<Point2> points)
    {
        var sorted = Sorted(points);
        if (sorted.Length < 3)
        {
            return [.. sorted];
        }

        double size = 0;
        foreach (var p in sorted)
        {
            size = Math.Max(size, p.Length);
        }

        var hull = new List<Point2>();
        for (var pass = 0; pass < 2; pass++)
        {
            var start = hull.Count;
            for (var i = 0; i < sorted.Length; i++)
            {
                var p = sorted[pass == 0 ? i : sorted.Length - 1 - i];
                while (hull.Count >= start + 2 && (hull[^1] - hull[^2]).Cross(p - hull[^1]) <= 1e-12 * size * size)
                {
                    hull.RemoveAt(hull.Count - 1);
                }

                hull.Add(p);
            }

            hull.RemoveAt(hull.Count - 1);
        }

        return hull;
    }

    // From left to right, each once. A program asks for tens of thousands of hulls of a few forces each.
    private static ReadOnlySpan<Point2> Sorted(IReadOnlyList<Point2> points)
    {
        var sorted = new (Point2 At, int Index)[points.Count];
        for (var i = 0; i < sorted.Length; i++)
        {
            sorted[i] = (points[i], i);
        }

        Array.Sort(sorted, static (a, b) => a.At.X.CompareTo(b.At.X) is not 0 and var x ? x
            : a.At.Y.CompareTo(b.At.Y) is not 0 and var y ? y : a.Index.CompareTo(b.Index));
        var apart = new Point2[sorted.Length];
        var count = 0;
        foreach (var (at, _) in sorted)
        {
            if (count == 0 || apart[count - 1] != at)
            {
                apart[count++] = at;
            }
        }

        return apart.AsSpan(0, count);
    }

    // Edge by edge is taken out whose neighbours meet nearest beyond it, as long as little is added.
    private static void Simplify(List<Point2> hull)
    {
        var allowed = MostGrowth * Area(hull);
        var largest = hull.Count == 0 ? 0 : hull.Max(p => p.Length) * (1 + 1e-9);
        while (hull.Count > 4)
        {
            var (best, at, meet) = (allowed, -1, default(Point2));
            for (var i = 0; i < hull.Count; i++)
            {
                Point2 a = hull[(i + hull.Count - 1) % hull.Count], b = hull[i], c = hull[(i + 1) % hull.Count], d = hull[(i + 2) % hull.Count];
                var (u, v) = (b - a, c - d);
                var turn = u.Cross(v);
                if (turn >= 0)
                {
                    // The neighbours run apart.
                    continue;
                }

                var p = b + u * ((c - b).Cross(v) / turn);
                var added = Math.Abs((c - b).Cross(p - b)) / 2;
                if (added <= best && p.Length <= largest && (p - b).Dot(u) >= 0)
                {
                    (best, at, meet) = (added, i, p);
                }
            }

            if (at < 0)
            {
                return;
            }

            allowed -= best;
            hull[at] = meet;
            hull.RemoveAt((at + 1) % hull.Count);
        }
    }

    private static double Area(List<Point2> hull)
    {
        double twice = 0;
        for (var i = 0; i < hull.Count; i++)
        {
            twice += hull[i].Cross(hull[(i + 1) % hull.Count]);
        }

        return twice / 2;
    }
}

using System.Collections.Immutable;

namespace PodLayout.Geometry;

/// <summary>The convex hull of points.</summary>
public static class Hull
{
    /// <summary>
    /// Indices of the corners of the hull, counter-clockwise from the lowest X (of equal ones the lowest Y), by Andrew's chain
    /// (1979). Points on an edge are left out, of equal points all but the first.
    /// </summary>
    public static ImmutableArray<int> Corners(ImmutableArray<Point2> points)
    {
        var order = Enumerable.Range(0, points.Length).OrderBy(i => points[i].X).ThenBy(i => points[i].Y).ThenBy(i => i)
            .DistinctBy(i => points[i]).ToArray();
        if (order.Length < 3)
        {
            return [.. order];
        }

        var lower = Chain(order);
        Array.Reverse(order);
        var upper = Chain(order);
        return [.. lower[..^1], .. upper[..^1]];

        List<int> Chain(int[] sorted)
        {
            var chain = new List<int>();
            foreach (var i in sorted)
            {
                while (chain.Count > 1 && (points[chain[^1]] - points[chain[^2]]).Cross(points[i] - points[chain[^1]]) <= 0)
                {
                    chain.RemoveAt(chain.Count - 1);
                }

                chain.Add(i);
            }

            return chain;
        }
    }
}

using System.Collections.Immutable;

namespace PodLayout.Tests.Choice;

/// <summary>
/// The Steiner triple systems of the published covering instances, built by their constructions: A9 is the affine plane of order
/// three, A27 its product with three points, A15 comes from seven points by Bose's way with five and three, A45 is A15 tripled.
/// </summary>
internal static class SteinerTriples
{
    public static ImmutableArray<int[]> Of(int points) => points switch
    {
        9 => Tripled(ThreePoints),
        27 => Tripled(Tripled(ThreePoints)),
        15 => Bose(5),
        45 => Tripled(Bose(5)),
        _ => throw new ArgumentOutOfRangeException(nameof(points), points, "No such instance."),
    };

    private static ImmutableArray<int[]> ThreePoints => [[0, 1, 2]];

    // The product with the system of three points: triples over the same point, within one copy, and across copies.
    private static ImmutableArray<int[]> Tripled(ImmutableArray<int[]> system)
    {
        var v = system.Max(t => t.Max()) + 1;
        var triples = new List<int[]>();
        triples.AddRange(Enumerable.Range(0, v).Select(i => new[] { i, i + v, i + 2 * v }));
        foreach (var t in system)
        {
            for (var copy = 0; copy < 3; copy++)
            {
                triples.Add([.. t.Select(i => i + copy * v)]);
            }

            int[][] orders = [[0, 1, 2], [0, 2, 1], [1, 0, 2], [1, 2, 0], [2, 0, 1], [2, 1, 0]];
            triples.AddRange(orders.Select(o => new[] { t[0] + o[0] * v, t[1] + o[1] * v, t[2] + o[2] * v }));
        }

        return [.. triples];
    }

    // Bose's construction on Z(n) x Z(3) for odd n.
    private static ImmutableArray<int[]> Bose(int n)
    {
        var half = (n + 1) / 2;
        var triples = new List<int[]>();
        triples.AddRange(Enumerable.Range(0, n).Select(x => new[] { x, x + n, x + 2 * n }));
        for (var x = 0; x < n; x++)
        {
            for (var y = x + 1; y < n; y++)
            {
                for (var layer = 0; layer < 3; layer++)
                {
                    triples.Add([x + layer * n, y + layer * n, (x + y) * half % n + (layer + 1) % 3 * n]);
                }
            }
        }

        return [.. triples];
    }
}

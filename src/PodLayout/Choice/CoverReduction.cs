using System.Collections.Immutable;
using System.Numerics;
using System.Runtime.CompilerServices;

namespace PodLayout.Choice;

/// <summary>Leaves out rows of the model that follow from others.</summary>
public static class CoverReduction
{
    /// <summary>
    /// Indices of the points that are enough: a point goes when all supporters of another point support it too (then the
    /// other's support brings its own). Of points with equal supporters the first stays.
    /// </summary>
    public static ImmutableArray<int> NeededPoints(ImmutableArray<int[]> supporters, int seatCount)
    {
        var words = (seatCount + 63) / 64;
        // Points with few supporters first: only they can be contained in others.
        var order = Enumerable.Range(0, supporters.Length).OrderBy(i => supporters[i].Length).ThenBy(i => i).ToArray();
        var kept = new List<(int Point, ulong[] Bits)>();
        foreach (var point in order)
        {
            var bits = Bits(supporters[point], words);
            if (!kept.Any(k => IsSubset(k.Bits, bits)))
            {
                kept.Add((point, bits));
            }
        }

        return [.. kept.Select(k => k.Point).Order()];
    }

    /// <summary>
    /// Indices of the seats that are enough where room and stock do not matter: a seat goes when another supports all that it
    /// supports. Of seats that support the same points the first stays.
    /// </summary>
    public static ImmutableArray<int> NeededSeats(ImmutableArray<int[]> supporters, int seatCount)
    {
        var words = (supporters.Length + 63) / 64;
        var supported = new ulong[seatCount][];
        for (var seat = 0; seat < seatCount; seat++)
        {
            supported[seat] = new ulong[words];
        }

        for (var point = 0; point < supporters.Length; point++)
        {
            foreach (var seat in supporters[point])
            {
                supported[seat][point >> 6] |= 1UL << (point & 63);
            }
        }

        // Most seats of a box support the same as some other: the first of them stands for all.
        var distinct = new HashSet<ulong[]>(new SameBits());
        var sizes = supported.Select(b => b.Sum(w => BitOperations.PopCount(w))).ToArray();
        var kept = new List<int>();
        foreach (var seat in Enumerable.Range(0, seatCount).Where(s => sizes[s] > 0 && distinct.Add(supported[s]))
            .OrderByDescending(s => sizes[s]).ThenBy(s => s))
        {
            if (!kept.Exists(k => IsSubset(supported[seat], supported[k])))
            {
                kept.Add(seat);
            }
        }

        kept.Sort();
        return [.. kept];
    }

    /// <summary>The supporters that are among some seats (rising), by their place among them.</summary>
    public static ImmutableArray<int[]> Among(ImmutableArray<int[]> supporters, ImmutableArray<int> seats) =>
        [.. supporters.Select(of => of.Select(s => seats.BinarySearch(s)).Where(i => i >= 0).ToArray())];

    private static ulong[] Bits(int[] members, int words)
    {
        var bits = new ulong[words];
        foreach (var m in members)
        {
            bits[m >> 6] |= 1UL << (m & 63);
        }

        return bits;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static bool IsSubset(ulong[] small, ulong[] large)
    {
        for (var i = 0; i < small.Length; i++)
        {
            if ((small[i] & ~large[i]) != 0)
            {
                return false;
            }
        }

        return true;
    }

    private sealed class SameBits : IEqualityComparer<ulong[]>
    {
        public bool Equals(ulong[]? x, ulong[]? y) => x.AsSpan().SequenceEqual(y);

        public int GetHashCode(ulong[] bits)
        {
            var hash = 0UL;
            foreach (var word in bits)
            {
                hash = (hash ^ word) * 0x9E3779B97F4A7C15;
                hash ^= hash >> 29;
            }

            return (int)(hash ^ hash >> 32);
        }
    }
}

using System.Collections.Immutable;

namespace PodLayout.Choice;

/// <summary>Points no two of which can share a pod: each needs one of its own. A lower bound that needs no solver.</summary>
public static class DisjointPoints
{
    /// <summary>
    /// Picks such points one by one, always the one whose supporters shut out the fewest others. Anybody can check the result
    /// by looking at each pair; it need not be the largest such set.
    /// </summary>
    /// <param name="supporters">For each point the seats that support it; none empty.</param>
    /// <param name="seatCount">Number of seats.</param>
    /// <returns>Indices of the points, rising.</returns>
    public static ImmutableArray<int> Of(ImmutableArray<int[]> supporters, int seatCount)
    {
        var pointsOf = new List<int>[seatCount];
        for (var p = 0; p < supporters.Length; p++)
        {
            foreach (var s in supporters[p])
            {
                (pointsOf[s] ??= []).Add(p);
            }
        }

        // Points that share a seat with a point, itself included.
        HashSet<int>[] shares = [.. supporters.Select(of => of.SelectMany(s => pointsOf[s]).ToHashSet())];
        var open = Enumerable.Range(0, supporters.Length).ToHashSet();
        var picked = new List<int>();
        while (open.Count > 0)
        {
            var next = open.MinBy(p => (shares[p].Count(open.Contains), p));
            picked.Add(next);
            open.ExceptWith(shares[next]);
        }

        picked.Sort();
        return [.. picked];
    }
}

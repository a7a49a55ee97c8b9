namespace PodLayout.Choice;

/// <summary>
/// What keeps the part from one way of coming loose: the filled seats must bring as much as is needed. Row name: "the part is held
/// against ...".
/// </summary>
/// <param name="Seats">Seats that bring something, rising.</param>
/// <param name="Shares">What each brings at most, in millionths of what is needed: more than 0, at most all of it.</param>
public sealed record HoldRow(int[] Seats, int[] Shares)
{
    /// <summary>What is needed.</summary>
    public const int Needed = 1_000_000;

    /// <summary>Whether each seat by itself is enough: then the row is like that of a point to support.</summary>
    public bool IsCover => Array.TrueForAll(Shares, s => s >= Needed);

    /// <summary>Whether a choice, rising, keeps the row.</summary>
    public bool IsKept(System.Collections.Immutable.ImmutableArray<int> filled)
    {
        long sum = 0;
        foreach (var seat in filled)
        {
            var at = Array.BinarySearch(Seats, seat);
            sum += at < 0 ? 0 : Shares[at];
        }

        return sum >= Needed;
    }
}

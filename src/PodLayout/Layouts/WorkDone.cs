namespace PodLayout.Layouts;

/// <summary>How much was looked at. Counts, not times, so that they are the same on every machine.</summary>
/// <param name="Seats">Seats of the chosen placement.</param>
/// <param name="Points">Points that must be supported.</param>
/// <param name="Placements">Placements (or boxes of placements) examined.</param>
public sealed record WorkDone(int Seats, int Points, int Placements)
{
    /// <summary>Support rows made for the layout model in the search.</summary>
    public long Rows { get; init; }

    /// <summary>Pairs of a seat and a point in the search of which it was asked whether the one supports the other.</summary>
    public long Pairs { get; init; }
}

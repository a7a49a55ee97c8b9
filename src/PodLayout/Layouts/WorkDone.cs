namespace PodLayout.Layouts;

/// <summary>How much was looked at. Counts, not times, so that they are the same on every machine.</summary>
/// <param name="Seats">Seats of the chosen placement.</param>
/// <param name="Points">Points that must be supported.</param>
/// <param name="Placements">Placements (or boxes of placements) examined.</param>
public sealed record WorkDone(int Seats, int Points, int Placements);

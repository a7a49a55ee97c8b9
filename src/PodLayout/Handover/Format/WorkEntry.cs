namespace PodLayout.Handover.Format;

/// <summary>How much was looked at: counts, not times.</summary>
/// <param name="Seats">Seats of the chosen placement.</param>
/// <param name="Points">Points that must be supported.</param>
/// <param name="Placements">Placements (or boxes of placements) examined.</param>
public sealed record WorkEntry(int Seats, int Points, int Placements);

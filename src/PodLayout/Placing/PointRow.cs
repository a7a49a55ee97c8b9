namespace PodLayout.Placing;

/// <summary>The support row of a point, in the seats of the ground.</summary>
/// <param name="Point">Index of the point.</param>
/// <param name="Seats">The seats that could support it; null when not yet looked for.</param>
internal readonly record struct PointRow(int Point, SeatList? Seats);

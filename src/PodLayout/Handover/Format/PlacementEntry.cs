namespace PodLayout.Handover.Format;

/// <summary>Where the part lies: turned about the drawing's zero, which then comes to lie at a point of the board.</summary>
/// <param name="ZeroOnBoardMm">The drawing's zero, from the board's datum.</param>
/// <param name="AngleDeg">Turn, degrees counter-clockwise.</param>
public sealed record PlacementEntry(XyMm ZeroOnBoardMm, double AngleDeg);

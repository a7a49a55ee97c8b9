using PodLayout.Geometry;

namespace PodLayout.Layouts;

/// <summary>Where the part lies: turned about the drawing's zero, which then comes to lie at a point of the board.</summary>
/// <param name="ZeroOnBoard">Board coordinates of the drawing's zero, mm.</param>
/// <param name="AngleDeg">Turn, degrees counter-clockwise.</param>
public sealed record Placement(Point2 ZeroOnBoard, double AngleDeg);

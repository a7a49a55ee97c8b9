namespace PodLayout.Shops;

/// <summary>Something on the board that pods must stay clear of.</summary>
/// <param name="Name">What the shop calls it.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Shape">Where it is.</param>
/// <param name="ClearanceMm">How far a pod's body must stay away, mm.</param>
public sealed record Obstacle(string Name, ObstacleKind Kind, ObstacleShape Shape, double ClearanceMm);

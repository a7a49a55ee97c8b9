using PodLayout.Geometry;

namespace PodLayout.BoardMaking;

/// <summary>A part of the table with its own valve.</summary>
/// <param name="Name">What the shop calls it.</param>
/// <param name="Area">Its extent, board coordinates.</param>
/// <param name="VacuumExtent">The extent of the table's own vacuum grooves in it.</param>
public sealed record Zone(string Name, Box2 Area, Box2 VacuumExtent);

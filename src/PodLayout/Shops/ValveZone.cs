using PodLayout.Geometry;

namespace PodLayout.Shops;

/// <summary>A part of the vacuum table with a valve of its own.</summary>
/// <param name="Name">What the shop calls it.</param>
/// <param name="Area">Its extent, board coordinates.</param>
public sealed record ValveZone(string Name, Box2 Area);

using PodLayout.Geometry;

namespace PodLayout.BoardMaking;

/// <summary>A zone where it lies under a piece of the board.</summary>
/// <param name="Zone">The zone.</param>
/// <param name="Piece">Index of the piece.</param>
/// <param name="Area">What the two have in common.</param>
/// <param name="GasketLine">The middle of the gasket groove, a rectangle; null for none.</param>
/// <param name="ChannelArea">Where the middle of a channel may run.</param>
public sealed record ZonePart(Zone Zone, int Piece, Box2 Area, Box2? GasketLine, Box2 ChannelArea);

using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.BoardMaking;

/// <summary>One piece of the board; without seams there is one, the whole board.</summary>
/// <param name="Name">"board", or "piece 1" and so on.</param>
/// <param name="Outline">Its finished outline.</param>
/// <param name="Pins">The pins that locate it.</param>
/// <param name="Over">How it is turned over for its back.</param>
public sealed record Piece(string Name, Box2 Outline, ImmutableArray<LocatorPin> Pins, TurnedOver Over);

using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Shops;

/// <summary>The channels in the board's back that join ports to the pump, as ways for air.</summary>
/// <param name="WidthMm">Width of a channel.</param>
/// <param name="DepthMm">Its depth.</param>
/// <param name="Wish">How they are laid; where the checks decide, rows are reckoned with.</param>
/// <param name="Zones">The table's zones; empty for one that draws at the board's middle.</param>
/// <param name="LengthMm">Length from a port to the table's vacuum; null where it follows from the zones.</param>
public sealed record BackChannels(double WidthMm, double DepthMm, ChannelWish Wish, ImmutableArray<VacuumZone> Zones, double? LengthMm);

/// <summary>A part of the table that is fed by itself.</summary>
/// <param name="Area">Its extent, board coordinates.</param>
/// <param name="VacuumExtent">The extent of the table's own vacuum grooves in it.</param>
public sealed record VacuumZone(Box2 Area, Box2 VacuumExtent);

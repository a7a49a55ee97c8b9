using PodLayout.Shops;

namespace PodLayout.Handover.Format;

/// <summary>Something that pods stay clear of: a disc (centre and diameter) or a rectangle (extent).</summary>
/// <param name="Name">What the shop calls it.</param>
/// <param name="Kind">What it is.</param>
/// <param name="CentreMm">Centre of a disc; null for a rectangle.</param>
/// <param name="DiameterMm">Diameter of a disc; null for a rectangle.</param>
/// <param name="Extent">Extent of a rectangle; null for a disc.</param>
/// <param name="ClearanceMm">How far a pod's body stays away.</param>
public sealed record ObstacleEntry(
    string Name, ObstacleKind Kind, XyMm? CentreMm, double? DiameterMm, BoxEntry? Extent, double ClearanceMm);

using PodLayout.Geometry;
using PodLayout.Shops;

namespace PodLayout.Handover.Setup;

/// <summary>How far the edge of what is laid lies from a pin or stop.</summary>
/// <param name="Stop">The pin or stop.</param>
/// <param name="GapMm">Least distance; 0 where it touches.</param>
/// <param name="At">The place of the edge that is nearest, board coordinates.</param>
/// <param name="IsUnder">Whether the pin or stop stands under it.</param>
internal sealed record StopGap(Obstacle Stop, double GapMm, Point2 At, bool IsUnder);

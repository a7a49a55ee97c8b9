namespace PodLayout.Handover.Format;

/// <summary>A point that must be supported.</summary>
/// <param name="OnPartMm">In the drawing's coordinates.</param>
/// <param name="OnBoardMm">From the board's datum.</param>
/// <param name="IsEdge">Whether it lies on the outline or a hole; otherwise it is an interior point.</param>
/// <param name="ShareOfLimit">Distance through the wood to the nearest pod as a share of the limit.</param>
/// <param name="Pod">Id of that pod.</param>
public sealed record SupportPointEntry(XyMm OnPartMm, XyMm OnBoardMm, bool IsEdge, double ShareOfLimit, string Pod);

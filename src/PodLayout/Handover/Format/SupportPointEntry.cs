using PodLayout.Layouts;

namespace PodLayout.Handover.Format;

/// <summary>A point that must be supported.</summary>
/// <param name="OnPartMm">In the drawing's coordinates.</param>
/// <param name="OnBoardMm">From the board's datum.</param>
/// <param name="Limit">Which limit holds there: at an edge, inside, or on a thin floor.</param>
/// <param name="ShareOfLimit">Distance through the wood to the nearest pod as a share of the limit.</param>
/// <param name="Pod">Id of that pod.</param>
public sealed record SupportPointEntry(XyMm OnPartMm, XyMm OnBoardMm, SupportLimit Limit, double ShareOfLimit, string Pod);

namespace PodLayout.Handover.Format;

/// <summary>A change that was tried because something stays unsupported, and what its plan came to.</summary>
/// <param name="Number">What --take names it by.</param>
/// <param name="Words">What is done.</param>
/// <param name="UnsupportedMm">What still stays beyond its limits; 0 for nothing.</param>
/// <param name="Pods">Pods of the layout.</param>
/// <param name="HoldingFactor">The least factor of all that is held; null where none was asked for.</param>
public sealed record WayOutEntry(int Number, string Words, double UnsupportedMm, int Pods, double? HoldingFactor);

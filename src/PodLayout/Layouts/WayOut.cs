namespace PodLayout.Layouts;

/// <summary>A change that was tried where part of the wood stays unsupported, and what its plan came to.</summary>
/// <param name="Words">What is done.</param>
/// <param name="UnsupportedMm">What still stays beyond its limits, mm; 0 for nothing.</param>
/// <param name="Pods">Pods of the layout.</param>
/// <param name="HoldingFactor">The least factor of all that is held; null where none was asked for.</param>
public sealed record WayOut(string Words, double UnsupportedMm, int Pods, double? HoldingFactor);

namespace PodLayout.Handover.Format;

/// <summary>A rectangle along the axes.</summary>
/// <param name="MinXMm">Left edge.</param>
/// <param name="MinYMm">Lower edge.</param>
/// <param name="MaxXMm">Right edge.</param>
/// <param name="MaxYMm">Upper edge.</param>
public sealed record BoxEntry(double MinXMm, double MinYMm, double MaxXMm, double MaxYMm);

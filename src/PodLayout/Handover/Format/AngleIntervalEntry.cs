namespace PodLayout.Handover.Format;

/// <summary>An interval of angles.</summary>
/// <param name="FromDeg">Smallest angle, degrees.</param>
/// <param name="ToDeg">Largest angle, degrees.</param>
public sealed record AngleIntervalEntry(double FromDeg, double ToDeg);

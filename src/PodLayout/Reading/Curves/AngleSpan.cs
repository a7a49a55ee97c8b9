namespace PodLayout.Reading.Curves;

/// <summary>How far a curve runs, and how surely.</summary>
/// <param name="Radians">The span, more than 0 and at most a whole turn.</param>
/// <param name="Reading">How it was read.</param>
internal readonly record struct AngleSpan(double Radians, AngleReading Reading);

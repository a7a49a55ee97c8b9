namespace PodLayout.Reading;

/// <summary>How a drawing is to be read.</summary>
/// <param name="UnitOverride">The unit the drawing is in, whatever it says itself; null to go by the drawing.</param>
/// <param name="ChordToleranceMm">Greatest distance between a curve and its chords, mm.</param>
/// <param name="JoinGapMm">Ends of lines nearer than this are joined, mm.</param>
public sealed record ReadingOptions(LengthUnit? UnitOverride, double ChordToleranceMm, double JoinGapMm)
{
    /// <summary>The drawing's own unit and the program's tolerances.</summary>
    public static ReadingOptions Default { get; } = new(null, Tolerances.ChordMm, Tolerances.JoinGapMm);
}

namespace PodLayout;

/// <summary>Every tolerance of the program, with its unit and its reason.</summary>
public static class Tolerances
{
    /// <summary>Greatest distance between a curve and the chords that stand for it, mm. A tenth of what a router holds.</summary>
    public const double ChordMm = 0.01;

    /// <summary>Ends of drawn lines nearer than this are one point, mm. Drawing programs round to about this.</summary>
    public const double JoinGapMm = 0.05;

    /// <summary>
    /// Points of a drawing nearer than this are the same point, mm, without a word about it: the last digit that drawing
    /// programs write (in inches, six decimals), far below anything a tool can cut.
    /// </summary>
    public const double SamePointMm = 1e-4;

    /// <summary>
    /// Flaws of a drawn line up to this are mended with a note, mm: steps back at a joint, slivers, overlaps. A micrometre, a tenth
    /// of what curves may be off their chords.
    /// </summary>
    public const double FlawMm = 0.001;

    /// <summary>Lines nearer than this touch, mm: what is left of a double's digits ten kilometres from zero, with room.</summary>
    public const double TouchMm = 1e-7;

    /// <summary>
    /// How far a seal or body may pass its line and still count as touching it, mm. As large as the chord tolerance,
    /// so that a pod that fits a strip exactly is not lost to rounding; small beside any margin a shop would set.
    /// </summary>
    public const double ContactMm = 0.01;

    /// <summary>
    /// How far a pod's size may be off a whole number of pitches, mm: sizes given in inches are often rounded to a hundredth.
    /// </summary>
    public const double PodSizeMm = 0.01;

    /// <summary>How well a part can be laid down again against stops, mm. Offsets nearer than this are not told apart.</summary>
    public const double PlacingMm = 0.5;

    /// <summary>
    /// What two coordinates of a layout file may be off each other by rounding, mm: each is written to 0.001 mm, and a pod's
    /// distance from the part takes four of them, in two directions.
    /// </summary>
    public const double FiledMm = 0.003;

    /// <summary>The step in which coordinates are written to files, mm.</summary>
    public const double CoordinateMm = 0.001;

    /// <summary>Coordinates farther from zero than this are refused, mm: ten kilometres is no part.</summary>
    public const double LargestCoordinateMm = 1e7;

    /// <summary>
    /// How far, as a share, a holding factor may fall short of the one asked for and still count as reached: ten times what the
    /// factor is computed to, a hundredth of what the cutting force is known to.
    /// </summary>
    public const double HoldingShare = 1e-3;

    /// <summary>What a holding factor of a layout file may be off by rounding: factors are written to 0.001, rounded down.</summary>
    public const double FiledFactor = 1e-3;
}

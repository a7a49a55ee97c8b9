namespace PodLayout.Parts;

/// <summary>What a closed ring of the drawing is to the part.</summary>
public enum RingMeaning
{
    /// <summary>Not the part that is planned, or nothing is planned.</summary>
    LeftOut,

    /// <summary>The outline of the part.</summary>
    Outline,

    /// <summary>A through hole of the part.</summary>
    Hole,

    /// <summary>A marked spot.</summary>
    Defect,

    /// <summary>A line that an operation follows.</summary>
    Cut,
}

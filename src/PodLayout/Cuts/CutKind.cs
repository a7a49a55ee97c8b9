namespace PodLayout.Cuts;

/// <summary>What is done along the lines of a layer.</summary>
public enum CutKind
{
    /// <summary>A cut through the part along a line.</summary>
    ThroughProfile,

    /// <summary>A hole drilled through the part.</summary>
    Drill,

    /// <summary>A pocket from the upper face that leaves a floor.</summary>
    PocketFromFace,

    /// <summary>A pocket in the underside.</summary>
    PocketInUnderside,

    /// <summary>A groove in the underside along a line.</summary>
    GrooveInUnderside,

    /// <summary>A profile along an edge with a tool that reaches below the underside.</summary>
    EdgeProfile,

    /// <summary>A spot where no seal holds.</summary>
    Defect,
}

namespace PodLayout.Parts;

/// <summary>What the rings on a layer of the drawing are.</summary>
public enum LayerRole
{
    /// <summary>The outer edge; rings inside it on the same layer are holes.</summary>
    Outline,

    /// <summary>Through holes.</summary>
    Hole,

    /// <summary>Spots where a seal will not hold.</summary>
    Defect,

    /// <summary>Lines that an operation follows, and no edge of the part.</summary>
    Cut,

    /// <summary>Not the part: construction lines, dimensions, a frame.</summary>
    Ignore,
}

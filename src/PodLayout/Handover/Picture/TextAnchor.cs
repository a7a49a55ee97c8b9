namespace PodLayout.Handover.Picture;

/// <summary>Which point of a text lies at its place.</summary>
public enum TextAnchor
{
    /// <summary>The left end.</summary>
    Start,

    /// <summary>The middle.</summary>
    Middle,

    /// <summary>The right end.</summary>
    End,
}

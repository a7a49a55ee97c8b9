namespace PodLayout.Programs;

/// <summary>How the tool moves along a stretch.</summary>
public enum StretchKind : byte
{
    /// <summary>At the machine's rapid rate.</summary>
    Rapid,

    /// <summary>At the machine's rapid rate, back down a hole that a drilling cycle has just made.</summary>
    RapidInHole,

    /// <summary>Straight at the feed rate.</summary>
    Line,

    /// <summary>Along an arc or helix at the feed rate.</summary>
    Arc,
}

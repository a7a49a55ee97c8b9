namespace PodLayout.Jobs;

/// <summary>How a cutter runs along the wood.</summary>
public enum MillingDirection
{
    /// <summary>Its teeth go against the feed where they cut.</summary>
    Climb,

    /// <summary>Its teeth go with the feed where they cut.</summary>
    Conventional,
}

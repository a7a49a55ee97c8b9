namespace PodLayout.Checking;

/// <summary>What the figures of a rule are.</summary>
public enum Measure
{
    /// <summary>Millimetres, at least as many as needed.</summary>
    LeastMm,

    /// <summary>Millimetres, at most as many as allowed.</summary>
    MostMm,

    /// <summary>A share of the limit, at most 1.</summary>
    ShareOfLimit,

    /// <summary>A factor, at least what is needed.</summary>
    LeastFactor,

    /// <summary>A count, at least what is needed.</summary>
    LeastCount,

    /// <summary>A count, at most what is allowed.</summary>
    MostCount,
}

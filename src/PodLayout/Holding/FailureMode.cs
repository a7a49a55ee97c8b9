namespace PodLayout.Holding;

/// <summary>How a part moves when it is no longer held.</summary>
public enum FailureMode
{
    /// <summary>It slides across its pods.</summary>
    Slides,

    /// <summary>It turns on its pods about an upright axis.</summary>
    Twists,

    /// <summary>It tips over an edge of its pods.</summary>
    Tips,

    /// <summary>It is lifted off its pods.</summary>
    Lifts,
}

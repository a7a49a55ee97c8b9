namespace PodLayout.Findings;

/// <summary>How grave a finding is.</summary>
public enum Severity
{
    /// <summary>Worth knowing; nothing had to be changed.</summary>
    Note,

    /// <summary>Something in the input was put right; the message says what.</summary>
    Mended,

    /// <summary>The work goes on, but a person should look.</summary>
    Warning,

    /// <summary>The input cannot be used as it is.</summary>
    Refused,
}

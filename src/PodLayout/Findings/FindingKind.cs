namespace PodLayout.Findings;

/// <summary>What a refusal is about; the command line turns it into an exit code.</summary>
public enum FindingKind
{
    /// <summary>A file cannot be opened, read or written.</summary>
    File,

    /// <summary>The drawing of the part.</summary>
    Drawing,

    /// <summary>The posted program.</summary>
    Program,

    /// <summary>The job, shop or layout file, or an option of the command.</summary>
    Request,

    /// <summary>No layout is possible for what was asked.</summary>
    NoLayout,

    /// <summary>A layout breaks one of its rules.</summary>
    BrokenRule,
}

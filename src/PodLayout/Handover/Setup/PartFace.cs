namespace PodLayout.Handover.Setup;

/// <summary>Which face of the part is up as it lies on the pods.</summary>
public enum PartFace
{
    /// <summary>Nobody said.</summary>
    NotSaid,

    /// <summary>Its face side.</summary>
    Up,

    /// <summary>Its back; the face side lies on the pods.</summary>
    Down,
}

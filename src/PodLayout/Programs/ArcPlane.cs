namespace PodLayout.Programs;

/// <summary>The plane of an arc; its two axes in right-handed order, so that a positive turn runs counter-clockwise.</summary>
public enum ArcPlane : byte
{
    /// <summary>X and Y (G17).</summary>
    Xy,

    /// <summary>Z and X (G18).</summary>
    Zx,

    /// <summary>Y and Z (G19).</summary>
    Yz,
}

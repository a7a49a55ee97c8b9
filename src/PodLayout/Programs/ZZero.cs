namespace PodLayout.Programs;

/// <summary>Where the program's Z zero lies.</summary>
public enum ZZero
{
    /// <summary>On the part's upper face.</summary>
    PartFace,

    /// <summary>On the part's underside.</summary>
    PartUnderside,

    /// <summary>On the pods' upper faces, which the underside lies on.</summary>
    PodFace,

    /// <summary>On the grid board's face.</summary>
    BoardFace,
}

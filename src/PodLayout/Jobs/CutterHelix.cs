namespace PodLayout.Jobs;

/// <summary>Which way a cutter's flutes push along its axis.</summary>
public enum CutterHelix
{
    /// <summary>Straight flutes.</summary>
    Straight,

    /// <summary>Flutes that lift the chips, and the part.</summary>
    UpCut,

    /// <summary>Flutes that press the chips, and the part, down.</summary>
    DownCut,

    /// <summary>Up below and down above.</summary>
    Compression,
}

namespace PodLayout.Layouts;

/// <summary>The set of placements over which a bound holds.</summary>
public enum ProofScope
{
    /// <summary>Only the placement that was given.</summary>
    ThisPlacement,

    /// <summary>The offsets that were tried, and no others.</summary>
    OffsetsTried,

    /// <summary>Every offset, at each of the angles asked for.</summary>
    AllOffsetsAtTheseAngles,

    /// <summary>Every offset and every angle of the interval asked for.</summary>
    AllOffsetsAndAngles,
}

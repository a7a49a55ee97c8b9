namespace PodLayout.BoardMaking;

/// <summary>Which side of the board is up.</summary>
public enum BoardSide
{
    /// <summary>The face with the grooves.</summary>
    Front,

    /// <summary>The underside with the channels, seen from above after turning over.</summary>
    Back,
}

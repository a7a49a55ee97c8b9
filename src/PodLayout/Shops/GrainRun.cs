namespace PodLayout.Shops;

/// <summary>How the grain of the stock's face runs on the board.</summary>
public enum GrainRun
{
    /// <summary>Along the board's X.</summary>
    AlongX,

    /// <summary>Along the board's Y.</summary>
    AlongY,

    /// <summary>The stock has no grain (MDF and the like).</summary>
    None,
}

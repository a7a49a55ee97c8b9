namespace PodLayout.Shops;

/// <summary>The axis about which a piece of the board is turned over.</summary>
public enum FlipAxis
{
    /// <summary>The axis runs along X: the front edge goes to the rear, X stays.</summary>
    AlongX,

    /// <summary>The axis runs along Y: the left edge goes to the right, Y stays.</summary>
    AlongY,
}

namespace PodLayout.Shops;

/// <summary>What a port can do.</summary>
public enum PortState
{
    /// <summary>Can be opened and plugged.</summary>
    Working,

    /// <summary>Brings no vacuum (blocked, or never drilled through); it is plugged and stays so.</summary>
    Dead,

    /// <summary>Cannot be plugged: no lower seal may stand on it.</summary>
    StuckOpen,
}

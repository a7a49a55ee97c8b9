namespace PodLayout.Woods;

/// <summary>How a wood is built.</summary>
public enum WoodKind
{
    /// <summary>Solid wood, with one grain.</summary>
    Solid,

    /// <summary>Plywood: half of its plies run across the other half.</summary>
    Plywood,

    /// <summary>Fibreboard, alike in all directions of its face.</summary>
    Fibreboard,
}

namespace PodLayout.Shops;

/// <summary>Where the port lattice lies.</summary>
public enum PortOffset
{
    /// <summary>Where the shop file says.</summary>
    AsGiven,

    /// <summary>Where it leaves the fewest seats without a port.</summary>
    Search,
}

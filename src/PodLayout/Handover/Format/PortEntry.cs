using PodLayout.Shops;

namespace PodLayout.Handover.Format;

/// <summary>A port of the board.</summary>
/// <param name="Name">Its name.</param>
/// <param name="CentreMm">From the board's datum.</param>
/// <param name="State">Whether it works.</param>
public sealed record PortEntry(string Name, XyMm CentreMm, PortState State);

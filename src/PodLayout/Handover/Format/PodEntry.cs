using System.Collections.Immutable;

namespace PodLayout.Handover.Format;

/// <summary>A pod standing on the board.</summary>
/// <param name="Id">P1, P2, ... in placing order.</param>
/// <param name="Type">Name of its type.</param>
/// <param name="Turned">Whether it stands turned by a quarter.</param>
/// <param name="ColumnFromDatum">The groove along its left edge, counted from 1.</param>
/// <param name="RowFromDatum">The groove along its lower edge, counted from 1.</param>
/// <param name="CentreMm">Centre, from the board's datum.</param>
/// <param name="Body">Box around the body, from the board's datum.</param>
/// <param name="Holds">Name of the loose piece that it holds; null under the part.</param>
/// <param name="OpenPorts">Names of the ports that feed it.</param>
public sealed record PodEntry(
    string Id,
    string Type,
    bool Turned,
    int ColumnFromDatum,
    int RowFromDatum,
    XyMm CentreMm,
    BoxEntry Body,
    string? Holds,
    ImmutableArray<string> OpenPorts);

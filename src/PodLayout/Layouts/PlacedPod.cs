using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Shops;

namespace PodLayout.Layouts;

/// <summary>A pod standing on the board.</summary>
/// <param name="Type">Which kind.</param>
/// <param name="Turned">Whether it stands turned by a quarter.</param>
/// <param name="Column">Index of the groove along its left edge; 0 is the first groove from the datum.</param>
/// <param name="Row">Index of the groove along its lower edge; 0 is the first groove from the datum.</param>
/// <param name="Centre">Board coordinates of its centre, mm.</param>
/// <param name="OpenPorts">The ports it is fed by, nearest to its centre first.</param>
public sealed record PlacedPod(
    PodType Type, bool Turned, int Column, int Row, Point2 Centre, ImmutableArray<Port> OpenPorts)
{
    /// <summary>Name of the loose piece that it holds; null when it stands under the part.</summary>
    public string? Holds { get; init; }

    /// <summary>Extent of the body along the board's X, mm.</summary>
    public double ExtentXMm => Turned ? Type.Footprint.ExtentYMm : Type.Footprint.ExtentXMm;

    /// <summary>Extent of the body along the board's Y, mm.</summary>
    public double ExtentYMm => Turned ? Type.Footprint.ExtentXMm : Type.Footprint.ExtentYMm;

    /// <summary>The box around the body, board coordinates.</summary>
    public Box2 BodyBox => new(
        Centre.X - ExtentXMm / 2, Centre.Y - ExtentYMm / 2, Centre.X + ExtentXMm / 2, Centre.Y + ExtentYMm / 2);
}

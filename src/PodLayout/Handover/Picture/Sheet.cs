using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Handover.Picture;

/// <summary>
/// A drawing to be put out as SVG, PDF or DXF: layers of primitives in the board's millimetres, Y up. Line widths and dashes
/// are in millimetres of paper, by the style's name.
/// </summary>
/// <param name="Title">What it shows, in a few words.</param>
/// <param name="Description">What it shows, for someone who cannot see it.</param>
/// <param name="Extent">The whole page, in board coordinates.</param>
/// <param name="Scale">Millimetres of the board for one millimetre of paper.</param>
/// <param name="Layers">From the lowest to the topmost.</param>
public sealed record Sheet(string Title, string Description, Box2 Extent, double Scale, ImmutableArray<Layer> Layers)
{
    /// <summary>What a file of the sheet bears where only programs look; empty for nothing.</summary>
    public string Mark { get; init; } = "";
}

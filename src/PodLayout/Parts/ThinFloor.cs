using PodLayout.Geometry;

namespace PodLayout.Parts;

/// <summary>A spot of the part where a cut from the face leaves little wood above the underside.</summary>
/// <param name="Name">What makes it, in the shop's words.</param>
/// <param name="Source">Where that comes from.</param>
/// <param name="Area">Its extent within the wood.</param>
/// <param name="LeastMm">The least thickness that is left, mm.</param>
public sealed record ThinFloor(string Name, string Source, Region Area, double LeastMm)
{
    /// <summary>The floor turned about the drawing's zero, then moved.</summary>
    public ThinFloor Laid(Turn turn, Point2 offset) => this with { Area = Area.Laid(turn, offset) };
}

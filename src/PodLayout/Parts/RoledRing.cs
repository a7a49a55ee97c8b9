using PodLayout.Geometry;

namespace PodLayout.Parts;

/// <summary>A ring with what its layer says about it.</summary>
/// <param name="Layer">Its layer.</param>
/// <param name="Ring">The ring.</param>
/// <param name="Role">The role of its layer; null when nothing is said.</param>
internal sealed record RoledRing(string Layer, Ring Ring, LayerRole? Role)
{
    /// <summary>Whether it only fills the page of an SVG.</summary>
    public bool IsPage { get; init; }

    public double AreaMm2 { get; } = Ring.AreaMm2;

    public Box2 Bounds { get; } = Ring.Bounds;

    /// <summary>A cheap test before <see cref="Reading.Rings.Containment.IsSame"/>: the boxes nearly agree.</summary>
    public bool IsAlike(RoledRing other) => Bounds.Grow(1).Contains(other.Bounds) && other.Bounds.Grow(1).Contains(Bounds);
}

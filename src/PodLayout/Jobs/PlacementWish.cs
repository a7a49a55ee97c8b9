using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Jobs;

/// <summary>Where the part should lie: given, or to be searched.</summary>
public abstract record PlacementWish
{
    /// <summary>The part lies exactly here.</summary>
    /// <param name="ZeroOnBoard">Where the drawing's zero comes to lie on the board, mm.</param>
    /// <param name="AngleDeg">Turn about the drawing's zero, degrees counter-clockwise.</param>
    public sealed record Given(Point2 ZeroOnBoard, double AngleDeg) : PlacementWish;

    /// <summary>The best offset is searched at each of these angles.</summary>
    /// <param name="AnglesDeg">Angles to try, degrees; at least one.</param>
    public sealed record Search(ImmutableArray<double> AnglesDeg) : PlacementWish;

    /// <summary>The best offset and angle are searched, over every angle of an interval.</summary>
    /// <param name="FromDeg">Smallest angle, degrees.</param>
    /// <param name="ToDeg">Largest angle, degrees; larger than <paramref name="FromDeg"/> by at most 360.</param>
    public sealed record SearchInterval(double FromDeg, double ToDeg) : PlacementWish;
}

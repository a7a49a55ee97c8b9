using PodLayout.Geometry;
using PodLayout.Shops;

namespace PodLayout.BoardMaking;

/// <summary>
/// A piece turned over about a line through the middle of its pins. The pins lie in mirrored pairs (or on the line), so that
/// each hole comes down on a pin again and zero stays where it was: front and back register by construction.
/// </summary>
/// <param name="Axis">The direction of the line.</param>
/// <param name="LineMm">Where it lies: its Y when it runs along X, its X when it runs along Y.</param>
public sealed record TurnedOver(FlipAxis Axis, double LineMm)
{
    /// <summary>Where a point of the front lies when the back is up; and the other way round.</summary>
    public Point2 Apply(Point2 p) => Axis == FlipAxis.AlongX ? new(p.X, 2 * LineMm - p.Y) : new(2 * LineMm - p.X, p.Y);

    /// <summary>The same for a box.</summary>
    public Box2 Apply(Box2 b) => Box2.Around([Apply(new Point2(b.MinX, b.MinY)), Apply(new Point2(b.MaxX, b.MaxY))]);
}

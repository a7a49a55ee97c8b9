using PodLayout.Geometry;

namespace PodLayout.BoardMaking;

/// <summary>One straight pass along an axis of the board, as the line of the tool's middle.</summary>
/// <param name="From">Where it begins: its left or lower end.</param>
/// <param name="To">Where it ends.</param>
public readonly record struct Run(Point2 From, Point2 To)
{
    /// <summary>Its length, mm.</summary>
    public double LengthMm => (To - From).Length;

    /// <summary>Whether it runs along X.</summary>
    public bool IsAlongX => From.Y == To.Y;

    /// <summary>Its extent; without area.</summary>
    public Box2 Box => new(From.X, From.Y, To.X, To.Y);

    /// <summary>Distance from its line to a point.</summary>
    public double DistanceTo(Point2 p) => new Point2(
        Math.Max(0, Math.Max(From.X - p.X, p.X - To.X)), Math.Max(0, Math.Max(From.Y - p.Y, p.Y - To.Y))).Length;

    /// <summary>Distance between the lines of two runs; 0 where they meet.</summary>
    public double DistanceTo(Run other) => new Point2(
        Math.Max(0, Math.Max(From.X - other.To.X, other.From.X - To.X)),
        Math.Max(0, Math.Max(From.Y - other.To.Y, other.From.Y - To.Y))).Length;
}

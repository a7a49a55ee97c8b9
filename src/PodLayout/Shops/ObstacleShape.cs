using PodLayout.Geometry;

namespace PodLayout.Shops;

/// <summary>The extent of an obstacle, in board coordinates.</summary>
public abstract record ObstacleShape
{
    /// <summary>A round obstacle.</summary>
    /// <param name="Centre">Centre, mm.</param>
    /// <param name="DiameterMm">Diameter, mm.</param>
    public sealed record Disc(Point2 Centre, double DiameterMm) : ObstacleShape;

    /// <summary>A rectangular obstacle along the board's axes.</summary>
    /// <param name="Extent">Its extent, mm.</param>
    public sealed record Rectangle(Box2 Extent) : ObstacleShape;
}

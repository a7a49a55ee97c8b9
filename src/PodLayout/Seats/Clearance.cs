using PodLayout.Geometry;
using PodLayout.Shops;

namespace PodLayout.Seats;

/// <summary>Distances between a pod's body and other things on the board, in mm; negative where they overlap.</summary>
public static class Clearance
{
    /// <summary>Distance from a pod's body to an obstacle.</summary>
    public static double ToObstacle(PodPose pose, Box2 body, ObstacleShape obstacle) => obstacle switch
    {
        ObstacleShape.Disc disc when pose.IsRound =>
            (disc.Centre - body.Centre).Length - disc.DiameterMm / 2 - pose.ExtentXMm / 2,
        ObstacleShape.Disc disc => ToPoint(body, disc.Centre) - disc.DiameterMm / 2,
        ObstacleShape.Rectangle rectangle when pose.IsRound =>
            ToPoint(rectangle.Extent, body.Centre) - pose.ExtentXMm / 2,
        ObstacleShape.Rectangle rectangle => Between(body, rectangle.Extent),
        _ => throw new ArgumentOutOfRangeException(nameof(obstacle), obstacle, "Unknown shape."),
    };

    /// <summary>Distance between the bodies of two pods.</summary>
    public static double BetweenPods(PodPose a, Box2 bodyA, PodPose b, Box2 bodyB) => (a.IsRound, b.IsRound) switch
    {
        (true, true) => (bodyA.Centre - bodyB.Centre).Length - (a.ExtentXMm + b.ExtentXMm) / 2,
        (true, false) => ToPoint(bodyB, bodyA.Centre) - a.ExtentXMm / 2,
        (false, true) => ToPoint(bodyA, bodyB.Centre) - b.ExtentXMm / 2,
        _ => Between(bodyA, bodyB),
    };

    /// <summary>Distance from a box to a point; 0 inside.</summary>
    public static double ToPoint(Box2 box, Point2 p) => new Point2(
        Math.Max(0, Math.Max(box.MinX - p.X, p.X - box.MaxX)),
        Math.Max(0, Math.Max(box.MinY - p.Y, p.Y - box.MaxY))).Length;

    private static double Between(Box2 a, Box2 b)
    {
        var x = Math.Max(a.MinX - b.MaxX, b.MinX - a.MaxX);
        var y = Math.Max(a.MinY - b.MaxY, b.MinY - a.MaxY);
        return x <= 0 || y <= 0 ? Math.Max(x, y) : new Point2(x, y).Length;
    }
}

using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Holding;

/// <summary>How firmly some pods hold the part.</summary>
public static class Firmness
{
    /// <summary>
    /// The weakest limit over the forces of the cutter, and the force it belongs to (-1 and infinite when every size of every
    /// force is borne).
    /// </summary>
    /// <param name="ground">The part and its loads.</param>
    /// <param name="pods">The pods.</param>
    public static (Limit Limit, int Load) Weakest(HoldingGround ground, ImmutableArray<HeldPod> pods) =>
        Weakest(ground, ground.On(pods), ground.Telling.Concat(Enumerable.Range(0, ground.Loads.Length)), 0);

    /// <summary>The same among some of the forces; ends early at the first whose factor is below a figure.</summary>
    public static (Limit Limit, int Load) Weakest(
        HoldingGround ground, PartOnPods part, IEnumerable<int> loads, double endBelow)
    {
        (Limit Limit, int Load) weakest = (new(double.PositiveInfinity, default), -1);
        foreach (var load in loads)
        {
            // What can grow farther than the weakest so far need not be known better.
            var limit = part.Of(ground.Loads[load].Wrench, weakest.Limit.Factor);
            if (limit.Factor < weakest.Limit.Factor)
            {
                weakest = (limit, load);
                if (limit.Factor < endBelow)
                {
                    break;
                }
            }
        }

        return weakest;
    }

    /// <summary>
    /// How far inside the figure of the pods' spots a point lies, mm; negative outside. And the direction, away from the pods'
    /// middle, in which it is nearest to leaving the figure.
    /// </summary>
    /// <param name="pods">The pods; at least one.</param>
    /// <param name="point">The point.</param>
    public static (double DistanceMm, Point2 Outward) Standing(ImmutableArray<HeldPod> pods, Point2 point)
    {
        ImmutableArray<Point2> spots = [.. pods.SelectMany(p => p.Spots)];
        Point2[] hull = [.. Hull.Corners(spots).Select(i => spots[i])];
        (double DistanceMm, Point2 Outward) nearest = (double.PositiveInfinity, default);
        for (var i = 0; i < hull.Length; i++)
        {
            var along = hull[(i + 1) % hull.Length] - hull[i];
            if (along.Length == 0)
            {
                continue;
            }

            var outward = new Point2(along.Y, -along.X) * (1 / along.Length);
            var distance = (hull[i] - point).Dot(outward);
            if (distance < nearest.DistanceMm)
            {
                nearest = (distance, outward);
            }
        }

        return nearest;
    }
}

using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Holding;

/// <summary>How firmly some pods hold the part.</summary>
public static class Firmness
{
    // Forces that every layout is asked first: those that go farthest in directions spread over pushes, twists and tilts.
    private const int Directions = 48;

    /// <summary>
    /// The weakest limit over the forces of the cutter, and the force it belongs to (-1 and infinite when every size of every
    /// force is borne).
    /// </summary>
    /// <param name="ground">The part and its loads.</param>
    /// <param name="pods">The pods.</param>
    public static (Limit Limit, int Load) Weakest(HoldingGround ground, ImmutableArray<HeldPod> pods) =>
        Weakest(ground, ground.On(pods), Telling(ground).Concat(Enumerable.Range(0, ground.Loads.Length)), 0);

    /// <summary>The same among some of the forces; ends early at the first whose factor is below a figure.</summary>
    public static (Limit Limit, int Load) Weakest(
        HoldingGround ground, Equilibrium equilibrium, IEnumerable<int> loads, double endBelow)
    {
        (Limit Limit, int Load) weakest = (new(double.PositiveInfinity, default), -1);
        foreach (var load in loads)
        {
            // What can grow farther than the weakest so far need not be known better.
            var limit = equilibrium.Of(ground.Loads[load].Wrench, weakest.Limit.Factor);
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
    /// A few of the forces that are likely to be the worst whatever the pods: the farthest in a number of directions spread over
    /// the space of forces and moments. The same for every layout, so that the search does not depend on its course.
    /// </summary>
    public static ImmutableArray<int> Telling(HoldingGround ground)
    {
        var telling = new SortedSet<int>();
        var wrenches = ground.Loads.Select(l => l.Wrench).ToArray();
        for (var d = 0; d < Directions; d++)
        {
            // Directions by the fractional parts of multiples of roots: spread evenly and always the same.
            double Spread(int prime) => 2 * (Math.Sqrt(prime) * (d + 1) % 1) - 1;
            double length = ground.LengthMm;
            var motion = new Motion(
                Spread(2), Spread(3), Math.Abs(Spread(5)), Spread(7) / length, Spread(11) / length, Spread(13) / length);
            var most = Enumerable.Range(0, wrenches.Length).MaxBy(i => motion.Work(wrenches[i]));
            telling.Add(most);
        }

        return [.. telling];
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

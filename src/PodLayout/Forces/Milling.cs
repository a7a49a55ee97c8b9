using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Forces;

/// <summary>The forces of a milling cutter on the wood.</summary>
/// <remarks>
/// Each tooth in the wood cuts a chip as thick as the feed for each tooth times the sine of its angle from across the feed
/// (Martellotti 1941; the circular approximation), over the depth of the cut; its force is that section times the specific
/// cutting force along its motion, and a share of that across it. All teeth that are in the wood at once are added up, as if the
/// helix did not spread them: the peak, not the mean. A cutter's teeth are taken to cut evenly.
/// </remarks>
internal static class Milling
{
    /// <summary>Force across a tooth's motion as a share of that along it, pushing the wood off; dull edges. From memory.</summary>
    public const double PushShare = 0.6;

    /// <summary>The same pulling the wood in; sharp edges of large rake. From memory.</summary>
    public const double PullShare = 0.3;

    private const int Directions = 16;
    private const int StepsOfTurn = 540;

    // What the force may grow by within half a step: its direction and its size turn with the cutter.
    private const double BetweenSteps = 1 + 2 * Math.PI / StepsOfTurn;

    private static readonly Point2[] Around =
        [.. Enumerable.Range(0, Directions).Select(i => Turn.FromDegrees(360.0 * i / Directions).Apply(new(1, 0)))];

    /// <summary>What a cutter does for each mm of depth.</summary>
    /// <param name="Corners">Corners of the forces in the drawing's plane at the upper end of the band, N/mm.</param>
    /// <param name="TangentialN">The greatest sum of the forces along the teeth's motion at the upper end, N/mm.</param>
    /// <param name="PeakN">The greatest force in the plane at the upper end, N/mm.</param>
    /// <param name="LeastPeakN">The same at the lower end, N/mm.</param>
    public readonly record struct PerMm(ImmutableArray<Point2> Corners, double TangentialN, double PeakN, double LeastPeakN);

    /// <summary>The forces of a cutter that goes in any of some directions through the wood.</summary>
    /// <param name="engagements">How it may stand in the wood.</param>
    /// <param name="feeds">Unit vectors of the feed, in the drawing.</param>
    /// <param name="grain">Unit vector of the grain, in the drawing.</param>
    /// <param name="work">Specific cutting force of the wood.</param>
    public static PerMm Forces(ReadOnlySpan<Engagement> engagements, ReadOnlySpan<Point2> feeds, Point2 grain, CuttingWork work)
    {
        Span<double> reach = stackalloc double[Directions];
        double tangential = 0, peak = 0, least = 0;
        foreach (ref readonly var engagement in engagements)
        {
            foreach (ref readonly var feed in feeds)
            {
                OneFeed(engagement, feed, grain, work, reach, ref tangential, ref peak, ref least);
            }
        }

        return new(ForceHull.FromReach(Around, reach), tangential, peak, least);
    }

    private static void OneFeed(
        in Engagement e, Point2 feed, Point2 grain, CuttingWork work, Span<double> reach, ref double tangential, ref double peak, ref double least)
    {
        Span<double> at = stackalloc double[Directions];
        var left = new Point2(-feed.Y, feed.X);
        var (pitch, radius) = (2 * Math.PI / e.Flutes, e.DiameterMm / 2);
        var steps = Math.Max(4, (int)Math.Ceiling((double)StepsOfTurn / e.Flutes));
        for (var step = 0; step < steps; step++)
        {
            at.Clear();
            Point2 push = default, pull = default, pushLeast = default, pullLeast = default;
            double sum = 0;
            for (var tooth = 0; tooth < e.Flutes; tooth++)
            {
                // From straight left of the feed, turning clockwise: the front half is half a turn.
                var angle = pitch * ((double)step / steps + tooth);
                var (sine, cosine) = Math.SinCos(angle);
                // Half a step beyond the wood's edges still counts, so that the thickest chip is not stepped over.
                var room = radius * (sine * pitch / steps / 2 + 1e-9);
                if (sine < 0 || radius * cosine < e.FromMm - room || radius * cosine > e.ToMm + room)
                {
                    continue;
                }

                Point2 outward = left * cosine + feed * sine, motion = feed * cosine - left * sine;
                var toGrain = motion.Cross(grain);
                var chip = e.ChipMm * sine;
                var (most, low) = (work.MostAt(toGrain) * chip, work.LeastAt(toGrain) * chip);
                sum += most;
                (push, pull) = (push + (motion + outward * PushShare) * most, pull + (motion - outward * PullShare) * most);
                (pushLeast, pullLeast) = (pushLeast + (motion + outward * PushShare) * low, pullLeast + (motion - outward * PullShare) * low);
                for (var d = 0; d < Directions; d++)
                {
                    // Each tooth may push or pull by itself.
                    var across = outward.Dot(Around[d]);
                    at[d] += most * (motion.Dot(Around[d]) + Math.Max(across * PushShare, -across * PullShare));
                }
            }

            for (var d = 0; d < Directions; d++)
            {
                reach[d] = Math.Max(reach[d], at[d] * BetweenSteps);
            }

            tangential = Math.Max(tangential, sum);
            peak = Math.Max(peak, Math.Max(push.Length, pull.Length));
            least = Math.Max(least, Math.Max(pushLeast.Length, pullLeast.Length));
        }
    }
}

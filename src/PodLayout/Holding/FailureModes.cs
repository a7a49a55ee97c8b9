using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Holding;

/// <summary>What a motion is called.</summary>
public static class FailureModes
{
    /// <summary>
    /// The name of a motion: by what the load does most of its work on, about the middle of the pods' pulls. (Other parts of the
    /// motion may cost nothing, and say nothing: a part that is pulled straight up may turn while it rises.)
    /// </summary>
    /// <param name="motion">The motion.</param>
    /// <param name="load">The load that sets it off.</param>
    /// <param name="pods">The pods.</param>
    public static FailureMode Of(Motion motion, Wrench load, ImmutableArray<HeldPod> pods)
    {
        var middle = Middle(pods);
        double mx = load.Mx - middle.Y * load.Fz, my = load.My + middle.X * load.Fz;
        var mz = load.Mz - middle.X * load.Fy + middle.Y * load.Fx;
        var slides = load.Fx * (motion.X - motion.AboutZ * middle.Y) + load.Fy * (motion.Y + motion.AboutZ * middle.X);
        var twists = mz * motion.AboutZ;
        var lifts = load.Fz * motion.RiseAt(middle.X, middle.Y);
        var tips = mx * motion.AboutX + my * motion.AboutY;
        // What tips about its far pods rises in the middle too.
        return Math.Max(lifts, tips) > Math.Max(slides, twists)
            ? lifts > 2 * tips ? FailureMode.Lifts : FailureMode.Tips
            : twists > slides ? FailureMode.Twists : FailureMode.Slides;
    }

    private static Point2 Middle(ImmutableArray<HeldPod> pods)
    {
        // Where nothing pulls, the middle of the pods.
        var even = 1e-9 / pods.Length;
        var pull = pods.Sum(p => p.PullN + even);
        return pods.Aggregate(new Point2(0, 0), (sum, p) => sum + p.Centre * ((p.PullN + even) / pull));
    }
}

using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Holding;

/// <summary>What a motion is called.</summary>
public static class FailureModes
{
    /// <summary>
    /// The name of a motion: by what the pods' pulls lose most on. A part that slides or twists rises only as far as friction
    /// makes it; one that tips or lifts rises more.
    /// </summary>
    /// <param name="motion">The motion.</param>
    /// <param name="pods">The pods.</param>
    public static FailureMode Of(Motion motion, ImmutableArray<HeldPod> pods)
    {
        double pull = pods.Sum(p => p.PullN) + 1e-9, rise = 0, rub = 0;
        var centre = new Point2(0, 0);
        foreach (var pod in pods)
        {
            var share = (pod.PullN + 1e-9 / pods.Length) / pull;
            rise += share * motion.RiseAt(pod.Centre.X, pod.Centre.Y);
            rub += share * pod.Grip.Friction * motion.SlideAt(pod.Centre.X, pod.Centre.Y);
            centre += pod.Centre * share;
        }

        var spread = Math.Sqrt(pods.Average(p => p.Spots.Average(s => Math.Pow((s - centre).Length, 2))));
        if (rub * 2 >= rise)
        {
            return Math.Abs(motion.AboutZ) * spread > motion.SlideAt(centre.X, centre.Y) ? FailureMode.Twists : FailureMode.Slides;
        }

        return motion.Tilt * spread > motion.RiseAt(centre.X, centre.Y) / 2 ? FailureMode.Tips : FailureMode.Lifts;
    }
}

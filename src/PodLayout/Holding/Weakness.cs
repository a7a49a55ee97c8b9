using System.Collections.Immutable;

namespace PodLayout.Holding;

/// <summary>
/// A motion in which some layout did not hold the part: what other layouts must bring to hold it there. It holds for pods anywhere,
/// since the motion and the load that sets it off are fixed to the part.
/// </summary>
/// <param name="Motion">The motion; the load as it is does work of 1 in it.</param>
/// <param name="LoadUpN">The load's force upwards, N.</param>
/// <remarks>
/// By virtual work: whatever the forces are, a part in equilibrium under s times the load has
/// s = sum of the pulls' work + the weight's work + the work of the pushes and of the friction. A spot that rises takes up, for
/// each newton of its push n, at most its friction less its rise, mu slide - rise; and the friction of a pod's spots together is
/// at most mu times the pod's own pull, so that a pod takes up at most its pull times the most that any of its spots does. A spot
/// that sinks takes up besides at most all the push there is times how far it sinks. So a layout whose pods bring less than s
/// cannot bear s times the load: a Benders cut (Benders 1962), linear in the pods.
/// </remarks>
/// <param name="Body">Index of what moved: the part is 0, the pieces that are held follow.</param>
public sealed record Weakness(Motion Motion, double LoadUpN, int Body = 0)
{
    private const double Rounding = 1e-12;

    /// <summary>The way in which some pods gave way: lifted by the hair by which the solver let their spots sink.</summary>
    /// <param name="limit">How they gave way.</param>
    /// <param name="load">To what.</param>
    /// <param name="pods">The pods.</param>
    /// <param name="body">Index of what moved.</param>
    public static Weakness Of(Limit limit, CutterForce load, ImmutableArray<HeldPod> pods, int body = 0)
    {
        var sinks = Math.Max(0, pods.SelectMany(p => p.Spots).Select(s => -limit.Motion.RiseAt(s.X, s.Y)).DefaultIfEmpty(0).Max());
        var lifted = limit.Motion with { Z = limit.Motion.Z + sinks };
        var work = 1 + load.Force.ZN * sinks;
        return new(lifted.Scaled(1 / work), load.Force.ZN, body);
    }

    /// <summary>
    /// The same way for pods whose places are known only within a distance: with a little lift more, so that a spot that does not
    /// sink in it sinks from nowhere within the distance.
    /// </summary>
    /// <param name="withinMm">The distance.</param>
    public Weakness Blurred(double withinMm) => this with { Motion = Motion with { Z = Motion.Z + Motion.Tilt * withinMm } };

    /// <summary>What the pods must bring, N mm; 0 or less when the way asks for nothing.</summary>
    /// <param name="ground">The part.</param>
    /// <param name="original">The way before it was blurred: a lift changes the work of the load.</param>
    /// <param name="times">Of the factor to reach, how many times is asked for.</param>
    public double Needed(HoldingGround ground, Weakness original, double times = 1) =>
        times * ground.Factor * (1 + LoadUpN * (Motion.Z - original.Motion.Z)) + Motion.Work(ground.Weight);

    /// <summary>The most that a pod brings, N mm, when its middle lies within a distance of a place.</summary>
    /// <param name="pod">The pod at that place, with the most vacuum it can have.</param>
    /// <param name="withinMm">The distance.</param>
    /// <param name="mostPushN">The most that all spots together can be pressed.</param>
    public double Brought(HeldPod pod, double withinMm, double mostPushN)
    {
        double rise = Motion.Tilt * withinMm, slide = Math.Abs(Motion.AboutZ) * withinMm;
        double rubbing = 0, sinking = 0;
        foreach (var spot in pod.Grip.Spots)
        {
            Geometry.Point2 at = pod.Centre + pod.Turn.Apply(new(spot.X, spot.Y));
            Geometry.Point2 rubs = pod.Centre + pod.Turn.Apply(new(spot.FrictionX, spot.FrictionY));
            var rises = Motion.RiseAt(at.X, at.Y);
            rubbing = Math.Max(rubbing, pod.Grip.Friction * (Motion.SlideAt(rubs.X, rubs.Y) + slide) - Math.Max(0, rises - rise));
            sinking = Math.Max(sinking, rise - rises);
        }

        // What rounding leaves at a spot that just does not sink.
        sinking = sinking < Rounding * (Math.Abs(Motion.Z) + Motion.Tilt * pod.Centre.Length) ? 0 : sinking;
        return pod.PullN * (Motion.RiseAt(pod.Centre.X, pod.Centre.Y) + rise + rubbing) + mostPushN * sinking;
    }
}

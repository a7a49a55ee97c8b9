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
/// s = sum of the pulls' work + the weight's work + the work of the pushes and friction at the spots. A spot that the motion leaves
/// freely (<see cref="Contact.Freedom"/> at least 0) takes none; one that stands in its way takes at most all the push there is
/// times how far it stands in the way. So a layout whose pods bring less than s cannot bear s times the load: a Benders cut
/// (Benders 1962), linear in the pods.
/// </remarks>
public sealed record Weakness(Motion Motion, double LoadUpN)
{
    private const double Rounding = 1e-12;

    /// <summary>The way in which some pods gave way: lifted by the hair that the solver left their spots short of free.</summary>
    /// <param name="limit">How they gave way.</param>
    /// <param name="load">To what.</param>
    /// <param name="pods">The pods.</param>
    public static Weakness Of(Limit limit, CutterForce load, ImmutableArray<HeldPod> pods)
    {
        var shortOfFree = Math.Max(0, pods.SelectMany(p => p.Contacts).Select(c => -c.Freedom(limit.Motion)).DefaultIfEmpty(0).Max());
        var lifted = limit.Motion with { Z = limit.Motion.Z + shortOfFree };
        var work = 1 + load.Force.ZN * shortOfFree;
        return new(lifted.Scaled(1 / work), load.Force.ZN);
    }

    /// <summary>
    /// The same way for pods whose places are known only within a distance: with a little lift more, so that a spot that it leaves
    /// freely is left freely from anywhere within the distance.
    /// </summary>
    /// <param name="withinMm">The distance.</param>
    /// <param name="friction">The largest coefficient of friction of any pod.</param>
    public Weakness Blurred(double withinMm, double friction)
    {
        var lift = (Motion.Tilt + friction * Math.Abs(Motion.AboutZ)) * withinMm;
        return this with { Motion = Motion with { Z = Motion.Z + lift } };
    }

    /// <summary>What the pods must bring, N mm; 0 or less when the way asks for nothing.</summary>
    /// <param name="ground">The part.</param>
    /// <param name="original">The way before it was blurred: a lift changes the work of the load.</param>
    public double Needed(HoldingGround ground, Weakness original) =>
        ground.Factor * (1 + LoadUpN * (Motion.Z - original.Motion.Z)) + Motion.Work(ground.Weight);

    /// <summary>The most that a pod brings, N mm, when its middle lies within a distance of a place.</summary>
    /// <param name="pod">The pod at that place, with the most vacuum it can have.</param>
    /// <param name="withinMm">The distance.</param>
    /// <param name="mostPushN">The most that all spots together can be pressed.</param>
    public double Brought(HeldPod pod, double withinMm, double mostPushN)
    {
        var slack = (Motion.Tilt + pod.Grip.Friction * Math.Abs(Motion.AboutZ)) * withinMm;
        double inTheWay = 0;
        foreach (var spot in pod.Grip.Spots)
        {
            Geometry.Point2 at = pod.Centre + pod.Turn.Apply(new(spot.X, spot.Y));
            Geometry.Point2 rubs = pod.Centre + pod.Turn.Apply(new(spot.FrictionX, spot.FrictionY));
            var freedom = Motion.RiseAt(at.X, at.Y) - pod.Grip.Friction * Motion.SlideAt(rubs.X, rubs.Y);
            inTheWay = Math.Max(inTheWay, slack - freedom);
        }

        // What rounding leaves at a spot that is just left freely.
        inTheWay = inTheWay < Rounding * (Math.Abs(Motion.Z) + Motion.SlideAt(pod.Centre.X, pod.Centre.Y) + Motion.Tilt * pod.Centre.Length) ? 0 : inTheWay;
        return pod.PullN * (Motion.RiseAt(pod.Centre.X, pod.Centre.Y) + Motion.Tilt * withinMm) + mostPushN * inTheWay;
    }
}

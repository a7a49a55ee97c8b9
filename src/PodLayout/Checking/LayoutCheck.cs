using System.Collections.Immutable;
using PodLayout.Layouts;
using PodLayout.Seats;
using PodLayout.Shops;

namespace PodLayout.Checking;

/// <summary>
/// Holds a layout against every rule, whoever made it. Only what a person sets is used (where the part lies, each pod's type,
/// turn, grooves, centre and ports); all else is worked out anew.
/// </summary>
public static class LayoutCheck
{
    /// <summary>
    /// How far a figure may pass its rule, mm: what the planner itself allows, and the rounding of the coordinates in a file.
    /// </summary>
    internal const double ToleranceMm = Tolerances.ContactMm + Tolerances.FiledMm;

    /// <summary>Checks the layout of a plan, which may leave stretches beyond their limits.</summary>
    /// <param name="plan">A plan with a layout.</param>
    public static LayoutReport Of(PlanResult plan) => Of(
        plan.Job, plan.Layout!, [.. plan.Layout!.Pods.SelectMany(p => p.OpenPorts).Select(p => p.Name).Distinct()], plan.Unsupported);

    /// <summary>Checks a layout whose ports to open are those that its pods name.</summary>
    /// <param name="job">What the layout is for.</param>
    /// <param name="layout">The layout.</param>
    public static LayoutReport Of(Jobs.Job job, Layout layout) =>
        Of(job, layout, [.. layout.Pods.SelectMany(p => p.OpenPorts).Select(p => p.Name).Distinct()]);

    /// <summary>Checks a layout.</summary>
    /// <param name="job">What the layout is for.</param>
    /// <param name="layout">The layout.</param>
    /// <param name="openPorts">Names of the ports to open.</param>
    /// <param name="unsupported">What the plan left beyond its limits: told, and no breach; default for nothing.</param>
    public static LayoutReport Of(
        Jobs.Job job, Layout layout, ImmutableArray<string> openPorts, ImmutableArray<UnsupportedStretch> unsupported = default)
    {
        layout = PieceRules.Named(job, layout);
        ImmutableArray<PodPose> poses = [.. layout.Pods.Select(p => PoseOf(job.Shop, p))];
        return new(
        [
            .. WoodRules.Check(job, layout),
            FloorRule.Check(job, layout),
            .. BoardRules.Check(job, layout, poses),
            .. PortRules.Check(job.Shop.Board, layout, poses, openPorts),
            .. PodRules.Check(job, layout),
            .. SupportCheck.Check(job, layout, poses, unsupported.IsDefault ? [] : unsupported),
            PieceRules.Check(job, layout),
            PieceRules.Balance(job, layout),
            .. HoldingRulesCheck.Check(job, layout),
        ]);
    }

    /// <summary>The pods that break a rule, and those that are not counted as holding the part, by their indices.</summary>
    /// <param name="job">What the layout is for.</param>
    /// <param name="layout">The layout.</param>
    /// <param name="report">What its check found.</param>
    public static ImmutableArray<PodFault> Faults(Jobs.Job job, Layout layout, LayoutReport report)
    {
        var leftOut = PodsUnderWood.Of(job, layout).LeftOut.Select(l => l.Pod).ToHashSet();
        return [.. report.Rules.SelectMany(r => r.Pods).Concat(leftOut).Distinct().Order().Select(i => new PodFault(i, !leftOut.Contains(i)))];
    }

    private static PodPose PoseOf(Shop shop, PlacedPod pod)
    {
        var pitch = shop.Board.PitchMm;
        return new(
            shop.Pods.IndexOf(pod.Type), pod.Type, pod.Turned,
            (int)Math.Round(pod.ExtentXMm / pitch), (int)Math.Round(pod.ExtentYMm / pitch));
    }
}

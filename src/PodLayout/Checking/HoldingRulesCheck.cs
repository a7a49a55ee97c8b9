using PodLayout.Holding;
using PodLayout.Jobs;
using PodLayout.Layouts;

namespace PodLayout.Checking;

/// <summary>Whether the part rests on its pods, and is held on them.</summary>
internal static class HoldingRulesCheck
{
    public static IEnumerable<RuleCheck> Check(Job job, Layout layout)
    {
        const string NotAsked = "nothing is known of the cutter";
        var stands = new RuleTally(CheckedRule.PartStands, Measure.LeastMm, LayoutCheck.ToleranceMm);
        var least = job.Shop.Holding.LeastFactor;
        var held = new RuleTally(CheckedRule.PartHeld, Measure.LeastFactor, Tolerances.HoldingShare * least);
        if (HeldLayout.Report(job, layout, threads: 1) is { } report)
        {
            stands.Add(report.StandMm, HoldingGround.LeastStandMm, "centre of mass", (0, 0), () => (
                $"Before the vacuum is on the part tips off its pods: its centre of mass lies {CheckWords.Mm(-report.StandMm)} mm beyond them, or too near their edge.",
                "Put a pod on the other side of the centre of mass."));
            if (job.Part.Loads.AreAssumed)
            {
                // An assumption gives a figure, but breaks no rule.
                least = 0;
            }

            held.Add(report.Factor, least, Place(report, layout), (0, 0), () => (
                $"The part is held at a factor of {FactorText.Of(report.Factor)}{HoldingFindings.Where(layout with { Holding = report })}.",
                "Add a pod, use larger ones, or cut more lightly."));
        }

        yield return stands.Done(layout.Pods.IsEmpty ? "no pods" : NotAsked);
        yield return held.Done(layout.Pods.IsEmpty ? "no pods" : NotAsked);
    }

    private static string Place(HoldingReport report, Layout layout) => report.Weakest is not { } weakest ? "everywhere"
        : $"cutter at {CheckWords.At(Handover.HoldingWords.OnBoard(layout, weakest))}, {weakest.Pass}; target {FactorText.Of(report.TargetFactor)}";
}

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
        if (HeldLayout.Strength(job, layout) is { } now)
        {
            stands.Add(now.StandMm, HoldingGround.LeastStandMm, "centre of mass", (0, 0), () => (
                $"Before the vacuum is on the part tips off its pods: its centre of mass lies {CheckWords.Mm(-now.StandMm)} mm beyond them, or too near their edge.",
                "Put a pod on the other side of the centre of mass."));
            if (job.Part.Loads.AreAssumed)
            {
                // An assumption gives a figure, but breaks no rule.
                least = 0;
            }

            held.Add(now.Factor, least, Place(job, layout, now), (0, 0), () => (
                $"The part is held at a factor of {FactorText.Of(now.Factor)}{HoldingFindings.Where(now.Weakest)}.",
                "Add a pod, use larger ones, or cut more lightly."));
        }

        yield return stands.Done(layout.Pods.IsEmpty ? "no pods" : NotAsked);
        yield return held.Done(layout.Pods.IsEmpty ? "no pods" : NotAsked);
    }

    private static string Place(Job job, Layout layout, HoldingStrength now) => now.Weakest is not { } weakest ? "everywhere"
        : $"cutter at {CheckWords.At(Handover.HoldingWords.OnBoard(layout, weakest))}, {weakest.Pass}; target {FactorText.Of(job.Shop.Holding.TargetFactor)}";
}

using System.Collections.Immutable;
using PodLayout.Findings;
using PodLayout.Holding;
using PodLayout.Jobs;
using PodLayout.Layouts;

namespace PodLayout.Checking;

/// <summary>Whether the part rests on its pods, and is held on them.</summary>
internal static class HoldingRulesCheck
{
    public static IEnumerable<RuleCheck> Check(Job job, Layout asked)
    {
        const string NotAsked = "nothing is known of the cutter";
        var stands = new RuleTally(CheckedRule.PartStands, Measure.LeastMm, LayoutCheck.ToleranceMm);
        var least = job.Shop.Holding.LeastFactor;
        var held = new RuleTally(CheckedRule.PartHeld, Measure.LeastFactor, Tolerances.HoldingShare * least);
        var (layout, leftOut) = PodsUnderWood.Of(job, asked);
        var notCounted = NotCounted(leftOut);
        ImmutableArray<Finding> warnings = [];
        if (HeldLayout.Strength(job, layout) is { } now)
        {
            stands.Add(now.StandMm, HoldingGround.LeastStandMm, "centre of mass", (0, 0), () => (
                $"Before the vacuum is on the part tips off its pods: its centre of mass lies {CheckWords.Mm(-now.StandMm)} mm beyond them, or too near their edge{notCounted}.",
                "Put a pod on the other side of the centre of mass."));
            (string What, double Factor, WeakestPlace? Weakest)[] all = [("the part", now.Factor, now.Weakest), .. now.Pieces.Select(p => (p.Name, p.Factor, p.Weakest))];
            foreach (var ((what, factor, weakest), index) in all.Select((h, i) => (h, i)))
            {
                held.Add(factor, least, (index == 0 ? "" : what + ", ") + Place(job, layout, weakest) + notCounted, (index, 0), () => (
                    $"{Handover.Summary.Capital(what)} is held at a factor of {FactorText.Of(factor)}{HoldingFindings.Where(weakest)}{notCounted}.",
                    "Add a pod, use larger ones, or cut more lightly."));
            }

            warnings = [.. all.SelectMany(h => BelowTarget(job, h.What, h.Factor, least, notCounted))];
        }
        else if (!leftOut.IsEmpty && !job.Part.Loads.Points.IsEmpty)
        {
            held.Add(0, Math.Max(least, 1), "no pod counts" + notCounted, (0, 0), () => (
                $"No pod holds the part{notCounted}.", "Put pods wholly under it, each in a place of its own."));
        }

        yield return stands.Done(layout.Pods.IsEmpty ? "no pods" : NotAsked);
        yield return held.Done(layout.Pods.IsEmpty ? "no pods" : NotAsked) with { Warnings = warnings };
    }

    // Above the least factor, or where none is asked for: no rule is broken.
    private static ImmutableArray<Finding> BelowTarget(Job job, string what, double factor, double least, string notCounted)
    {
        var (target, room) = (job.Shop.Holding.TargetFactor, Tolerances.HoldingShare * job.Shop.Holding.TargetFactor);
        return factor >= target - room || factor < least - Tolerances.HoldingShare * least ? [] :
        [
            new(
                "holding-below-target", Severity.Warning, FindingKind.Request,
                $"{Handover.Summary.Capital(what)} is held at a factor of {FactorText.Of(factor)}, below the target of {FactorText.Asked(target)}{(job.Part.Loads.AreAssumed ? " with the cuts that are assumed" : "")}{notCounted}.",
                null, "Add a pod, use larger ones, or cut more lightly."),
        ];
    }

    /// <summary>The pods that hold nothing, each with the reason.</summary>
    public static IEnumerable<string> NotCounted(Job job, Layout layout) =>
        PodsUnderWood.Of(job, PieceRules.Named(job, layout)).LeftOut.Select(l => $"{CheckWords.Pod(l.Pod)} ({l.Why})");

    private static string NotCounted(ImmutableArray<(int Pod, string Why)> leftOut) => leftOut.IsEmpty ? ""
        : $"; not counted: {string.Join(", ", leftOut.Select(l => $"{CheckWords.Pod(l.Pod)} ({l.Why})"))}";

    private static string Place(Job job, Layout layout, WeakestPlace? place) => place is not { } weakest ? "everywhere"
        : $"cutter at {CheckWords.At(Handover.HoldingWords.OnBoard(layout, weakest))}, {weakest.Pass}; target {FactorText.Of(job.Shop.Holding.TargetFactor)}";
}

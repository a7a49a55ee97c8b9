using System.Collections.Immutable;
using PodLayout.Findings;
using PodLayout.Handover.Setup;
using PodLayout.Jobs;
using PodLayout.Layouts;

namespace PodLayout.Checking;

/// <summary>What a check found, as it is told: each line with the file and the member that it is about.</summary>
public static class CheckFindings
{
    // What the plan said of its own pods is worked out anew.
    private static readonly ImmutableHashSet<string> OfPods =
        ["holding-below-target", HoldingFindings.DoesNotHold, "lost-seal-moves-part", UnsupportedFindings.Code];

    /// <summary>Breaches and warnings, in the order of the rules.</summary>
    /// <param name="file">The layout's file, for messages.</param>
    /// <param name="report">What the check found.</param>
    public static IEnumerable<Finding> Of(string file, LayoutReport report)
    {
        var seals = report[CheckedRule.SealInSoundWood].Breaches;
        var bodies = report[CheckedRule.BodyClearOfCuts].Breaches;
        foreach (var rule in report.Rules)
        {
            foreach (var breach in rule.Breaches)
            {
                // A pod that stands over an edge breaks both rules: it is told once.
                if (rule.Rule == CheckedRule.BodyClearOfCuts && seals.Any(s => s.Place == breach.Place))
                {
                    continue;
                }

                var other = rule.Rule == CheckedRule.SealInSoundWood ? bodies.FirstOrDefault(b => b.Place == breach.Place) : null;
                yield return In(file, other is null ? breach : breach with { Message = Both(breach.Message, other.Message) });
            }

            foreach (var warning in rule.Warnings)
            {
                yield return In(file, warning);
            }
        }
    }

    /// <summary>What was found when the layout was planned, as far as it still stands: of the blank and the program all, of the pods what follows anew.</summary>
    /// <param name="plan">The plan, with the layout as it now is and the report of how it now holds.</param>
    public static ImmutableArray<Finding> Standing(PlanResult plan) =>
    [
        .. plan.Findings.Where(f => !OfPods.Contains(f.Code)),
        .. plan.Layout?.Holding is { WorstLoss: >= 0 and var loss } held && held.Pods[loss].FactorIfLost < 1
            ? [HoldingFindings.LostSeal(held, CheckWords.Pod(loss))] : Array.Empty<Finding>(),
    ];

    /// <summary>What speaks against the layout, for its card.</summary>
    /// <param name="job">The job.</param>
    /// <param name="layout">The layout.</param>
    /// <param name="report">What the check found.</param>
    /// <param name="isChanged">Whether the layout is no longer what was planned.</param>
    public static LayoutDoubts Doubts(Job job, Layout layout, LayoutReport report, bool isChanged) => new(
        isChanged,
        // Of a layout as planned the card itself says that it does not hold.
        [.. report.Rules.Where(r => !r.Holds && (isChanged || r.Rule != CheckedRule.PartHeld)).Select(r => CheckWords.Name(r.Rule) + Pods(r.Pods))],
        // How it is held the card says itself, where there is a figure.
        [.. Of("", report).Where(f => f.Severity == Severity.Refused && !(layout.Holding is not null && f.Code == CheckWords.Code(CheckedRule.PartHeld))).Select(f => f.Message)],
        [.. HoldingRulesCheck.NotCounted(job, layout)])
    {
        Faults = LayoutCheck.Faults(job, layout, report),
    };

    private static string Pods(ImmutableArray<int> pods) =>
        pods.IsEmpty ? "" : $" ({string.Join(", ", pods.Select(CheckWords.Pod))})";

    private static Finding In(string file, Finding finding) => finding with
    {
        Place = finding.Place is Place.InJson { File: "" } member ? member with { File = file } : finding.Place ?? new Place.InFile(file),
    };

    // "P1: its seal ...; P1: its body ..." as two sentences about P1.
    private static string Both(string seal, string body)
    {
        var words = body[(body.IndexOf(": ", StringComparison.Ordinal) + 2)..];
        return $"{seal} {char.ToUpperInvariant(words[0])}{words[1..]}";
    }
}

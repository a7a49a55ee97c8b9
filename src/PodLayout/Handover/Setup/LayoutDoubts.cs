using System.Collections.Immutable;
using PodLayout.Layouts;

namespace PodLayout.Handover.Setup;

/// <summary>What speaks against a layout that may have been changed by hand: found by holding it against every rule.</summary>
/// <param name="IsChanged">Whether it is no longer what was planned.</param>
/// <param name="Rules">The rules that it breaks, each with its pods.</param>
/// <param name="Breaches">How it breaks them, one sentence each.</param>
/// <param name="NotCounted">The pods that hold nothing, each with the reason.</param>
public sealed record LayoutDoubts(
    bool IsChanged, ImmutableArray<string> Rules, ImmutableArray<string> Breaches, ImmutableArray<string> NotCounted)
{
    /// <summary>Pods that break a rule or are not counted.</summary>
    public ImmutableArray<PodFault> Faults { get; init; } = [];

    /// <summary>What is wrong with a pod, in a few words for its row; empty where nothing is.</summary>
    /// <param name="pod">Its index.</param>
    public string FaultOf(int pod)
    {
        if (Faults.FirstOrDefault(f => f.Pod == pod) is not { } fault)
        {
            return "";
        }

        if (!fault.Counts)
        {
            return $"does not hold: see {CardSection.Named(CardSection.Holding)}";
        }

        // Each rule with its pods in brackets.
        var id = LayoutFiling.PodId(pod);
        var names = Rules.Select(r => (Rule: r, At: r.LastIndexOf(" (", StringComparison.Ordinal)))
            .Where(r => r.At > 0 && r.Rule[(r.At + 2)..].TrimEnd(')').Split(", ").Contains(id)).Select(r => r.Rule[..r.At]).ToList();
        return names.Count == 0 ? $"breaks a rule: see {CardSection.Named(CardSection.Holding)}" : $"breaks {(names.Count == 1 ? "a rule" : $"{CsvText.Count(names.Count)} rules")}: {string.Join("; ", names)}";
    }

    /// <summary>Of a layout as it was planned.</summary>
    public static LayoutDoubts None { get; } = new(false, [], [], []);
}

using PodLayout.Handover;
using PodLayout.Layouts;

namespace PodLayout.Checking;

/// <summary>What a check came to, for a person: the rules in a table, then the verdict.</summary>
public static class CheckText
{
    /// <summary>The text, LF at line ends. The breaches themselves are findings and stand elsewhere.</summary>
    /// <param name="plan">The layout with its job.</param>
    /// <param name="report">What the check found.</param>
    public static string Write(PlanResult plan, LayoutReport report)
    {
        var rows = report.Rules.Select(r => (string[])
        [
            r.Holds ? "" : "BROKEN", CheckWords.Name(r.Rule), CheckWords.Figure(r.Measure, r.Worst, r.Needed), Needed(r), r.Where,
        ]).Prepend(["", "rule", "worst", "needed", "where"]).ToList();
        var widths = Enumerable.Range(0, 5).Select(c => rows.Max(r => r[c].Length)).ToArray();
        var lines = rows.Select(row => string.Join("  ", row.Select((cell, c) => cell.PadRight(widths[c]))).TrimEnd());
        var cautions = Cautions.Of(plan with { Interrupted = false }).Select(c => "Caution: " + c);
        return string.Concat(lines.Append(Verdict(report)).Concat(cautions).Select(line => Summary.Plain(line) + "\n"));
    }

    private static string Needed(RuleCheck rule) => rule.Needed is null ? "-" : (rule.Measure switch
    {
        Measure.LeastMm or Measure.LeastCount or Measure.LeastFactor => "at least ",
        _ => "at most ",
    }) + CheckWords.Figure(rule.Measure, rule.Needed, rule.Needed);

    private static string Verdict(LayoutReport report)
    {
        var broken = report.Rules.Count(r => !r.Holds);
        return broken == 0 && report.LeavesUnsupported
            ? $"All {CheckWords.Whole(report.Rules.Length)} rules hold for the figures in this file, but part of the wood stays unsupported, as the plan says. Whether fewer pods would do was not looked at."
            : broken == 0
            ? $"All {CheckWords.Whole(report.Rules.Length)} rules hold for the figures in this file. Whether fewer pods would do was not looked at."
            : $"{CheckWords.Whole(broken)} of {CheckWords.Whole(report.Rules.Length)} rules {(broken == 1 ? "is" : "are")} broken: this layout is not to be used as it is.";
    }
}

using System.Collections.Immutable;
using PodLayout.Findings;
using PodLayout.Layouts;

namespace PodLayout.Handover.Setup;

/// <summary>The warnings of a plan as the card tells them: the same ones at its head, where they stand, and among what is ticked.</summary>
internal static class CardWarnings
{
    /// <summary>The section's heading.</summary>
    public const string Heading = "Offcuts and warnings";

    // Finding of a piece that comes loose.
    private const string Offcut = "offcut";

    /// <summary>All of them, a sentence or two each; loose pieces that no pod holds come first.</summary>
    public static ImmutableArray<string> Of(PlanResult result, Layout layout, CardUnit unit) =>
    [
        .. LooseSteps.LargeAndLoose(result.Job, layout, unit),
        .. result.Findings.Where(f => f.Severity == Severity.Warning && !IsInTable(result, f)).Select(f => Words(f, unit)),
    ];

    /// <summary>What the head of the card says of them.</summary>
    public static IEnumerable<string> Head(int count) =>
        count == 0 ? [] : [$"{(count == 1 ? "1 warning stands" : $"{CsvText.Count(count)} warnings stand")} in {CardSection.Named(CardSection.Warnings)}: read before setting up."];

    /// <summary>Whether a finding tells of a loose piece.</summary>
    public static bool IsOfPiece(Finding finding) => finding.Code == Offcut;

    /// <summary>Whether it tells of one that the table of loose pieces has, with its place on the board.</summary>
    public static bool IsInTable(PlanResult result, Finding finding) =>
        IsOfPiece(finding) && result.Job.Offcuts.Any(o => finding.Message.StartsWith(o.Name + " ", StringComparison.Ordinal));

    /// <summary>A finding as a sentence.</summary>
    public static string Words(Finding finding, CardUnit unit)
    {
        // The code of a finding is for scripts.
        var code = $" [{finding.Code}]";
        var words = unit.Words(IsOfPiece(finding) ? finding.Remedy is { } remedy ? $"{finding.Message} {remedy}" : finding.Message : finding.ToString()[..^code.Length]);
        return IsOfPiece(finding) ? char.ToUpperInvariant(words[0]) + words[1..] : words;
    }
}

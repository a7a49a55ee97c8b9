using System.Collections.Immutable;
using PodLayout.Layouts;

namespace PodLayout.Handover.Setup;

/// <summary>All that the card says, in the order of work. The page for the screen and the pages for paper are both made from it.</summary>
/// <param name="Title">The job.</param>
/// <param name="Edition">Revision, date and the plan's mark, a line each.</param>
/// <param name="Head">What the card is for.</param>
/// <param name="Warnings">What must be read before anything else; empty when there is nothing.</param>
/// <param name="Stop">What keeps the operator from starting; its words are the first of the warnings.</param>
/// <param name="Sections">Everything after the picture.</param>
/// <param name="Laying">How the part is laid; the picture shows its marks.</param>
internal sealed record SetupCard(
    string Title,
    ImmutableArray<string> Edition,
    CardBlock.Facts Head,
    ImmutableArray<string> Warnings,
    StopWords Stop,
    ImmutableArray<CardSection> Sections,
    Laying Laying)
{
    /// <summary>Pods that break a rule or are not counted; the picture shows them.</summary>
    public ImmutableArray<PodFault> Faults { get; init; } = [];

    /// <summary>The card of a layout.</summary>
    /// <param name="result">A plan with a layout.</param>
    /// <param name="options">What the caller adds.</param>
    /// <param name="doubts">What speaks against the layout.</param>
    public static SetupCard Of(PlanResult result, CardOptions options, LayoutDoubts doubts)
    {
        var layout = result.Layout ?? throw new ArgumentException("There is no layout.", nameof(result));
        var unit = CardUnit.Of(result, options);
        var laying = Laying.Of(result, layout);
        var stop = StopWords.Of(result.Job, layout, doubts);
        var changes = StandingChanges.Of(result.Job, layout);
        return new(
            result.Job.Name.Length > 0 ? result.Job.Name : result.Job.Part.Name,
            [$"Revision: {Or(options.Revision, "________")}", $"Date: {Or(options.Date, "____________")}", $"Plan: {LayoutMark.Of(result)}"],
            CardHead.Of(result, layout, options, stop, unit),
            [.. stop.Lines, .. StopWords.Broken(doubts.Breaches, unit), .. Remarks(result, doubts, stop, unit), .. CardWarnings.Head(CardWarnings.Of(result, layout, unit).Length)],
            stop,
            [
                .. BoardSteps.Of(result, layout, changes, doubts, unit),
                .. PartSteps.Of(result, layout, laying, unit),
                .. CheckSteps.Of(result, layout, laying, stop, unit),
            ],
            laying)
        {
            Faults = doubts.Faults,
        };
    }

    private static IEnumerable<string> Remarks(PlanResult result, LayoutDoubts doubts, StopWords stop, CardUnit unit) =>
    [
        .. result.IsPartial ? [StretchWords.OnCard(result, unit)] : Array.Empty<string>(),
        .. result.Interrupted ? ["The search was cut short: this is the best layout found, not the best possible."] : Array.Empty<string>(),
        .. doubts.IsChanged && !stop.Stops ? ["This layout was changed after it was planned. It keeps the rules that it is checked by."] : Array.Empty<string>(),
    ];

    private static string Or(string given, string otherwise) => given.Trim().Length > 0 ? given.Trim() : otherwise;
}

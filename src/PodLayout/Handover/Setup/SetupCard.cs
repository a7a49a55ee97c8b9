using System.Collections.Immutable;
using PodLayout.Layouts;

namespace PodLayout.Handover.Setup;

/// <summary>All that the card says, in the order of work. The page for the screen and the pages for paper are both made from it.</summary>
/// <param name="Title">The job.</param>
/// <param name="Edition">Revision and date, in one line.</param>
/// <param name="Head">What the card is for.</param>
/// <param name="Warnings">What must be read before anything else; empty when there is nothing.</param>
/// <param name="Sections">Everything after the picture.</param>
/// <param name="Laying">How the part is laid; the picture shows its marks.</param>
internal sealed record SetupCard(
    string Title,
    string Edition,
    CardBlock.Facts Head,
    ImmutableArray<string> Warnings,
    ImmutableArray<CardSection> Sections,
    Laying Laying)
{
    /// <summary>Pods that break a rule or are not counted; the picture shows them.</summary>
    public ImmutableArray<PodFault> Faults { get; init; } = [];

    // More would hide the work behind them.
    private const int MostBroken = 10;

    /// <summary>The card of a layout.</summary>
    /// <param name="result">A plan with a layout.</param>
    /// <param name="options">What the caller adds.</param>
    /// <param name="broken">Rules that the layout breaks, one sentence each.</param>
    /// <param name="faults">The pods that break them or are not counted.</param>
    public static SetupCard Of(PlanResult result, CardOptions options, ImmutableArray<string> broken, params ImmutableArray<PodFault> faults)
    {
        var layout = result.Layout ?? throw new ArgumentException("There is no layout.", nameof(result));
        var unit = CardUnit.Of(result, options);
        var laying = Laying.Of(result, layout);
        var changes = StandingChanges.Of(result.Job, layout);
        return new(
            result.Job.Name.Length > 0 ? result.Job.Name : result.Job.Part.Name,
            $"Revision {Or(options.Revision, "________")}    Date {Or(options.Date, "____________")}",
            CardHead.Of(result, layout, options, unit),
            [.. Broken(broken), .. result.Interrupted ? ["The search was cut short: this is the best layout found, not the best possible."] : Array.Empty<string>(), .. CheckSteps.Head(result)],
            [
                .. BoardSteps.Of(result, layout, changes, unit),
                .. PartSteps.Of(result, layout, laying, unit),
                .. CheckSteps.Of(result, layout, unit),
            ],
            laying)
        {
            Faults = faults,
        };
    }

    private static IEnumerable<string> Broken(ImmutableArray<string> broken)
    {
        var shown = broken.Take(MostBroken).Select(b => "This layout breaks a rule: " + b);
        return broken.Length <= MostBroken ? shown : shown.Append($"And {CsvText.Count(broken.Length - MostBroken)} more: podlayout check lists them all.");
    }

    private static string Or(string given, string otherwise) => given.Trim().Length > 0 ? given.Trim() : otherwise;
}

using System.Collections.Immutable;
using PodLayout.Findings;
using PodLayout.Jobs;

namespace PodLayout.Layouts;

/// <summary>What planning a job came to.</summary>
/// <param name="Job">The job as planned.</param>
/// <param name="Layout">The best layout found; null when there is none.</param>
/// <param name="Unsupported">
/// What the layout leaves beyond its limits; when there is none, what could not be supported at the placement that came nearest.
/// </param>
/// <param name="Findings">Everything a person should know, in order; when there is no layout, its causes.</param>
/// <param name="Interrupted">Whether the work was cut short (by the user or the time limit): the layout is the best found so far.</param>
/// <param name="Work">How much was looked at; the same on every machine.</param>
public sealed record PlanResult(
    Job Job,
    Layout? Layout,
    ImmutableArray<UnsupportedStretch> Unsupported,
    ImmutableArray<Finding> Findings,
    bool Interrupted,
    WorkDone Work)
{
    /// <summary>
    /// Whether there is a layout that does not hold what it is to hold: it is shown, and said not to hold wherever it is, and is
    /// no success.
    /// </summary>
    public bool DoesNotHold => Layout?.Holding?.DoesNotHold == true;

    /// <summary>Whether there is a layout that leaves part of the wood beyond its limits.</summary>
    public bool IsPartial => Layout is not null && !Unsupported.IsEmpty;

    /// <summary>Changes that were tried because something stays unsupported, the best first; empty where none was, or none helped.</summary>
    public ImmutableArray<WayOut> WaysOut { get; init; } = [];

    /// <summary>The mark that the files of this plan bear; null as long as it was not filed.</summary>
    public string? Mark { get; init; }

    /// <summary>Whether there is a layout that may be used.</summary>
    public bool IsUsable => Layout is not null && !DoesNotHold;
}

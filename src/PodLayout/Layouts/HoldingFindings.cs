using System.Globalization;
using PodLayout.Findings;
using PodLayout.Holding;
using PodLayout.Jobs;

namespace PodLayout.Layouts;

/// <summary>What is said of layouts that do not hold as they should.</summary>
internal static class HoldingFindings
{
    private const string Remedy =
        "Take less at a time or feed more slowly, give the shop larger pods or more vacuum, or allow pods where the job keeps them away.";

    /// <summary>A layout that reaches the least factor, but not the target.</summary>
    public static Finding BelowTarget(Job job, Layout layout) => new(
        "holding-below-target",
        Severity.Warning,
        FindingKind.Request,
        Text($"no layout holds at the target factor of {job.Shop.Holding.TargetFactor:0.##}; this one holds at {Factor(layout)}{Where(layout.Holding?.Weakest)}; the least factor is {job.Shop.Holding.LeastFactor:0.##}."),
        null,
        Remedy);

    /// <summary>No layout reaches the least factor.</summary>
    /// <param name="job">The job.</param>
    /// <param name="supporting">The layout with the fewest pods that supports the part.</param>
    public static Finding NotHeld(Job job, Layout supporting) => new(
        "not-held",
        Severity.Refused,
        FindingKind.NoLayout,
        Text($"layouts support the part, but none holds it at a factor of {job.Shop.Holding.LeastFactor:0.##}; the one with fewest pods ({supporting.Pods.Length}) holds at {Factor(supporting)}{Where(supporting.Holding?.Weakest)}."),
        null,
        Remedy);

    /// <summary>With the cuts that are assumed a layout would hold too weakly.</summary>
    /// <param name="layout">The layout.</param>
    /// <param name="held">Its report.</param>
    public static Finding AssumedTooWeak(Layout layout, HoldingReport held) => new(
        "holding-assumed-low",
        Severity.Warning,
        FindingKind.Request,
        Text($"the job states no cuts; with those assumed the layout holds at a factor of {Factor(layout)}{Where(layout.Holding?.Weakest)}, and the target is {held.TargetFactor:0.##}."),
        null,
        "State the cuts, or the program, and the cutter: then the layout is made to hold.");

    /// <summary>With one seal lost the part would move under the cut as it is.</summary>
    /// <param name="held">The report, in which that is so.</param>
    /// <param name="pod">Name of the pod whose loss is worst.</param>
    public static Finding LostSeal(HoldingReport held, string pod) => new(
        "lost-seal-moves-part",
        Severity.Warning,
        FindingKind.Request,
        Text($"if {pod} lost its seal the factor would be {FactorText.Of(held.Pods[held.WorstLoss].FactorIfLost)}: below 1 the part moves under the cut as reckoned with."),
        null,
        "Watch the gauge while cutting, add a pod near it, or cut more lightly.");

    /// <summary>How and where a layout gives way first, as the end of a sentence.</summary>
    public static string Where(WeakestPlace? place) => place is { } weakest
        ? Text($" (the part {Verb(weakest.Mode)} when the cutter is at ({weakest.OnPart.X:0.#}, {weakest.OnPart.Y:0.#}) of the drawing, {weakest.Pass})") : "";

    /// <summary>What the part does.</summary>
    public static string Verb(FailureMode mode) => mode switch
    {
        FailureMode.Slides => "slides",
        FailureMode.Twists => "twists",
        FailureMode.Tips => "tips",
        _ => "is lifted",
    };

    private static string Factor(Layout layout) => layout.Holding is { } held ? FactorText.Of(held.Factor) : "?";

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

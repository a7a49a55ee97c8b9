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

    /// <summary>A layout that reaches the least factor, where none was found that reaches the target.</summary>
    public static Finding BelowTarget(Job job, Layout layout) => new(
        "holding-below-target",
        Severity.Warning,
        FindingKind.Request,
        Text($"no layout was found that holds at the target factor of {FactorText.Asked(job.Shop.Holding.TargetFactor)}{Assumed(job)}; this one holds {What(layout)} at {Factor(layout)}{Where(layout)}; the least factor is {FactorText.Asked(job.Shop.Holding.LeastFactor)}."),
        null,
        Remedy);

    /// <summary>Code of the finding that no layout reaches the least factor.</summary>
    public const string DoesNotHold = "does-not-hold";

    /// <summary>No layout was found that reaches the least factor.</summary>
    /// <param name="job">The job.</param>
    /// <param name="supporting">The layout with the fewest pods that supports the part.</param>
    public static Finding NotHeld(Job job, Layout supporting) => new(
        DoesNotHold,
        Severity.Warning,
        FindingKind.Request,
        Text($"DOES NOT HOLD: layouts support the part, but none was found that holds all that is to be held at the least factor of {FactorText.Asked(job.Shop.Holding.LeastFactor)}{Assumed(job)}; this one of {supporting.Pods.Length} pods holds {What(supporting)} at {Factor(supporting)}{Where(supporting)}. It is shown so that you see what is missing: do not cut on it."),
        null,
        Remedy);

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

    private static string Factor(Layout layout) => layout.Holding is { } held ? FactorText.Of(held.LeastOfAll, held.TargetFactor, held.LeastFactor) : "?";

    private static string What(Layout layout) => layout.Holding?.HeldLeast.What ?? "the part";

    private static string Where(Layout layout) => Where(layout.Holding?.HeldLeast.Weakest);

    private static string Assumed(Job job) => job.Part.Loads.AreAssumed ? " with the cuts that are assumed, since the job states none" : "";

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Findings;
using PodLayout.Jobs;

namespace PodLayout.Layouts;

/// <summary>What is said of a layout that leaves part of the wood beyond its limits.</summary>
public static class UnsupportedFindings
{
    /// <summary>The finding's code.</summary>
    public const string Code = "part-unsupported";

    /// <summary>The finding.</summary>
    /// <param name="job">The job.</param>
    /// <param name="layout">The layout.</param>
    /// <param name="stretches">What it leaves.</param>
    public static Finding Of(Job job, Layout layout, ImmutableArray<UnsupportedStretch> stretches) => new(
        Code, Severity.Warning, FindingKind.Request,
        $"{Amount(layout, stretches)} beyond {(stretches.Length == 1 ? "its limit" : "their limits")}, in {Counted(stretches.Length)}: {Worst(job, stretches)}. All the rest is supported.",
        null,
        "Deal with what stays before it is cut: lighter passes there, a support of your own under it, or what stands beside the stretch; plan --try plans what may mend it. \"mustSupportAll\": true asks for no layout at all in such a case.");

    /// <summary>How much it is, with its verb.</summary>
    public static string Amount(Layout layout, ImmutableArray<UnsupportedStretch> stretches)
    {
        var mm = layout.Proof.UnsupportedMm;
        return stretches.All(s => s.IsEdge)
            ? string.Create(CultureInfo.InvariantCulture, $"{mm:0} mm of edge {(Math.Round(mm) == 1 ? "stays" : "stay")}")
            : string.Create(CultureInfo.InvariantCulture, $"{mm:0} mm (edges by their length; inside and on thin floors 10 cm2 count as one) stay");
    }

    private static string Counted(int stretches) => stretches == 1 ? "one stretch" : string.Create(CultureInfo.InvariantCulture, $"{stretches} stretches");

    private static string Worst(Job job, ImmutableArray<UnsupportedStretch> stretches)
    {
        var worst = stretches.MaxBy(s => s.OverhangNowMm is { } mm ? mm / LimitMm(s.Limit, job.Support) : double.MaxValue)!;
        var place = string.Create(CultureInfo.InvariantCulture, $"({worst.From.X:0.#}, {worst.From.Y:0.#}) of the drawing");
        return worst.OverhangNowMm is { } now
            ? string.Create(CultureInfo.InvariantCulture, $"at worst {now:0} mm from the nearest pod where {LimitMm(worst.Limit, job.Support):0.#} are allowed, near {place}")
            : $"no pod is anywhere near {place}";
    }

    /// <summary>The limit of a kind of point, across the grain, mm.</summary>
    public static double LimitMm(SupportLimit limit, SupportRules rules) => limit switch
    {
        SupportLimit.Edge => rules.OverhangAcrossGrainMm,
        SupportLimit.Interior => rules.InteriorSpanMm ?? 0,
        _ => rules.ThinFloorSpanMm,
    };
}

using System.Globalization;
using System.Text.RegularExpressions;
using PodLayout.Air;
using PodLayout.Holding;
using PodLayout.Layouts;
using PodLayout.Shops;

namespace PodLayout.Handover.Setup;

/// <summary>
/// What the card says of holding: the factor and where it is weakest, the gauge reading to wait for, what was assumed. What has
/// not been computed is said to be so.
/// </summary>
internal static partial class HoldingSteps
{
    public const string NotComputed = "not computed";

    /// <param name="shop">The shop.</param>
    /// <param name="layout">The layout.</param>
    /// <param name="stop">What keeps from starting.</param>
    /// <param name="unit">The card's unit.</param>
    public static IEnumerable<CardBlock> Of(Shop shop, Layout layout, StopWords stop, CardUnit unit)
    {
        if (layout.Holding is not { } held)
        {
            yield return new CardBlock.Facts(
            [
                ("Holding factor", NotComputed),
                ("Weakest", NotComputed),
                ("Gauge reading to reach before the spindle starts", NotComputed),
                ("The shop's own gauge reading", ""),
                ("What was computed", "where pods fit and how far the part reaches beyond them; not whether vacuum holds it"),
            ]);
            yield break;
        }

        yield return new CardBlock.Facts(
        [
            ("Gauge reading to reach before the spindle starts", Gauge(held, unit) + " of vacuum" + Assumed(shop)),
            ("Holding factor", Factor(held, stop)),
            ("Weakest", Weakest(layout, held.Weakest, "part", unit)),
            .. held.Pieces.Select(p => (
                Summary.Capital(p.Name), $"held at {FactorText.Of(p.Factor, held.TargetFactor, held.LeastFactor)} against the cuts along it in its last layer; weakest {Weakest(layout, p.Weakest, "piece", unit)}")),
            .. held.Passes.IsEmpty ? [] : new[]
            {
                (Text($"Depth of passes for {FactorText.Asked(held.TargetFactor)}"), unit.Words(string.Join("; ", held.Passes.Select(HoldingWords.PassWords)))),
            },
            .. held.WorstLoss < 0 ? [] : new[]
            {
                ("If one pod loses its seal", $"{FactorText.Of(held.Pods[held.WorstLoss].FactorIfLost)} without {LayoutFiling.PodId(held.WorstLoss)}, the worst one"),
            },
            ("Before the vacuum is on", Standing(held, unit)),
            .. held.AcceptLessBecause is not { } reason ? [] : new[] { ("Less than the shop's least is accepted", reason) },
        ]);
    }

    /// <summary>What was assumed, for the end of the card; nothing where nothing was computed.</summary>
    /// <param name="job">The job.</param>
    /// <param name="layout">The layout.</param>
    /// <param name="unit">The card's unit.</param>
    public static IEnumerable<CardBlock> Assumed(Jobs.Job job, Layout layout, CardUnit unit)
    {
        if (layout.Holding is not null && !job.Part.Loads.Passes.IsEmpty)
        {
            yield return new CardBlock.Table(
                "Where the cutter's force comes from", null, ["Cut", "From", "Force up to"],
                [
                    .. job.Part.Loads.Passes.Select((p, i) => new CardRow(
                        $"F{CsvText.Count(i + 1)}", [p.Name, unit.Words(Operations().Replace(p.Source, Operation)), unit.Force(p.PeakN)])),
                ]);
        }

        if (layout.Holding is not { Assumptions.IsEmpty: false } held)
        {
            yield break;
        }

        yield return new CardBlock.Words("Assumed for the holding factor:");
        foreach (var assumption in held.Assumptions)
        {
            yield return new CardBlock.Words("- " + unit.Words(assumption));
        }
    }

    /// <summary>The gauge reading, in the unit of the card first.</summary>
    public static string Gauge(HoldingReport held, CardUnit unit)
    {
        string kPa = Text($"{held.GaugeKPa:0.#} kPa"), inHg = Text($"{held.GaugeKPa / PressureUnits.InHgKPa:0.#} inHg");
        return unit.InInches ? $"{inHg} ({kPa})" : $"{kPa} ({inHg})";
    }

    /// <summary>The factor, and what was asked for.</summary>
    public static string Factor(HoldingReport held, StopWords stop) =>
        Text($"{FactorText.Of(held.Factor, held.TargetFactor, held.LeastFactor)}{(stop.Stops ? ", layout not cleared" : "")} (target {FactorText.Asked(held.TargetFactor)}, least {FactorText.Asked(held.LeastFactor)})");

    /// <summary>What stands beside a gauge reading that nobody gave; empty where the shop file has one or a pump.</summary>
    public static string Assumed(Shop shop) =>
        shop.Vacuum.IsReadingAssumed ? "; assumed: the shop file names none; if not reached, do not start" : "";

    /// <summary>What is ticked off about the vacuum.</summary>
    public static string Check(Shop shop, Layout layout, CardUnit unit) => layout.Holding is not { } held
        ? $"Vacuum is on; the shop's own gauge reading, written in {CardSection.Named(CardSection.Holding)}, is reached and stays there."
        : $"Vacuum is on; the gauge reads at least {Gauge(held, unit)} and stays there{Assumed(shop)}.";

    private static string Standing(HoldingReport held, CardUnit unit) => held.StandMm >= 0
        ? $"the part rests on its pods: its centre of mass lies {unit.Rough(held.StandMm)} {unit.Name} inside them"
        : $"THE PART TIPS: its centre of mass lies {unit.Rough(-held.StandMm)} {unit.Name} outside its pods";

    private static string Weakest(Layout layout, WeakestPlace? place, string what, CardUnit unit)
    {
        if (place is not { } weakest)
        {
            return $"nowhere: no force of the cutter moves the {what}";
        }

        var at = HoldingWords.OnBoard(layout, weakest);
        return $"with the cutter at X {unit.Rough(at.X)}, Y {unit.Rough(at.Y)} {unit.Name} on the board, {LooseSteps.BesidePod(layout, at)} ({weakest.Pass}): the {what} {HoldingFindings.Verb(weakest.Mode)}";
    }

    // The operator knows no paths of members.
    [GeneratedRegex(@"\$\.cuts\[(?<index>[0-9]{1,6})\]")]
    private static partial Regex Operations();

    private static string Operation(Match found) =>
        $"cut {CsvText.Count(int.Parse(found.Groups["index"].Value, CultureInfo.InvariantCulture) + 1)} of the job file";

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

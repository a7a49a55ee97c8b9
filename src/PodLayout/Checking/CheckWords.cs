using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Geometry;
using PodLayout.Handover;
using PodLayout.Holding;

namespace PodLayout.Checking;

/// <summary>How rules, pods and figures are spoken of.</summary>
internal static class CheckWords
{
    public static string Name(CheckedRule rule) => rule switch
    {
        CheckedRule.SealInSoundWood => "upper seal in sound wood",
        CheckedRule.FloorsBearVacuum => "floors bear the vacuum",
        CheckedRule.BodyClearOfCuts => "body clear of cuts",
        CheckedRule.PodsApart => "pods apart",
        CheckedRule.OnTheLattice => "on the groove lattice",
        CheckedRule.InsideUsableArea => "inside the usable area",
        CheckedRule.ClearOfObstacles => "clear of obstacles",
        CheckedRule.PortsListed => "ports listed, one pod each",
        CheckedRule.EnoughPorts => "enough ports",
        CheckedRule.PortsWork => "ports work",
        CheckedRule.PortsInsideSeal => "ports inside lower seal",
        CheckedRule.NoOpenPortUnderSeal => "no open port under a seal",
        CheckedRule.Stock => "pods in stock",
        CheckedRule.QuarterTurn => "quarter turn allowed",
        CheckedRule.OneHeight => "one pod height",
        CheckedRule.KeptPodsStand => "kept pods stand",
        CheckedRule.EdgeWithinLimit => "edge within overhang",
        CheckedRule.InteriorWithinLimit => "interior within span",
        CheckedRule.FloorWithinLimit => "thin floors within span",
        CheckedRule.PiecesHeld => "loose pieces held",
        CheckedRule.PiecesBalanced => "loose pieces in balance",
        CheckedRule.PartStands => "part rests without vacuum",
        CheckedRule.PartHeld => "held against the cutter",
        _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, "Unknown rule."),
    };

    /// <summary>The stable code of a breach.</summary>
    public static string Code(CheckedRule rule) => rule switch
    {
        CheckedRule.SealInSoundWood => "seal-off-sound-wood",
        CheckedRule.FloorsBearVacuum => "floor-sucked-in",
        CheckedRule.BodyClearOfCuts => "body-near-cut",
        CheckedRule.PodsApart => "pods-too-near",
        CheckedRule.OnTheLattice => "pod-off-lattice",
        CheckedRule.InsideUsableArea => "pod-off-usable-area",
        CheckedRule.ClearOfObstacles => "pod-near-obstacle",
        CheckedRule.PortsListed => "port-list-wrong",
        CheckedRule.EnoughPorts => "ports-too-few",
        CheckedRule.PortsWork => "port-does-not-work",
        CheckedRule.PortsInsideSeal => "port-outside-seal",
        CheckedRule.NoOpenPortUnderSeal => "open-port-under-seal",
        CheckedRule.Stock => "stock-exceeded",
        CheckedRule.QuarterTurn => "turn-not-allowed",
        CheckedRule.OneHeight => "heights-mixed",
        CheckedRule.KeptPodsStand => "kept-pod-missing",
        CheckedRule.EdgeWithinLimit => "edge-beyond-limit",
        CheckedRule.InteriorWithinLimit => "interior-beyond-limit",
        CheckedRule.FloorWithinLimit => "floor-beyond-limit",
        CheckedRule.PiecesHeld => "offcut-without-pod",
        CheckedRule.PiecesBalanced => "offcut-not-balanced",
        CheckedRule.PartStands => "part-tips-off",
        CheckedRule.PartHeld => "held-too-weakly",
        _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, "Unknown rule."),
    };

    /// <summary>The member of the layout file that a breach is about.</summary>
    public static string Path(CheckedRule rule, (int First, int Second) about) => rule switch
    {
        CheckedRule.PortsListed => "$.openPorts",
        CheckedRule.KeptPodsStand => $"$.asked.keep[{Whole(about.First)}]",
        _ => Pods(rule, about) is [var pod, ..] ? $"$.pods[{Whole(pod)}]" : "$.pods",
    };

    /// <summary>Indices of the pods that a breach is about, by what it is remembered by; empty where it is about no single pod.</summary>
    public static ImmutableArray<int> Pods(CheckedRule rule, (int First, int Second) about) => rule switch
    {
        CheckedRule.PodsApart => [about.First, about.Second],
        CheckedRule.SealInSoundWood or CheckedRule.FloorsBearVacuum or CheckedRule.BodyClearOfCuts or CheckedRule.OnTheLattice or CheckedRule.InsideUsableArea
            or CheckedRule.ClearOfObstacles or CheckedRule.EnoughPorts or CheckedRule.PortsWork or CheckedRule.PortsInsideSeal
            or CheckedRule.NoOpenPortUnderSeal or CheckedRule.QuarterTurn or CheckedRule.OneHeight => [about.First],
        _ => [],
    };

    public static string Pod(int index) => LayoutFiling.PodId(index);

    public static string Mm(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);

    public static string Kg(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);

    public static string Whole(double value) => value.ToString("0", CultureInfo.InvariantCulture);

    public static string At(Point2 p) => string.Create(CultureInfo.InvariantCulture, $"X {p.X:0.#}, Y {p.Y:0.#}");

    /// <summary>A figure as it stands in the table, beside the one that is needed.</summary>
    public static string Figure(Measure measure, double? value, double? needed = null) => (measure, value) switch
    {
        (_, null) => "-",
        (not Measure.LeastFactor, { } v) when double.IsInfinity(v) => "out of reach",
        (Measure.LeastFactor, { } v) => v == needed ? FactorText.Asked(v) : FactorText.Of(v, needed ?? v),
        (Measure.LeastMm or Measure.MostMm, { } v) => Mm(v) + " mm",
        // Rounded up, so that nothing looks better than it is.
        (Measure.ShareOfLimit, { } v) => Percent(v),
        (_, { } v) => Whole(v),
    };

    public static string Percent(double share) => Whole(Math.Ceiling(share * 100 - 0.05)) + " %";
}

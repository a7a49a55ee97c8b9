using System.Globalization;
using PodLayout.Air;
using PodLayout.Geometry;
using PodLayout.Holding;
using PodLayout.Layouts;

namespace PodLayout.Handover;

/// <summary>How a layout holds, in sentences for the summary, the picture and the card.</summary>
public static class HoldingWords
{
    /// <summary>The sentences of the summary.</summary>
    public static IEnumerable<string> Lines(Layout layout)
    {
        if (layout.Holding is not { } held)
        {
            yield break;
        }

        yield return First(layout, held);
        yield return Figures(held);
        foreach (var piece in held.Pieces)
        {
            yield return Text($"{Summary.Capital(piece.Name)} is held at a factor of {FactorText.Of(piece.Factor, held.TargetFactor, held.LeastFactor)} against the cuts along it in its last layer{(piece.Weakest is { } at ? $": beyond it, it {HoldingFindings.Verb(at.Mode)}, with the cutter at X {OnBoard(layout, at).X:0.#}, Y {OnBoard(layout, at).Y:0.#} on the board ({at.Pass})" : "")}.");
        }

        if (!held.Passes.IsEmpty)
        {
            yield return Text($"For the target of {FactorText.Asked(held.TargetFactor)}: {string.Join("; ", held.Passes.Select(PassWords))}{NoDepth(held)}.");
        }

        if (held.WorstLoss >= 0)
        {
            yield return Text($"If {LayoutFiling.PodId(held.WorstLoss)} lost its seal the factor would be {FactorText.Of(held.Pods[held.WorstLoss].FactorIfLost)}; of all single pods that is the worst loss.");
        }

        if (held.OneMore is { } more)
        {
            yield return Text($"One more pod would give most as {more.Type}{(more.Turned ? ", turned," : "")} at column {more.Column + 1}, row {more.Row + 1}: factor {FactorText.Of(more.Factor)}.");
        }

        yield return Text($"Read at least {held.GaugeKPa:0.#} kPa ({held.GaugeKPa / PressureUnits.InHgKPa:0.#} inHg) of vacuum before the spindle starts. Without vacuum the part's centre of mass lies {held.StandMm:0.#} mm inside its pods.");
        yield return Text($"The factor rests on {held.Assumptions.Length} assumptions; plan --explain prints them, and layout.json lists them.");
        if (held.AcceptLessBecause is { } reason)
        {
            yield return Text($"Less than the shop's least factor is accepted because: {reason}");
        }
    }

    // A plunge, or forces that were measured: no depth is known to lessen.
    private static string NoDepth(HoldingReport held) => held.Weakest is { } weakest && held.LeastOfAll < held.TargetFactor && held.Passes.All(p => p.Pass != weakest.Pass)
        ? $"; for {weakest.Pass} no smaller depth helps: feed more slowly there, or cut it while the part is held otherwise" : "";

    /// <summary>What stands at the head of everything that is handed over of a layout that does not hold.</summary>
    public static string DoesNotHold(HoldingReport held) =>
        Text($"DOES NOT HOLD: {held.HeldLeast.What} is held at a factor of {FactorText.Of(held.HeldLeast.Factor)}, below the least of {FactorText.Asked(held.LeastFactor)}. Do not cut on this layout.");

    /// <summary>The two figures, of which the lower counts.</summary>
    public static string Figures(HoldingReport held) =>
        Text($"By pulls {FactorText.Of(held.FactorByPulls, held.TargetFactor, held.LeastFactor)}, by springs {FactorText.Of(held.FactorBySprings, held.TargetFactor, held.LeastFactor)}: the lower counts. The first corner of a seal bears nothing any more at {FactorText.Of(held.FactorUnloading)}.");

    /// <summary>How deep a pass may go.</summary>
    public static string PassWords(PassLimit pass)
    {
        var most = pass.IsThrough ? "at any depth"
            : pass.MostDepthMm <= 0 ? "at no depth" : Text($"in passes of at most {pass.MostDepthMm:0.##} mm");
        var feed = pass.FeedShare is { } share and >= 0.01 ? Text($", or at {share * 100:0} % of the feed") : "";
        return Text($"{pass.Pass} {most} ({pass.DepthMm:0.##} mm reckoned with{feed})");
    }

    /// <summary>What was assumed, one line each, LF at line ends; empty where holding was not computed.</summary>
    public static string Explained(PlanResult result) =>
        string.Concat((result.Layout?.Holding?.Assumptions ?? []).Select(a => "Assumed: " + Summary.Plain(a) + "\n"));

    /// <summary>The factor, where it is least and what happens there.</summary>
    public static string First(Layout layout, HoldingReport held)
    {
        if (held.Weakest is not { } weakest)
        {
            return "Holding factor: not limited; no force of the cutter at any place of its path moves the part.";
        }

        var at = OnBoard(layout, weakest);
        return Text($"Holding factor {FactorText.Of(held.Factor, held.TargetFactor, held.LeastFactor)} (target {FactorText.Asked(held.TargetFactor)}, least {FactorText.Asked(held.LeastFactor)}): it is the cutting force that could grow so many times before the part {HoldingFindings.Verb(weakest.Mode)}, first with the cutter at X {at.X:0.#}, Y {at.Y:0.#} on the board ({weakest.Pass}).{Band(held, weakest)}");
    }

    // Forces that were given have hardly a band.
    private static string Band(HoldingReport held, WeakestPlace weakest) => weakest.FactorAtLeastForce <= 1.1 * held.Factor ? ""
        : Text($" The force there is known only roughly: at the lower end of its band the factor is {FactorText.Of(weakest.FactorAtLeastForce)}.");

    /// <summary>The weakest place on the board, mm.</summary>
    public static Point2 OnBoard(Layout layout, WeakestPlace weakest) =>
        Turn.FromDegrees(layout.Placement.AngleDeg).Apply(weakest.OnPart) + layout.Placement.ZeroOnBoard;

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

using System.Globalization;
using PodLayout.Air;
using PodLayout.Geometry;
using PodLayout.Holding;
using PodLayout.Layouts;

namespace PodLayout.Handover;

/// <summary>How a layout holds, in sentences for the summary, the picture and the card.</summary>
internal static class HoldingWords
{
    /// <summary>A factor as it is shown: rounded down, so that nothing looks better than it is.</summary>
    public static string Factor(double factor) => double.IsInfinity(factor)
        ? "not limited" : (Math.Floor(factor * 100 + 1e-4) / 100).ToString("0.##", CultureInfo.InvariantCulture);

    /// <summary>The sentences of the summary.</summary>
    public static IEnumerable<string> Lines(Layout layout)
    {
        if (layout.Holding is not { } held)
        {
            yield break;
        }

        yield return First(layout, held);
        if (held.WorstLoss >= 0)
        {
            yield return Text($"If {LayoutFiling.PodId(held.WorstLoss)} lost its seal the factor would be {Factor(held.Pods[held.WorstLoss].FactorIfLost)}; of all single pods that is the worst loss.");
        }

        if (held.OneMore is { } more)
        {
            yield return Text($"One more pod would give most as {more.Type}{(more.Turned ? ", turned," : "")} at column {more.Column + 1}, row {more.Row + 1}: factor {Factor(more.Factor)}.");
        }

        yield return Text($"Read at least {held.GaugeKPa:0.#} kPa ({held.GaugeKPa / PressureUnits.InHgKPa:0.#} inHg) of vacuum before the spindle starts. Without vacuum the part's centre of mass lies {held.StandMm:0.#} mm inside its pods.");
        if (held.AcceptLessBecause is { } reason)
        {
            yield return Text($"Less than the shop's least factor is accepted because: {reason}");
        }
    }

    /// <summary>The factor, where it is least and what happens there.</summary>
    public static string First(Layout layout, HoldingReport held)
    {
        if (held.Weakest is not { } weakest)
        {
            return "Holding factor: not limited; no force of the cutter at any place of its path moves the part.";
        }

        var at = OnBoard(layout, weakest);
        return Text($"Holding factor {Factor(held.Factor)} (target {held.TargetFactor:0.##}, least {held.LeastFactor:0.##}): it is the cutting force that could grow so many times before the part {HoldingFindings.Verb(weakest.Mode)}, first with the cutter at X {at.X:0.#}, Y {at.Y:0.#} on the board ({weakest.Pass}). The force there is known only roughly: at the lower end of its band the factor is {Factor(weakest.FactorAtLeastForce)}.");
    }

    /// <summary>The weakest place on the board, mm.</summary>
    public static Point2 OnBoard(Layout layout, WeakestPlace weakest) =>
        Turn.FromDegrees(layout.Placement.AngleDeg).Apply(weakest.OnPart) + layout.Placement.ZeroOnBoard;

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

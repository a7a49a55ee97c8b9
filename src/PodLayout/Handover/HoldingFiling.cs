using PodLayout.Handover.Format;
using PodLayout.Holding;

namespace PodLayout.Handover;

/// <summary>How a layout holds, into the external form and back.</summary>
internal static class HoldingFiling
{
    public static HoldingEntry Entry(HoldingReport held, Jobs.Job job) => new(
        Factor(held.Factor),
        held.TargetFactor,
        held.LeastFactor,
        held.AcceptLessBecause,
        Entry(held.Weakest),
        [.. held.Pods.Select((p, i) => new PodHoldEntry(
            LayoutFiling.PodId(i), Rounded(p.VacuumKPa), Tenth(p.PullN), Tenth(p.BearsN), Factor(p.FactorIfLost)))],
        held.WorstLoss < 0 ? null : LayoutFiling.PodId(held.WorstLoss),
        Rounded(held.GaugeKPa),
        Rounded(held.BarometerKPa),
        Tenth(held.StandMm),
        Tenth(held.WeightN),
        held.OneMore is not { } more ? null : new(more.Type, more.Turned, more.Column + 1, more.Row + 1, Factor(more.Factor)),
        held.Assumptions,
        HoldingGivenFiling.Entry(job))
    {
        DoesNotHold = held.DoesNotHold,
        FactorByPulls = Factor(held.FactorByPulls),
        FactorBySprings = Factor(held.FactorBySprings),
        FactorUnloading = Factor(held.FactorUnloading),
        Pieces =
        [
            .. held.Pieces.Select(p => new PieceHoldEntry(
                p.Name, Factor(p.Factor), Factor(p.FactorByPulls), Factor(p.FactorBySprings), Entry(p.Weakest))),
        ],
        Passes = [.. held.Passes.Select(p => new PassLimitEntry(p.Pass, Rounded(p.DepthMm), Rounded(p.MostDepthMm), p.IsThrough, p.FeedShare))],
    };

    public static HoldingReport Report(HoldingEntry entry) => new(
        Factor(entry.Factor),
        entry.TargetFactor,
        entry.LeastFactor,
        entry.AcceptLessBecause,
        Weakest(entry.Weakest),
        [.. entry.Pods.Select(p => new PodHold(p.VacuumKPa, p.PullN, p.BearsN, Factor(p.FactorIfLost)))],
        entry.GaugeKPa,
        entry.BarometerKPa,
        entry.StandMm,
        entry.WeightN,
        entry.Assumptions)
    {
        OneMore = entry.OneMorePod is not { } more ? null
            : new(more.Type, more.Turned, more.ColumnFromDatum - 1, more.RowFromDatum - 1, Factor(more.Factor)),
        FactorByPulls = Factor(entry.FactorByPulls),
        FactorBySprings = Factor(entry.FactorBySprings),
        FactorUnloading = Factor(entry.FactorUnloading),
        Pieces =
        [
            .. (entry.Pieces ?? []).Select(p => new PieceHold(
                p.Name, Factor(p.Factor), Factor(p.FactorByPulls), Factor(p.FactorBySprings), Weakest(p.Weakest))),
        ],
        Passes = [.. (entry.Passes ?? []).Select(p => new PassLimit(p.Pass, p.DepthMm, p.MostDepthMm, p.IsThrough, p.FeedShare))],
    };

    private static WeakestEntry? Entry(WeakestPlace? place) => place is not { } weakest ? null : new(
        LayoutFiling.Xy(weakest.OnPart), LayoutFiling.Mm(weakest.HeightMm), Tenth(weakest.Force.XN), Tenth(weakest.Force.YN),
        Tenth(weakest.Force.ZN), weakest.Pass, weakest.Mode, Rounded(weakest.FactorAtLeastForce));

    private static WeakestPlace? Weakest(WeakestEntry? entry) => entry is not { } weakest ? null : new(
        new(weakest.OnPartMm.X, weakest.OnPartMm.Y), weakest.HeightMm, new(weakest.ForceXN, weakest.ForceYN, weakest.ForceZN),
        weakest.Pass, weakest.Mode, weakest.FactorAtLeastForce);

    private static double? Factor(double factor) => double.IsInfinity(factor) ? null : FactorText.Filed(factor);

    private static double Factor(double? factor) => factor ?? double.PositiveInfinity;

    private static double Rounded(double value) => Math.Round(value, 3, MidpointRounding.AwayFromZero) + 0.0;

    private static double Tenth(double value) => Math.Round(value, 1, MidpointRounding.AwayFromZero) + 0.0;
}

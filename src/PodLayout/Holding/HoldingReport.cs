using System.Collections.Immutable;

namespace PodLayout.Holding;

/// <summary>How a layout holds the part against the cutter.</summary>
/// <param name="Factor">
/// How many times the cutter's force, at the upper end of its band, could grow before the part moves: the least over all places
/// of the path and all directions. Infinite when no force of the cutter moves it.
/// </param>
/// <param name="TargetFactor">The factor aimed at.</param>
/// <param name="LeastFactor">The factor below which no layout is handed over.</param>
/// <param name="AcceptLessBecause">Why the job accepts less than the shop; null when it does not.</param>
/// <param name="Weakest">Where it holds least; null when the factor is infinite.</param>
/// <param name="Pods">Each pod's part, in the order of the layout.</param>
/// <param name="GaugeKPa">Gauge vacuum to be read before the spindle starts, kPa.</param>
/// <param name="BarometerKPa">Air pressure reckoned with, kPa absolute.</param>
/// <param name="StandMm">
/// How far inside the figure of the pods the part's centre of mass lies, mm: it must not tip off them before the vacuum is on.
/// </param>
/// <param name="WeightN">The part's weight, N.</param>
/// <param name="Assumptions">What was assumed, one sentence each.</param>
public sealed record HoldingReport(
    double Factor,
    double TargetFactor,
    double LeastFactor,
    string? AcceptLessBecause,
    WeakestPlace? Weakest,
    ImmutableArray<PodHold> Pods,
    double GaugeKPa,
    double BarometerKPa,
    double StandMm,
    double WeightN,
    ImmutableArray<string> Assumptions)
{
    /// <summary>The factor by pulls: friction of each pod at most the coefficient times its own pull (<see cref="PartOnPods"/>).</summary>
    public double FactorByPulls { get; init; } = Factor;

    /// <summary>The factor by springs: friction of each pod at most the coefficient times what it bears.</summary>
    public double FactorBySprings { get; init; } = Factor;

    /// <summary>The least factor at which a corner of some seal bears nothing any more: beyond it the seal may leak.</summary>
    public double FactorUnloading { get; init; } = double.PositiveInfinity;

    /// <summary>How firmly each loose piece is held that pods are to hold and that a cut runs along.</summary>
    public ImmutableArray<PieceHold> Pieces { get; init; } = [];

    /// <summary>How deep each pass may go for the target to be reached; none where no depth is known.</summary>
    public ImmutableArray<PassLimit> Passes { get; init; } = [];

    /// <summary>The least factor of all that is held.</summary>
    public double LeastOfAll => Pieces.Select(p => p.Factor).Append(Factor).Min();

    /// <summary>Whether something is held below the least factor: the layout does not hold, and is not to be used.</summary>
    public bool DoesNotHold => LeastOfAll < LeastFactor * (1 - Tolerances.HoldingShare);

    /// <summary>What is held least: the part, or a loose piece by its name; with its factor and where it is weakest.</summary>
    public (string What, double Factor, WeakestPlace? Weakest) HeldLeast =>
        Pieces.MinBy(p => p.Factor) is { } piece && piece.Factor < Factor
            ? (piece.Name, piece.Factor, piece.Weakest) : ("the part", Factor, Weakest);

    /// <summary>What one more pod would give at this place of the part; null when there is no seat left for one, or it was not looked for.</summary>
    public OneMorePod? OneMore { get; init; }

    /// <summary>The pod whose lost seal weakens the layout most, of those alike to a thousandth the first; -1 when there are none.</summary>
    public int WorstLoss => Pods.IsEmpty ? -1 : Pods.IndexOf(Pods.MinBy(p => FactorText.Filed(p.FactorIfLost))!);
}

using System.Collections.Immutable;
using PodLayout.Holding;

namespace PodLayout.Handover.Format;

/// <summary>How the layout holds the part against the cutter.</summary>
/// <param name="Factor">How many times the cutter's force could grow before the part moves; null when no force of the cutter moves it.</param>
/// <param name="TargetFactor">The factor aimed at.</param>
/// <param name="LeastFactor">The factor below which no layout is handed over.</param>
/// <param name="AcceptLessBecause">Why the job accepts less than the shop; null when it does not.</param>
/// <param name="Weakest">Where it holds least; null when the factor is.</param>
/// <param name="Pods">What each pod has to do with it, in placing order.</param>
/// <param name="WorstLoss">The pod whose lost seal weakens the layout most; null when there are no pods.</param>
/// <param name="GaugeKPa">Gauge vacuum to be read before the spindle starts.</param>
/// <param name="BarometerKPa">Air pressure reckoned with, absolute.</param>
/// <param name="StandMm">How far inside the figure of the pods the part's centre of mass lies.</param>
/// <param name="WeightN">The part's weight.</param>
/// <param name="OneMorePod">What one more pod would give at this place of the part; null when none fits.</param>
/// <param name="Assumptions">What was assumed.</param>
/// <param name="Given">What all this is worked out from.</param>
public sealed record HoldingEntry(
    double? Factor,
    double TargetFactor,
    double LeastFactor,
    string? AcceptLessBecause,
    WeakestEntry? Weakest,
    ImmutableArray<PodHoldEntry> Pods,
    string? WorstLoss,
    double GaugeKPa,
    double BarometerKPa,
    double StandMm,
    double WeightN,
    OneMorePodEntry? OneMorePod,
    ImmutableArray<string> Assumptions,
    HoldingGivenEntry Given)
{
    /// <summary>Whether something is held below the least factor: the layout does not hold, and is not to be used.</summary>
    public bool DoesNotHold { get; init; }

    /// <summary>The factor with the friction of each pod at most the coefficient times its own pull; null when no force of the cutter moves the part.</summary>
    public double? FactorByPulls { get; init; }

    /// <summary>The factor with the friction of each pod at most the coefficient times what it bears by springs; null likewise.</summary>
    public double? FactorBySprings { get; init; }

    /// <summary>The least factor at which a corner of a seal bears nothing any more; null when none ever does.</summary>
    public double? FactorUnloading { get; init; }

    /// <summary>How firmly each loose piece is held; null in files of before.</summary>
    public ImmutableArray<PieceHoldEntry>? Pieces { get; init; }

    /// <summary>How deep each pass may go for the target to be reached; null in files of before.</summary>
    public ImmutableArray<PassLimitEntry>? Passes { get; init; }
}

/// <summary>How firmly a loose piece is held by the pods under it.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Factor">The holding factor; null when no force of the cutter moves it.</param>
/// <param name="FactorByPulls">The figure by pulls; null likewise.</param>
/// <param name="FactorBySprings">The figure by springs; null likewise.</param>
/// <param name="Weakest">Where it is held least; null when the factor is.</param>
public sealed record PieceHoldEntry(string Name, double? Factor, double? FactorByPulls, double? FactorBySprings, WeakestEntry? Weakest);

/// <summary>How deep a pass may go for the target to be reached.</summary>
/// <param name="Pass">The pass.</param>
/// <param name="DepthMm">The greatest depth reckoned with.</param>
/// <param name="MostDepthMm">The greatest depth at which the target is reached.</param>
/// <param name="IsThrough">Whether that is all the wood there is.</param>
/// <param name="FeedShare">The share of the feed at which the target is reached with the depth as it is; null where that is not asked for.</param>
public sealed record PassLimitEntry(string Pass, double DepthMm, double MostDepthMm, bool IsThrough, double? FeedShare);

/// <summary>Where a layout holds least.</summary>
/// <param name="OnPartMm">The place of the cutter, in the drawing's coordinates.</param>
/// <param name="HeightMm">Its height above the part's underside.</param>
/// <param name="ForceXN">The force on the part along the drawing's X.</param>
/// <param name="ForceYN">The force along the drawing's Y.</param>
/// <param name="ForceZN">The force upwards.</param>
/// <param name="Pass">The pass of the cutter.</param>
/// <param name="Mode">What the part does.</param>
/// <param name="FactorAtLeastForce">The factor there at the lower end of the force's band.</param>
public sealed record WeakestEntry(
    XyMm OnPartMm,
    double HeightMm,
    double ForceXN,
    double ForceYN,
    double ForceZN,
    string Pass,
    FailureMode Mode,
    double FactorAtLeastForce);

/// <summary>What one pod has to do with holding.</summary>
/// <param name="Pod">The pod's id.</param>
/// <param name="VacuumKPa">Gauge vacuum at it.</param>
/// <param name="PullN">Force with which the vacuum pulls the part down on it.</param>
/// <param name="BearsN">Force with which the part presses on it while the cutter is at the weakest place.</param>
/// <param name="FactorIfLost">The layout's factor when this pod loses its seal; null when no force of the cutter is enough.</param>
public sealed record PodHoldEntry(string Pod, double VacuumKPa, double PullN, double BearsN, double? FactorIfLost);

/// <summary>What one more pod would give.</summary>
/// <param name="Type">Its kind.</param>
/// <param name="Turned">Whether it stands turned by a quarter.</param>
/// <param name="ColumnFromDatum">The groove along its left edge, counted from 1.</param>
/// <param name="RowFromDatum">The groove along its lower edge, counted from 1.</param>
/// <param name="Factor">The factor with it; null when no force of the cutter is then enough.</param>
public sealed record OneMorePodEntry(string Type, bool Turned, int ColumnFromDatum, int RowFromDatum, double? Factor);

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
    ImmutableArray<string> Assumptions);

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

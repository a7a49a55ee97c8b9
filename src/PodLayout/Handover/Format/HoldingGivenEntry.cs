using System.Collections.Immutable;
using PodLayout.Shops;

namespace PodLayout.Handover.Format;

/// <summary>What the holding factor is worked out from.</summary>
/// <param name="Friction">Coefficient of friction between the pods' faces and the wood.</param>
/// <param name="DensityKgPerM3">Density of the wood.</param>
/// <param name="ShopLeastFactor">The shop's least factor, which the job may have changed.</param>
/// <param name="Vacuum">The vacuum and what is lost of it.</param>
/// <param name="Passes">The passes of the cutter.</param>
/// <param name="ForcesOnPart">
/// The forces of the cutter that can be the worst, each as [x, y, height, force along x, along y, upwards, pass, depth]: mm in the
/// drawing's coordinates, height above the underside; N; the number of the pass from 0; depth of the cut in mm, 0 where it is not
/// known. Files of before have no depth.
/// </param>
/// <param name="IsAssumed">Whether the job names no cut, so that all of this is assumed.</param>
/// <param name="Assumptions">What was assumed of the cutter.</param>
/// <param name="CutAway">Wood that cuts take out of the part; null for none, and in files of before it was kept.</param>
public sealed record HoldingGivenEntry(
    double Friction,
    double DensityKgPerM3,
    double ShopLeastFactor,
    VacuumEntry Vacuum,
    ImmutableArray<PassEntry> Passes,
    ImmutableArray<ImmutableArray<double>> ForcesOnPart,
    bool IsAssumed,
    ImmutableArray<string> Assumptions,
    ImmutableArray<CutAwayEntry>? CutAway = null)
{
    /// <summary>The same forces on each loose piece that pods hold, when the last layer beside it is cut; null in files of before.</summary>
    public ImmutableArray<PieceForcesEntry>? ForcesOnPieces { get; init; }
}

/// <summary>The forces of the cutter on a loose piece.</summary>
/// <param name="Piece">Its name.</param>
/// <param name="Forces">As in <see cref="HoldingGivenEntry.ForcesOnPart"/>.</param>
public sealed record PieceForcesEntry(string Piece, ImmutableArray<ImmutableArray<double>> Forces);

/// <summary>Wood that cuts take out of the part beside its outline and holes.</summary>
/// <param name="VolumeMm3">How much.</param>
/// <param name="CentroidMm">Where its middle lies, in the drawing's coordinates.</param>
/// <param name="IsGone">Whether it is gone before the part is laid down.</param>
public sealed record CutAwayEntry(double VolumeMm3, XyMm CentroidMm, bool IsGone);

/// <summary>A pass of the cutter.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="PeakN">The largest force, upper end of its band.</param>
/// <param name="LeastPeakN">The same at the lower end.</param>
public sealed record PassEntry(string Name, string Source, double PeakN, double LeastPeakN)
{
    /// <summary>Whether its forces follow from its feed.</summary>
    public bool FollowsFeed { get; init; }
}

/// <summary>The vacuum: either a gauge reading or a pump.</summary>
/// <param name="BarometerKPa">Air pressure, absolute.</param>
/// <param name="GaugeKPa">What the gauge reads; null where the pump is known.</param>
/// <param name="NominalM3PerHour">With a reading: flow of the pump at its inlet.</param>
/// <param name="Pump">The pump's curve, each point as [vacuum kPa, free air m³/h]; null where only a reading is known.</param>
/// <param name="PortBoreMm">Diameter of a port where it is narrowest; null for the port's diameter.</param>
/// <param name="HoleCoefficient">Share of the frictionless flow that a port lets through.</param>
/// <param name="Channels">The back channels.</param>
/// <param name="SealLPerMinPerM">Leak past a metre of seal at 80 kPa.</param>
/// <param name="WoodLPerMinPerM2">Leak through a square metre of wood at 80 kPa.</param>
/// <param name="Assumptions">What was assumed of the vacuum.</param>
public sealed record VacuumEntry(
    double BarometerKPa,
    double? GaugeKPa,
    double? NominalM3PerHour,
    ImmutableArray<ImmutableArray<double>>? Pump,
    double? PortBoreMm,
    double HoleCoefficient,
    ChannelsEntry Channels,
    double SealLPerMinPerM,
    double WoodLPerMinPerM2,
    ImmutableArray<string> Assumptions);

/// <summary>The back channels as ways for air.</summary>
/// <param name="WidthMm">Width.</param>
/// <param name="DepthMm">Depth.</param>
/// <param name="Wish">How they are laid.</param>
/// <param name="LengthMm">Length from a port to the table's vacuum; null where it follows from the zones.</param>
/// <param name="Zones">The table's zones with the extents of their own vacuum.</param>
public sealed record ChannelsEntry(
    double WidthMm, double DepthMm, ChannelWish Wish, double? LengthMm, ImmutableArray<VacuumZoneEntry> Zones);

/// <summary>A zone of the table.</summary>
/// <param name="Area">Its extent.</param>
/// <param name="Vacuum">The extent of its own vacuum grooves.</param>
public sealed record VacuumZoneEntry(BoxEntry Area, BoxEntry Vacuum);

using System.Collections.Immutable;

namespace PodLayout.Shops;

/// <summary>The vacuum that a shop has, and what it loses on the way to the pods.</summary>
/// <param name="BarometerKPa">Air pressure in the shop, kPa absolute.</param>
/// <param name="Source">Where the vacuum comes from.</param>
/// <param name="PortBoreMm">Diameter of a port's hole where it is narrowest; null for the port's diameter at the face.</param>
/// <param name="HoleCoefficient">Share of the frictionless flow that a port lets through.</param>
/// <param name="Channels">The back channels.</param>
/// <param name="Leak">What leaks in at each pod.</param>
/// <param name="Assumptions">What was assumed for want of a figure, one sentence each.</param>
public sealed record VacuumSupply(
    double BarometerKPa,
    VacuumSource Source,
    double? PortBoreMm,
    double HoleCoefficient,
    BackChannels Channels,
    PodLeak Leak,
    ImmutableArray<string> Assumptions)
{
    /// <summary>The reading that is assumed where the shop gives none, kPa: a modest one for a dry vane pump. Common practice, no source.</summary>
    public const double AssumedGaugeKPa = 70;

    /// <summary>The pump that is assumed behind a mere reading once a seal is lost, m³/h. Common practice, no source.</summary>
    public const double AssumedNominalM3PerHour = 100;

    /// <summary>How the assumption ends that is made where the shop gives no reading.</summary>
    public const string NoReading = "the shop gives no gauge reading and no pump.";

    /// <summary>Whether the reading is assumed, since the shop gives none and no pump.</summary>
    public bool IsReadingAssumed => Assumptions.Any(a => a.EndsWith(NoReading, StringComparison.Ordinal));

    /// <summary>Share of the frictionless flow through a short bored hole; from memory (0.6 sharp-edged and slow, 0.85 choked).</summary>
    public const double AssumedHoleCoefficient = 0.8;

    /// <summary>Past a metre of seal on a rough underside, litres of free air a minute at <see cref="PodLeak.AtKPa"/>.</summary>
    public double RoughSealLPerMinPerM { get; init; } = PodLeak.RoughLPerMinPerM;

    /// <summary>Where the shop says nothing.</summary>
    public static VacuumSupply Default { get; } = new(
        Air.StandardAtmosphere.SeaLevelKPa,
        new VacuumSource.Reading(AssumedGaugeKPa, AssumedNominalM3PerHour),
        null,
        AssumedHoleCoefficient,
        new(12.7, 4.7625, ChannelWish.Rows, [], null),
        PodLeak.Default,
        []);
}

using System.Collections.Immutable;

namespace PodLayout.Shops;

/// <summary>Where the vacuum comes from, as far as it is known.</summary>
public abstract record VacuumSource
{
    /// <summary>What the gauge at the board reads while a part is held.</summary>
    /// <param name="GaugeKPa">Vacuum below the air's pressure, kPa.</param>
    /// <param name="NominalM3PerHour">Flow of the pump at its inlet, m³/h; it matters only once a seal is lost.</param>
    public sealed record Reading(double GaugeKPa, double NominalM3PerHour) : VacuumSource;

    /// <summary>A pump by its flow.</summary>
    /// <param name="Curve">
    /// Flow of free air against vacuum at the shop's own air pressure: vacuum rising, flow falling, the last with no flow.
    /// </param>
    public sealed record Pump(ImmutableArray<FlowPoint> Curve) : VacuumSource;
}

/// <summary>A point of a pump's curve.</summary>
/// <param name="VacuumKPa">Vacuum below the air's pressure, kPa.</param>
/// <param name="FreeAirM3PerHour">Flow of free air, m³/h.</param>
public readonly record struct FlowPoint(double VacuumKPa, double FreeAirM3PerHour);

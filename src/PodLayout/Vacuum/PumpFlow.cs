using PodLayout.Air;
using PodLayout.Shops;

namespace PodLayout.Vacuum;

/// <summary>What a pump moves.</summary>
internal static class PumpFlow
{
    private const double SecondsPerHour = 3600;

    /// <summary>Mass flow at a pressure in front of it, kg/s; never falls as that pressure rises.</summary>
    public static double KgPerS(VacuumSource source, double airPa, double pumpPa) => source switch
    {
        VacuumSource.Pump pump => FreeAirM3PerHour(pump, (airPa - pumpPa) / 1000) / SecondsPerHour * GasFlow.FreeAirKgPerM3,
        // A pump of constant displacement that has its reading at no flow: the flow is that volume, less what it cannot keep out.
        VacuumSource.Reading reading => reading.NominalM3PerHour / SecondsPerHour * Math.Max(0, pumpPa - LowestPa(source, airPa))
            / (GasFlow.GasConstant * GasFlow.TemperatureK),
        _ => throw new ArgumentOutOfRangeException(nameof(source), source, "Unknown source."),
    };

    /// <summary>The lowest pressure there can be in front of it, Pa.</summary>
    public static double LowestPa(VacuumSource source, double airPa)
    {
        var vacuumKPa = source switch
        {
            VacuumSource.Pump pump => pump.Curve.IsDefaultOrEmpty ? 0 : pump.Curve[^1].VacuumKPa,
            VacuumSource.Reading reading => reading.GaugeKPa,
            _ => throw new ArgumentOutOfRangeException(nameof(source), source, "Unknown source."),
        };
        return Math.Clamp(airPa - vacuumKPa * 1000, 1, airPa);
    }

    /// <summary>The pressure in front of it at which it moves a flow, Pa; the air's where it cannot.</summary>
    public static double InFrontPa(VacuumSource source, double airPa, double kgPerS)
    {
        if (source is VacuumSource.Reading reading)
        {
            var pressure = kgPerS * SecondsPerHour / reading.NominalM3PerHour * GasFlow.GasConstant * GasFlow.TemperatureK;
            return Math.Min(airPa, LowestPa(source, airPa) + pressure);
        }

        var curve = ((VacuumSource.Pump)source).Curve;
        var free = kgPerS / GasFlow.FreeAirKgPerM3 * SecondsPerHour;
        for (var i = curve.Length - 1; i >= 0; i--)
        {
            if (curve[i].FreeAirM3PerHour < free)
            {
                continue;
            }

            if (i == curve.Length - 1)
            {
                return LowestPa(source, airPa);
            }

            var (a, b) = (curve[i], curve[i + 1]);
            var share = (a.FreeAirM3PerHour - free) / (a.FreeAirM3PerHour - b.FreeAirM3PerHour);
            return Math.Clamp(airPa - 1000 * (a.VacuumKPa + share * (b.VacuumKPa - a.VacuumKPa)), LowestPa(source, airPa), airPa);
        }

        return airPa;
    }

    private static double FreeAirM3PerHour(VacuumSource.Pump pump, double vacuumKPa)
    {
        var curve = pump.Curve;
        if (curve.IsDefaultOrEmpty || vacuumKPa >= curve[^1].VacuumKPa)
        {
            return 0;
        }

        var i = 0;
        while (curve[i].VacuumKPa < vacuumKPa)
        {
            i++;
        }

        if (i == 0)
        {
            return curve[0].FreeAirM3PerHour;
        }

        var (a, b) = (curve[i - 1], curve[i]);
        var share = (vacuumKPa - a.VacuumKPa) / (b.VacuumKPa - a.VacuumKPa);
        return a.FreeAirM3PerHour + share * (b.FreeAirM3PerHour - a.FreeAirM3PerHour);
    }
}

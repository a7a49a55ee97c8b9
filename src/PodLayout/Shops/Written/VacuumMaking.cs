using System.Collections.Immutable;
using PodLayout.Air;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.JsonFiles;

namespace PodLayout.Shops.Written;

/// <summary>From the written vacuum and holding rules to the checked ones.</summary>
internal static class VacuumMaking
{
    private const string Path = "$.vacuum";

    /// <summary>The shop with its vacuum.</summary>
    public static Outcome<Shop> Into(Shop shop, WrittenShop written, FileRefusals refusals)
    {
        var said = written.Vacuum ?? new();
        if (Holding(written.Holding, refusals, out var rules) is { } wrongRules)
        {
            return Outcome<Shop>.Refuse(wrongRules);
        }

        if (said is { AltitudeM: not null, BarometerKPa: not null })
        {
            return Outcome<Shop>.Refuse(Twice("barometerKPa", "altitudeM and barometerKPa", refusals));
        }

        var barometer = said.BarometerKPa ?? StandardAtmosphere.AtKPa(said.AltitudeM ?? 0);
        List<string> assumed = [];
        var (source, refusal) = Source(said, barometer, assumed, refusals);
        if (source is null)
        {
            return Outcome<Shop>.Refuse(refusal!);
        }

        if (written.Vacuum is null || (said.AltitudeM ?? said.BarometerKPa) is null)
        {
            assumed.Add($"Air pressure {JsonWords.Number(Math.Round(barometer, 1))} kPa: the shop at sea level.");
        }

        var channels = Channels(said.Channels, written.Making, assumed);
        return Outcome<Shop>.Of(shop with
        {
            Holding = rules,
            Vacuum = new(
                barometer, source, said.PortBoreMm ?? written.Making?.PortBore.DrillDiameterMm, said.HoleCoefficient, channels,
                new(said.SealLeakLPerMinPerM, PodLeak.Default.WoodLPerMinPerM2), [.. assumed])
            {
                RoughSealLPerMinPerM = Math.Max(said.SealLeakLPerMinPerM, said.RoughSealLeakLPerMinPerM),
            },
        });
    }

    private static Finding? Holding(WrittenHolding? written, FileRefusals refusals, out HoldingRules rules)
    {
        var usual = HoldingRules.Default;
        var least = written?.LeastFactor ?? Math.Min(usual.LeastFactor, written?.TargetFactor ?? usual.LeastFactor);
        var target = written?.TargetFactor ?? Math.Max(usual.TargetFactor, least);
        rules = new(target, least, written?.Friction ?? usual.Friction);
        return target >= least ? null : refusals.At(
            "factors-crossed", "$.holding.targetFactor", $"found {JsonWords.Number(target)}, less than leastFactor ({JsonWords.Number(least)}).",
            "Aim at no less than the least factor.");
    }

    private static (VacuumSource? Source, Finding? Refusal) Source(
        WrittenVacuum said, double barometer, List<string> assumed, FileRefusals refusals)
    {
        if (said is { GaugeKPa: not null, GaugeInHg: not null })
        {
            return (null, Twice("gaugeInHg", "gaugeKPa and gaugeInHg", refusals));
        }

        var gauge = said.GaugeKPa ?? said.GaugeInHg * PressureUnits.InHgKPa;
        var member = said.GaugeKPa is null ? "gaugeInHg" : "gaugeKPa";
        if (said.Pump is { } pump)
        {
            return gauge is not null || said.BehindGaugeM3PerHour is not null
                ? (null, Twice("pump", "a gauge reading and a pump", refusals)) : PumpMaking.From(pump, barometer, refusals);
        }

        if (gauge >= barometer)
        {
            return (null, refusals.At(
                "vacuum-above-barometer", $"{Path}.{member}",
                $"found {JsonWords.Number(Math.Round(gauge.Value, 2))} kPa of vacuum where the air's pressure is {JsonWords.Number(Math.Round(barometer, 2))} kPa.",
                "Correct the figure or its unit (a gauge in inches of mercury goes into gaugeInHg), or altitudeM or barometerKPa. A gauge that stands at zero in a full vacuum reads the pressure that is left: take its reading from the air's pressure."));
        }

        if (gauge is null)
        {
            gauge = VacuumSupply.AssumedGaugeKPa * barometer / StandardAtmosphere.SeaLevelKPa;
            assumed.Add($"Vacuum {JsonWords.Number(Math.Round(gauge.Value, 1))} kPa at the board ({JsonWords.Number(Math.Round(gauge.Value / PressureUnits.InHgKPa, 1))} inHg): {VacuumSupply.NoReading}");
        }

        return (new VacuumSource.Reading(gauge.Value, said.BehindGaugeM3PerHour ?? VacuumSupply.AssumedNominalM3PerHour), null);
    }

    private static BackChannels Channels(WrittenAirChannels? said, WrittenMaking? making, List<string> assumed)
    {
        ImmutableArray<VacuumZone> zones =
            [.. (making?.Table.Zones ?? []).Select(z => new VacuumZone(BoxOf(z.Area), BoxOf(z.VacuumExtent)))];
        if (said is not null)
        {
            return new(said.WidthMm, said.DepthMm, said.Layout, zones, said.LengthMm);
        }

        if (making is not null)
        {
            return new(making.Channels.WidthMm, making.Channels.DepthMm, making.Channels.Layout, zones, null);
        }

        assumed.Add("Back channels 1/2 in wide and 3/16 in deep, one for each row of ports, drawing at the board's middle.");
        return VacuumSupply.Default.Channels;
    }

    private static Box2 BoxOf(WrittenArea a) => new(a.MinXMm, a.MinYMm, a.MaxXMm, a.MaxYMm);

    private static Finding Twice(string member, string what, FileRefusals refusals) =>
        refusals.At("vacuum-twice", $"{Path}.{member}", $"found {what}; they say the same thing twice.", "Keep one of them.");
}

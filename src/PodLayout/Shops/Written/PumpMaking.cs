using System.Collections.Immutable;
using PodLayout.Air;
using PodLayout.Findings;
using PodLayout.JsonFiles;

namespace PodLayout.Shops.Written;

/// <summary>From a written pump to its curve at the shop's air pressure.</summary>
internal static class PumpMaking
{
    private const string Path = "$.vacuum.pump";

    // Cubic feet a minute in m3/h (NIST SP 811, appendix B.8).
    private const double CfmM3PerHour = 0.028316846592 * 60;

    /// <summary>The pump, or what is wrong with it.</summary>
    /// <remarks>
    /// Makers give figures at sea level. A pump that thins the air by a certain ratio reaches the same share of whatever the
    /// air's pressure is, and moves air that is thinner by the same share.
    /// </remarks>
    public static (VacuumSource? Source, Finding? Refusal) From(WrittenPump written, double barometerKPa, FileRefusals refusals)
    {
        var (curve, refusal) = AtSeaLevel(written, refusals);
        if (refusal is not null)
        {
            return (null, refusal);
        }

        var share = barometerKPa / StandardAtmosphere.SeaLevelKPa;
        return (new VacuumSource.Pump([.. curve.Select(p => new FlowPoint(p.VacuumKPa * share, p.FreeAirM3PerHour * share))]), null);
    }

    private static (ImmutableArray<FlowPoint> Curve, Finding? Refusal) AtSeaLevel(WrittenPump written, FileRefusals refusals)
    {
        if (written is { UltimateKPa: not null, UltimateInHg: not null } or { NominalM3PerHour: not null, NominalCfm: not null })
        {
            return Wrong("pump-unclear", Path, "found one figure in two units.", "Keep one of them.");
        }

        var ultimate = written.UltimateKPa ?? written.UltimateInHg * PressureUnits.InHgKPa;
        var nominal = written.NominalM3PerHour ?? written.NominalCfm * CfmM3PerHour;
        if (ultimate >= StandardAtmosphere.SeaLevelKPa)
        {
            return Wrong(
                "vacuum-above-barometer", Path + (written.UltimateKPa is null ? ".ultimateInHg" : ".ultimateKPa"),
                $"found {JsonWords.Number(Math.Round(ultimate.Value, 2))} kPa; the air's pressure at sea level is {JsonWords.Number(StandardAtmosphere.SeaLevelKPa)} kPa.",
                "Correct the figure or its unit. A pressure that is left at the inlet is to be taken from the air's pressure.");
        }

        if (written.Flow.IsEmpty == nominal is null || (nominal is not null && ultimate is null))
        {
            return Wrong(
                "pump-unclear", Path, "found neither a curve nor a nominal flow with an ultimate vacuum, or both.",
                "Give ultimateKPa and nominalM3PerHour, or flow.");
        }

        if (nominal is { } volume)
        {
            // A constant volume at the inlet, less what leaks back at the pressure that it cannot go below.
            var atNoVacuum = volume * ultimate!.Value / StandardAtmosphere.SeaLevelKPa;
            return ([new(0, atNoVacuum), new(ultimate.Value, 0)], null);
        }

        return FromPoints(written, ultimate, refusals);

        (ImmutableArray<FlowPoint>, Finding?) Wrong(string code, string path, string message, string remedy) =>
            ([], refusals.At(code, path, message, remedy));
    }

    private static (ImmutableArray<FlowPoint> Curve, Finding? Refusal) FromPoints(WrittenPump written, double? ultimate, FileRefusals refusals)
    {
        var curve = ImmutableArray.CreateBuilder<FlowPoint>();
        for (var i = 0; i < written.Flow.Length; i++)
        {
            var (point, path) = (written.Flow[i], JsonWords.Child(Path + ".flow", i));
            if (point.VacuumKPa is null == point.VacuumInHg is null || point.FlowM3PerHour is null == point.FlowCfm is null)
            {
                return ([], refusals.At(
                    "pump-unclear", path, "found a point without one vacuum and one flow.", "Give vacuumKPa or vacuumInHg, and flowM3PerHour or flowCfm."));
            }

            var vacuum = point.VacuumKPa ?? point.VacuumInHg!.Value * PressureUnits.InHgKPa;
            var flow = point.FlowM3PerHour ?? point.FlowCfm!.Value * CfmM3PerHour;
            if (vacuum >= StandardAtmosphere.SeaLevelKPa)
            {
                return ([], refusals.At(
                    "vacuum-above-barometer", path, $"found {JsonWords.Number(Math.Round(vacuum, 2))} kPa; the air's pressure at sea level is {JsonWords.Number(StandardAtmosphere.SeaLevelKPa)} kPa.",
                    "Correct the figure or its unit. A pressure that is left at the inlet is to be taken from the air's pressure."));
            }

            var free = written.FlowIs == WrittenFlowKind.AtInlet ? flow * (1 - vacuum / StandardAtmosphere.SeaLevelKPa) : flow;
            if (curve.Count > 0 && !(vacuum > curve[^1].VacuumKPa && free <= curve[^1].FreeAirM3PerHour))
            {
                return ([], refusals.At(
                    "pump-curve", path, "found a point with no more vacuum, or with more free air, than the one before it.",
                    "Order the points by rising vacuum; the flow of free air falls from one to the next."));
            }

            curve.Add(new(vacuum, free));
        }

        if (ultimate is { } last && last > curve[^1].VacuumKPa)
        {
            curve.Add(new(last, 0));
        }

        return curve[^1].VacuumKPa > 0 ? (curve.ToImmutable(), null) : ([], refusals.At(
            "pump-curve", Path + ".flow", "found a curve without any vacuum.", "Give at least one point with a vacuum above 0."));
    }
}

using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Air;
using PodLayout.Shops;

namespace PodLayout.Vacuum;

/// <summary>How much of the pump's vacuum is left at each pod.</summary>
/// <remarks>
/// A tree: pump, channels, ports, pods. Every way lets more air through the higher the pressure before it and the lower the one
/// behind it, so that each pressure is found by closing in on it from both sides, from the pods towards the pump, and a further
/// leak anywhere lowers no pressure anywhere.
/// </remarks>
public static class VacuumNetwork
{
    // Pressure at the pump is found to this, Pa.
    private const double PressureTolerancePa = 1e-5;

    // How often both ends are drawn in by what flows at the other, before the root is looked for between them.
    private const int StepsOfBoth = 3;

    private const int MostOnStack = 64;

    // What the tolerances of the pressures may add up to, kPa, with much room.
    private const double RoundingKPa = 1e-6;

    /// <summary>The vacuum at each pod of a layout.</summary>
    /// <param name="shop">The shop, with its pump.</param>
    /// <param name="pods">All pods that stand under the part.</param>
    /// <param name="lost">Index of a pod whose upper seal is lost; -1 for none.</param>
    public static VacuumReading At(Shop shop, ImmutableArray<PodOnPorts> pods, int lost = -1)
    {
        var (supply, airPa) = (shop.Vacuum, shop.Vacuum.BarometerKPa * 1000);
        var lines = ChannelLine.Of(shop, pods, lost);
        var pumpPa = AtPump(supply, lines, airPa, isWhole: lost < 0);
        var inside = new double[pods.Length];
        Array.Fill(inside, double.NaN);
        Span<double> atPorts = stackalloc double[MostOnStack];
        double flow = 0;
        foreach (var line in lines)
        {
            var at = line.Ports.Length <= MostOnStack ? atPorts[..line.Ports.Length] : new double[line.Ports.Length];
            flow += line.Flow(airPa, pumpPa, at);
            for (var i = 0; i < line.Ports.Length; i++)
            {
                // A pod whose ports lie on several channels has what the worst of them gives.
                var (pod, branch, _) = line.Ports[i];
                var pressure = branch.PressurePa(airPa, at[i]);
                inside[pod] = inside[pod] >= pressure ? inside[pod] : pressure;
            }
        }

        ImmutableArray<double> atPods = [.. inside.Select(p => double.IsNaN(p) ? 0 : (airPa - p) / 1000)];
        var litres = supply.Source is VacuumSource.Pump || lost >= 0 ? flow / GasFlow.FreeAirKgPerM3 * 60_000 : 0;
        return new(atPods, (airPa - pumpPa) / 1000, supply.BarometerKPa, litres, Assumptions(shop, lost));
    }

    /// <summary>
    /// The most vacuum that a pod of a type can have in any layout, kPa: never less than what <see cref="At"/> gives it, whatever
    /// else stands on the board. It is that of the pod with nothing lost on its way, and no more than what is left at the pump while
    /// the others are of the kind that leaks least, all at the far end of the longest channel: more air than they can only come in.
    /// </summary>
    /// <param name="shop">The shop, with its pump.</param>
    /// <param name="type">The kind of pod.</param>
    /// <param name="pods">How many pods stand under the part at least, this one counted.</param>
    public static double MostKPa(Shop shop, PodType type, int pods = 1)
    {
        var (supply, airPa) = (shop.Vacuum, shop.Vacuum.BarometerKPa * 1000);
        var lowest = PumpFlow.LowestPa(supply.Source, airPa);
        if (supply.Source is VacuumSource.Reading)
        {
            return (airPa - lowest) / 1000 + RoundingKPa;
        }

        // The pump moves at least what leaks in at the pod, at no less vacuum than the pod has: where it could not even do that
        // at the pod's vacuum, the pod has less.
        var leak = PodBranch.LeakOf(supply.Leak, type);
        var alone = Root.Rising(
            p => PumpFlow.KgPerS(supply.Source, airPa, p) - leak * (airPa * airPa - p * p), lowest, airPa, PressureTolerancePa);
        var among = AtPump(supply, [ChannelLine.FarOff(shop, type, pods)], airPa, isWhole: true);
        return (airPa - Math.Max(alone, among)) / 1000 + RoundingKPa;
    }

    // Pressure in front of the pump, Pa. A reading is what the gauge shows while all seals hold.
    private static double AtPump(VacuumSupply supply, ImmutableArray<ChannelLine> lines, double airPa, bool isWhole)
    {
        var lowest = PumpFlow.LowestPa(supply.Source, airPa);
        if (isWhole && supply.Source is VacuumSource.Reading)
        {
            return lowest;
        }

        // As in a channel: the most that can flow tells the highest pressure, and what flows there the lowest, and so on.
        double low = lowest, high = airPa;
        for (var step = 0; step < StepsOfBoth && high - low > PressureTolerancePa; step++)
        {
            high = Math.Min(high, PumpFlow.InFrontPa(supply.Source, airPa, Inflow(low)));
            low = Math.Max(low, PumpFlow.InFrontPa(supply.Source, airPa, Inflow(high)));
        }

        return high - low <= PressureTolerancePa ? (low + high) / 2 : Root.Rising(
            p => PumpFlow.KgPerS(supply.Source, airPa, p) - Inflow(p), low, high, PressureTolerancePa);

        double Inflow(double pumpPa)
        {
            double sum = 0;
            Span<double> atPorts = stackalloc double[MostOnStack];
            foreach (var line in lines)
            {
                sum += line.Flow(airPa, pumpPa, line.Ports.Length <= MostOnStack ? atPorts[..line.Ports.Length] : new double[line.Ports.Length]);
            }

            return sum;
        }
    }

    private static ImmutableArray<string> Assumptions(Shop shop, int lost)
    {
        var supply = shop.Vacuum;
        var said = supply.Assumptions;
        return lost < 0 || supply.Source is not VacuumSource.Reading reading ? said : said.Add(string.Create(
            CultureInfo.InvariantCulture,
            $"With a seal lost, the pump behind the gauge is taken to draw {reading.NominalM3PerHour:0.#} m3/h at its inlet."));
    }
}

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
    private const double PressureTolerancePa = 1e-6;

    // What the tolerances of the pressures may add up to, kPa, with much room.
    private const double RoundingKPa = 1e-6;

    /// <summary>The vacuum at each pod of a layout.</summary>
    /// <param name="shop">The shop, with its pump.</param>
    /// <param name="pods">All pods that stand under the part.</param>
    /// <param name="lost">Index of a pod whose upper seal is lost; -1 for none.</param>
    public static VacuumReading At(Shop shop, ImmutableArray<PodOnPorts> pods, int lost = -1)
    {
        var (supply, airPa) = (shop.Vacuum, shop.Vacuum.BarometerKPa * 1000);
        ImmutableArray<PodBranch> branches =
            [.. pods.Select((pod, i) => PodBranch.Of(supply, pod, shop.Board.PortDiameterMm, i == lost))];
        var groups = ChannelGroup.Of(shop, pods, branches);
        var pumpPa = AtPump(supply, groups, airPa, isWhole: lost < 0);
        var atPods = new double[pods.Length];
        double flow = 0;
        foreach (var group in groups)
        {
            var channelPa = group.PressurePa(airPa, pumpPa);
            flow += group.Inflow(airPa, channelPa);
            foreach (var pod in group.Pods)
            {
                atPods[pod] = (airPa - branches[pod].PressurePa(airPa, channelPa)) / 1000;
            }
        }

        var litres = supply.Source is VacuumSource.Pump || lost >= 0 ? flow / GasFlow.FreeAirKgPerM3 * 60_000 : 0;
        return new([.. atPods], (airPa - pumpPa) / 1000, supply.BarometerKPa, litres, Assumptions(shop, lost));
    }

    /// <summary>
    /// The most vacuum that a pod of a type can have in any layout, kPa: never less than what <see cref="At"/> gives it, whatever
    /// else stands on the board. It is that of the pod at the port with the shortest channel, with nothing lost in the port, while
    /// the others are of the kind that leaks least, all on the longest channel: more air than they can only come in.
    /// </summary>
    /// <param name="shop">The shop, with its pump.</param>
    /// <param name="type">The kind of pod.</param>
    /// <param name="pods">How many pods stand under the part at least, this one counted.</param>
    public static double MostKPa(Shop shop, PodType type, int pods = 1)
    {
        var ports = shop.Board.Ports.Where(p => p.State == PortState.Working).ToArray();
        if (ports.Length == 0)
        {
            return 0;
        }

        var (supply, airPa) = (shop.Vacuum, shop.Vacuum.BarometerKPa * 1000);
        var nearest = ports.Select(p => PortWay.Of(shop, p)).MinBy(w => w.LengthMm);
        PodBranch alone = new(PodBranch.LeakOf(supply.Leak, type), double.PositiveInfinity, false);
        ChannelGroup group = new(nearest.Channel(supply.Channels), [0], [(alone, 1)]);
        var longest = ports.Select(p => PortWay.Of(shop, p)).MaxBy(w => w.LengthMm);
        var tightest = shop.Pods.Where(p => p.Stock > 0).Select(p => PodBranch.LeakOf(supply.Leak, p)).DefaultIfEmpty(0).Min();
        var least = PodBranch.Of(supply, new(type, [ports[0]]), shop.Board.PortDiameterMm, isLost: false) with { LeakPerPa2 = tightest };
        ChannelGroup others = new(longest.Channel(supply.Channels), [], [(least, Math.Max(0, pods - 1))]);
        var pumpPa = AtPump(supply, [group, others], airPa, isWhole: true);
        return (airPa - group.PressurePa(airPa, pumpPa)) / 1000 + RoundingKPa;
    }

    // Pressure in front of the pump, Pa. A reading is what the gauge shows while all seals hold.
    private static double AtPump(VacuumSupply supply, ImmutableArray<ChannelGroup> groups, double airPa, bool isWhole)
    {
        var lowest = PumpFlow.LowestPa(supply.Source, airPa);
        if (isWhole && supply.Source is VacuumSource.Reading)
        {
            return lowest;
        }

        // As in a channel: the most that can flow tells the highest pressure, and what flows there the lowest.
        var high = PumpFlow.InFrontPa(supply.Source, airPa, Inflow(lowest));
        var low = PumpFlow.InFrontPa(supply.Source, airPa, Inflow(high));
        return high - low <= PressureTolerancePa ? (low + high) / 2 : Root.Rising(
            p => PumpFlow.KgPerS(supply.Source, airPa, p) - Inflow(p), low, high, PressureTolerancePa);

        double Inflow(double pumpPa)
        {
            double sum = 0;
            foreach (var group in groups)
            {
                sum += group.Inflow(airPa, group.PressurePa(airPa, pumpPa));
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

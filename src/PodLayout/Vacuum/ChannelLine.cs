using System.Collections.Immutable;
using PodLayout.Air;
using PodLayout.Shops;

namespace PodLayout.Vacuum;

/// <summary>Ports along one channel, the farthest from the table's vacuum first: each sends its air past all that lie nearer.</summary>
/// <param name="Ports">For each port its pod, its way for air, and the channel from it to the next nearer one.</param>
internal sealed record ChannelLine(ImmutableArray<(int Pod, PodBranch Branch, Channel ToNext)> Ports)
{
    // Pressures are found to this, Pa: a hundredth of a millionth of a kilopascal.
    private const double PressureTolerancePa = 1e-5;

    /// <summary>The lines of a layout.</summary>
    /// <param name="shop">The shop.</param>
    /// <param name="pods">The pods.</param>
    /// <param name="lost">Index of the pod whose seal is lost; -1 for none.</param>
    public static ImmutableArray<ChannelLine> Of(Shop shop, ImmutableArray<PodOnPorts> pods, int lost)
    {
        List<List<(int Pod, PodBranch Branch, PortWay Way)>> lines = [];
        for (var i = 0; i < pods.Length; i++)
        {
            var branch = PodBranch.Of(shop.Vacuum, pods[i], shop.Board.PortDiameterMm, i == lost);
            foreach (var port in pods[i].Ports)
            {
                var way = PortWay.Of(shop, port);
                var line = lines.Find(l => l[0].Way.Shares(way));
                if (line is null)
                {
                    lines.Add(line = []);
                }

                line.Add((i, branch, way));
            }
        }

        return [.. lines.Select(line => Sorted(shop.Vacuum.Channels, line))];
    }

    /// <summary>A line that lets in less air than any layout with so many pods: all at the far end of the longest channel there is.</summary>
    /// <param name="shop">The shop.</param>
    /// <param name="type">The kind of one of the pods; the others are of the kind in stock that leaks least.</param>
    /// <param name="pods">How many pods.</param>
    public static ChannelLine FarOff(Shop shop, PodType type, int pods)
    {
        var supply = shop.Vacuum;
        var working = shop.Board.Ports.Where(p => p.State == PortState.Working).ToArray();
        if (working.Length == 0)
        {
            return new([]);
        }

        var farthest = working.Max(p => PortWay.Of(shop, p).LengthMm);
        var own = PodBranch.Of(supply, new(type, [working[0]]), shop.Board.PortDiameterMm, isLost: false);
        var tightest = own with
        {
            LeakPerPa2 = shop.Pods.Where(p => p.Stock > 0).Append(type).Min(p => PodBranch.LeakOf(supply.Leak, p)),
        };
        var last = Math.Max(1, pods) - 1;
        return new([.. Enumerable.Range(0, last + 1).Select(i => (
            i, i == last ? own : tightest, new Channel(supply.Channels.WidthMm, supply.Channels.DepthMm, i == last ? farthest : 0)))]);
    }

    /// <summary>What flows out of the channel at its near end, and the pressure at each port.</summary>
    /// <param name="airPa">The air's pressure.</param>
    /// <param name="pumpPa">Pressure at the near end.</param>
    /// <param name="atPorts">The pressures at the ports, written here.</param>
    public double Flow(double airPa, double pumpPa, Span<double> atPorts)
    {
        // The inflow at the pump's pressure is the most there can be, and the pressures that drive it the highest; the inflow at
        // these the least. Leaks hardly change with the pressure, so that this often says it all.
        if (Ports.IsEmpty)
        {
            return 0;
        }

        atPorts.Fill(pumpPa);
        _ = Outward(airPa, pumpPa, atPorts);
        var high = atPorts[0];
        var flow = Outward(airPa, pumpPa, atPorts);
        if (high - atPorts[0] <= PressureTolerancePa)
        {
            return flow;
        }

        // The pressure at the far end tells all others, one after the other; the higher it is, the higher they are.
        var far = Root.Rising(
            x => Inward(airPa, x, []) - pumpPa, Math.Min(atPorts[0], airPa), Math.Min(high, airPa), PressureTolerancePa);
        _ = Inward(airPa, far, atPorts);
        double sum = 0;
        for (var i = 0; i < Ports.Length; i++)
        {
            sum += Ports[i].Branch.Flow(airPa, atPorts[i]);
        }

        return sum;
    }

    private static ChannelLine Sorted(BackChannels channels, List<(int Pod, PodBranch Branch, PortWay Way)> line)
    {
        var sorted = line.OrderByDescending(p => p.Way.LengthMm).ThenBy(p => p.Pod).ToArray();
        return new([.. sorted.Select((p, i) => (
            p.Pod, p.Branch,
            new Channel(channels.WidthMm, channels.DepthMm, p.Way.LengthMm - (i + 1 < sorted.Length ? sorted[i + 1].Way.LengthMm : 0))))]);
    }

    // From pressures at the ports to those that their inflow makes, from the near end outwards; the whole flow.
    private double Outward(double airPa, double pumpPa, Span<double> atPorts)
    {
        Span<double> inflow = stackalloc double[Ports.Length];
        double sum = 0;
        for (var i = 0; i < Ports.Length; i++)
        {
            sum += inflow[i] = Ports[i].Branch.Flow(airPa, Math.Min(airPa, atPorts[i]));
        }

        var (passing, behind) = (sum, pumpPa);
        for (var i = Ports.Length - 1; i >= 0; i--)
        {
            atPorts[i] = behind = GasFlow.BeforeChannel(Ports[i].ToNext, passing, behind);
            passing -= inflow[i];
        }

        return sum;
    }

    // From the pressure at the far end to that at the near one, Pa; 0 where so much would flow that none is left.
    private double Inward(double airPa, double farPa, Span<double> atPorts)
    {
        double passing = 0;
        var pressure = farPa;
        for (var i = 0; i < Ports.Length; i++)
        {
            if (!atPorts.IsEmpty)
            {
                atPorts[i] = pressure;
            }

            passing += Ports[i].Branch.Flow(airPa, pressure);
            pressure = GasFlow.BehindChannel(Ports[i].ToNext, passing, pressure);
        }

        return pressure;
    }
}

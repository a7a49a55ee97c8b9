using System.Collections.Immutable;
using PodLayout.Air;
using PodLayout.Shops;

namespace PodLayout.Vacuum;

/// <summary>Pods that draw their air through one channel.</summary>
/// <param name="Channel">The channel, as long as the farthest of their ports needs it.</param>
/// <param name="Pods">Indices of the pods.</param>
/// <param name="Branches">Their ways, alike ones counted together.</param>
internal sealed record ChannelGroup(Channel Channel, ImmutableArray<int> Pods, ImmutableArray<(PodBranch Branch, int Count)> Branches)
{
    // Pressures are found to this, Pa: a millionth of a kilopascal is far below what any gauge shows.
    private const double PressureTolerancePa = 1e-6;

    /// <summary>The groups of a layout. Pods without any open port are in none.</summary>
    /// <remarks>
    /// One channel serves all pods that share it, with the whole of their air on the whole of the longest way; channels that a
    /// pod with several ports joins count as one. Both give each pod less vacuum than it has, never more, and a pod that is added
    /// makes a group's channel no shorter: more pods never raise the vacuum anywhere.
    /// </remarks>
    public static ImmutableArray<ChannelGroup> Of(Shop shop, ImmutableArray<PodOnPorts> pods, ImmutableArray<PodBranch> branches)
    {
        var ways = pods.Select(p => p.Ports.Select(port => PortWay.Of(shop, port)).ToArray()).ToArray();
        var group = Enumerable.Range(0, pods.Length).ToArray();
        for (var i = 0; i < pods.Length; i++)
        {
            for (var j = 0; j < i; j++)
            {
                if (group[i] != group[j] && Array.Exists(ways[i], a => Array.Exists(ways[j], a.Shares)))
                {
                    var (from, to) = (group[i], group[j]);
                    for (var k = 0; k <= i; k++)
                    {
                        group[k] = group[k] == from ? to : group[k];
                    }
                }
            }
        }

        return
        [
            .. from i in Enumerable.Range(0, pods.Length)
               where ways[i].Length > 0
               group i by @group[i] into members
               let longest = members.SelectMany(i => ways[i]).MaxBy(w => w.LengthMm)
               select new ChannelGroup(
                   longest.Channel(shop.Vacuum.Channels),
                   [.. members],
                   [.. members.GroupBy(i => branches[i]).Select(alike => (alike.Key, alike.Count()))]),
        ];
    }

    /// <summary>Pressure in the channel under the pods, Pa, for a pressure at the pump.</summary>
    public double PressurePa(double airPa, double pumpPa)
    {
        if (pumpPa >= airPa)
        {
            return airPa;
        }

        // The inflow at the pump's pressure is the most there can be, and the pressure that drives it the highest; the inflow at
        // that pressure the least. Leaks hardly change with the pressure, so that this often says it all.
        var high = Math.Min(airPa, GasFlow.BeforeChannel(Channel, Inflow(airPa, pumpPa), pumpPa));
        var low = Math.Max(pumpPa, GasFlow.BeforeChannel(Channel, Inflow(airPa, high), pumpPa));
        return high - low <= PressureTolerancePa ? (low + high) / 2 : Root.Rising(
            p => GasFlow.ThroughChannel(Channel, p, pumpPa) - Inflow(airPa, p), low, high, PressureTolerancePa);
    }

    /// <summary>Air that the pods let in, kg/s, for a pressure in the channel.</summary>
    public double Inflow(double airPa, double channelPa)
    {
        double sum = 0;
        foreach (var (branch, count) in Branches)
        {
            sum += count * branch.Flow(airPa, channelPa);
        }

        return sum;
    }
}

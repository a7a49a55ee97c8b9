using System.Collections.Immutable;
using PodLayout.Air;
using PodLayout.BoardMaking;
using PodLayout.Geometry;
using PodLayout.Shops;

namespace PodLayout.Tests.BoardMaking;

public class ChannelNetworkTests
{
    private static readonly Box2 AtTheStart = new(-5, -5, 5, 5);

    [Fact]
    public void Flow_gathers_along_a_channel()
    {
        // Ports at 100, 200 and 300 mm: the first stretch carries three ports' flow, the second two, the third one.
        var network = Of([new(new(0, 0), new(300, 0))], [(100, 0), (200, 0), (300, 0)], 2, 99);
        Assert.Equal(6 * PerMm(100), network.WorstLossPa, 6);
        Assert.Equal("300", network.WorstPort!.Name);
        Assert.Equal(6, network.MostFlowLPerMin, 9);
    }

    [Fact]
    public void No_more_ports_flow_than_can_be_open_at_once() =>
        Assert.Equal((1 + 1 + 1) * PerMm(100), Of([new(new(0, 0), new(300, 0))], [(100, 0), (200, 0), (300, 0)], 2, 1).WorstLossPa, 6);

    [Fact]
    public void A_header_carries_the_flow_of_its_teeth()
    {
        // Header up X 0; teeth at Y 100 and 200 with a port at X 50 each.
        var network = Of(
            [new(new(0, 0), new(0, 200)), new(new(0, 100), new(50, 100)), new(new(0, 200), new(50, 200))], [(50, 100), (50, 200)], 2, 99);
        Assert.Equal(2 * PerMm(100) + PerMm(100) + PerMm(50), network.WorstLossPa, 6);
    }

    [Fact]
    public void A_tooth_over_the_vacuum_draws_on_it_by_itself()
    {
        // The second tooth begins over the table's grooves: the header carries the first one's flow only, and no way is longer than 50 mm.
        var network = Of([new(new(0, -50), new(0, 0)), new(new(0, -50), new(50, -50)), new(new(0, 0), new(50, 0))], [(50, -50), (50, 0)], 2, 99);
        Assert.Equal(2 * PerMm(50), network.WorstLossPa, 6);
        Assert.Equal(2, network.MostFlowLPerMin, 9);
    }

    [Fact]
    public void A_channel_off_the_vacuum_joins_nothing()
    {
        var network = Of([new(new(0, 0), new(100, 0)), new(new(0, 50), new(100, 50))], [(100, 0), (100, 50)], 2, 99);
        Assert.Equal([0], network.Joined.Select(p => p.Centre.Y));
        Assert.Equal([50], network.Unjoined.Select(p => p.Centre.Y));
    }

    private static double PerMm(double lengthMm) => DuctFlow.LossPa(12, 6, lengthMm, 2);

    private static ChannelNetwork Of(ImmutableArray<Run> runs, (double X, double Y)[] ports, double flow, int openAtOnce) => ChannelNetwork.Of(
        runs, [.. ports.Select(p => new Port($"{p.X}", new(p.X, p.Y), PortState.Working))], AtTheStart, 12, 6, flow, openAtOnce);
}

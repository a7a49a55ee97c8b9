using PodLayout.Air;

namespace PodLayout.Tests.Air;

public class GasFlowTests
{
    private const double AirPa = 101_325;

    // Tables of compressible flow for a ratio of specific heats of 1.4 (White, Fluid Mechanics; Anderson, Modern Compressible Flow).
    [Fact]
    public void Flow_through_a_hole_is_choked_below_the_critical_ratio()
    {
        Assert.Equal(0.528282, GasFlow.CriticalRatio, 1e-6);
        Assert.Equal(239.17, GasFlow.ThroughHolePerM2(AirPa, 0.5 * AirPa), 0.02);
        Assert.Equal(GasFlow.ThroughHolePerM2(AirPa, 0.5 * AirPa), GasFlow.ThroughHolePerM2(AirPa, 0));
        // In litres of free air a second through each square millimetre.
        Assert.Equal(0.1986, GasFlow.ThroughHolePerM2(AirPa, 0) * 1e-6 / GasFlow.FreeAirKgPerM3 * 1000, 0.0001);
    }

    // The share of the choked flow, from sqrt(2k/(k-1) (r^(2/k) - r^((k+1)/k))), computed beforehand.
    [Theory]
    [InlineData(0.95, 0.4493)]
    [InlineData(0.9, 0.6171)]
    [InlineData(0.8, 0.8188)]
    [InlineData(0.7, 0.9322)]
    [InlineData(0.6, 0.9886)]
    public void Above_the_critical_ratio_less_flows(double ratio, double share) =>
        Assert.Equal(share, GasFlow.ThroughHolePerM2(AirPa, ratio * AirPa) / GasFlow.ThroughHolePerM2(AirPa, 0), 0.0001);

    // Isothermal flow with Blasius friction, computed beforehand: a litre of free air a second through a metre of 6 x 12 mm is
    // Reynolds number 7380 and loses 2367 Pa into 20 kPa, 4153 Pa into 10 kPa.
    [Theory]
    [InlineData(20_000, 2367)]
    [InlineData(10_000, 4153)]
    public void A_thinned_stream_loses_more_in_the_same_channel(double outletPa, double lossPa)
    {
        Channel channel = new(12, 6, 1000);
        var flow = 1e-3 * GasFlow.FreeAirKgPerM3;
        Assert.Equal(lossPa, GasFlow.BeforeChannel(channel, flow, outletPa) - outletPa, 0.002 * lossPa);
        Assert.Equal(flow, GasFlow.ThroughChannel(channel, outletPa + lossPa, outletPa), 0.002 * flow);
    }

    [Fact]
    public void Slow_flow_near_the_air_s_pressure_is_that_of_the_plain_formula()
    {
        // 0.2 litres a second at the channel's pressure lose 24.47 Pa (see the duct's own test); the gas is that of 1 atm here.
        const double Flow = 0.2e-3;
        var kgPerS = Flow * AirPa / (GasFlow.GasConstant * GasFlow.TemperatureK);
        Assert.Equal(24.47, GasFlow.BeforeChannel(new Channel(12, 6, 1000), kgPerS, AirPa) - AirPa, 0.02);
    }

    [Fact]
    public void More_pressure_never_drives_less_through_a_channel_also_where_the_flow_turns_fast()
    {
        Channel channel = new(10, 4, 300);
        double before = 0;
        for (var pressure = 20_000.0; pressure < AirPa; pressure *= 1.003)
        {
            var flow = GasFlow.ThroughChannel(channel, pressure, 20_000);
            Assert.True(flow >= before);
            before = flow;
        }

        Assert.True(before > 3 * channel.MostSlowKgPerS, "the whole way from slow to fast was gone through");
    }
}

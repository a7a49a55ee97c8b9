using System.Collections.Immutable;
using FsCheck;
using FsCheck.Fluent;
using PodLayout.Air;
using PodLayout.Shops;
using PodLayout.Vacuum;

namespace PodLayout.Tests.Vacuum;

public class VacuumNetworkTests
{
    private const double AirKPa = 101.325;

    private static readonly Config Fixed = Config.QuickThrowOnFailure.WithReplay(20261125, 7, 0).WithMaxTest(200);

    private static readonly PodType Square = Shapes.Pod(120, 120) with { SealInsetAboveMm = 5 };

    private static readonly PodType Small = Shapes.Pod(60, 30) with { SealInsetAboveMm = 5, PortsNeeded = 2 };

    private static readonly GridBoard Board = Shapes.Board(1200, 600);

    [Fact]
    public void A_gauge_reading_reaches_tight_pods_whole()
    {
        var reading = VacuumNetwork.At(Shop(new VacuumSource.Reading(70, 100), new(0, 0)), Pods(0, 7, 23));
        Assert.All(reading.AtPodKPa, v => Assert.Equal(70, v, 1e-6));
        Assert.Equal((70.0, 0.0), (reading.GaugeKPa, reading.FlowLPerMin));
    }

    // One pod, one port, one channel: solved by hand for the flow that all three have in common, from the pod backwards.
    [Fact]
    public void One_pod_at_the_end_of_one_channel_has_what_the_textbook_formulas_leave_it()
    {
        PodLeak leak = new(200, 0);
        var shop = Shop(new VacuumSource.Reading(70, 100), leak);
        var port = Board.Ports.MaxBy(p => p.Centre.X)!;
        var kPa = VacuumNetwork.At(shop, [new(Square, [port])]).AtPodKPa[0];

        double inside = 1000 * (AirKPa - kPa), air = 1000 * AirKPa, reference = air - 80_000, pump = air - 70_000;
        var kgPerS = 200 / 60_000.0 * 1.2041 * 0.44 * (air * air - inside * inside) / (air * air - reference * reference);
        // Blasius friction in 12.7 x 4.7625 mm over the way to the board's middle.
        double area = 12.7 * 4.7625e-6, diameter = 2 * 12.7 * 4.7625 / (12.7 + 4.7625) / 1000, length = (port.Centre.X - 600) / 1000;
        var reynolds = kgPerS / area * diameter / 1.813e-5;
        Assert.True(reynolds > 2000);
        var channel = Math.Sqrt(pump * pump + 0.3164 / Math.Pow(reynolds, 0.25) * length / diameter * Math.Pow(kgPerS / area, 2) * 287.05 * 293.15);
        // Through the 8 mm port, of which 0.8 lets air through: air of one density, and the first term of what its thinning takes off.
        double hole = 0.8 * Math.PI / 4 * 64e-6, fall = inside - channel;
        var through = hole * Math.Sqrt(2 * fall * inside / (287.05 * 293.15) * (1 - 1.5 / 1.4 * fall / inside));
        Assert.Equal(1, through / kgPerS, 0.003);
        Assert.True(kPa < 69, "the losses are large enough to be seen");
    }

    [Fact]
    public void The_hemispheres_would_do_less_at_altitude()
    {
        // 85 % of the air's pressure on 100 cm2 holds 861.3 N at sea level and 718.7 N at 1500 m (computed from ISO 2533).
        foreach (var (height, newton) in new[] { (0.0, 861.3), (1500, 718.7) })
        {
            var air = StandardAtmosphere.AtGeopotentialKPa(height);
            var shop = Shop(new VacuumSource.Reading(0.85 * air, 100), new(0, 0), air);
            Assert.Equal(newton, VacuumNetwork.At(shop, Pods(3)).AtPodKPa[0] * 1000 * 0.01, 0.1);
        }
    }

    [Fact]
    public void A_lost_seal_draws_all_others_down_and_most_those_on_its_channel()
    {
        // Ports 0 to 9 are the lowest row.
        var shop = Shop(new VacuumSource.Reading(70, 100), PodLeak.Default);
        var pods = Pods(0, 2, 35);
        var (whole, lost) = (VacuumNetwork.At(shop, pods), VacuumNetwork.At(shop, pods, lost: 0));
        Assert.Equal(0, lost.AtPodKPa[0]);
        Assert.True(lost.AtPodKPa[2] < whole.AtPodKPa[2] - 5);
        Assert.True(lost.AtPodKPa[1] < lost.AtPodKPa[2] - 5);
        Assert.Contains(lost.Assumptions, a => a.Contains("100 m3/h", StringComparison.Ordinal));
    }

    [Fact]
    public void Air_is_neither_lost_nor_made_in_random_networks() => Prop.ForAll(Networks(), n =>
    {
        var reading = VacuumNetwork.At(n.Shop, n.Pods, n.Lost);
        double air = AirKPa * 1000, reference = air - 80_000, leaks = 0;
        for (var i = 0; i < n.Pods.Length; i++)
        {
            if (i == n.Lost)
            {
                continue;
            }

            var (type, inside) = (n.Pods[i].Type, air - reading.AtPodKPa[i] * 1000);
            double x = type.Footprint.ExtentXMm - 10, y = type.Footprint.ExtentYMm - 10;
            leaks += (n.Shop.Vacuum.Leak.SealLPerMinPerM * 2 * (x + y) / 1000 + n.Shop.Vacuum.Leak.WoodLPerMinPerM2 * x * y * 1e-6)
                * (air * air - inside * inside) / (air * air - reference * reference);
        }

        // The pump's own line from 60 m3/h without vacuum to none at 85 kPa.
        var pumped = 60 / 60.0 * 1000 * (1 - reading.GaugeKPa / 85);
        Assert.Equal(1, reading.FlowLPerMin / pumped, 1e-4);
        if (n.Lost < 0)
        {
            // Of a pod on two channels the worse is told, at which a little less leaks in.
            Assert.InRange(leaks / pumped, n.Pods.All(p => p.Ports.Length == 1) ? 1 - 1e-4 : 0.97, 1 + 1e-4);
        }
        else
        {
            Assert.True(leaks < pumped);
        }
    }).Check(Fixed);

    [Fact]
    public void A_further_pod_or_leak_never_raises_the_vacuum_anywhere_and_none_is_above_what_a_pod_can_have_alone() => Prop.ForAll(Networks(), n =>
    {
        var reading = VacuumNetwork.At(n.Shop, n.Pods, n.Lost);
        for (var i = 0; i < n.Pods.Length; i++)
        {
            // Also where it is known how many pods stand at least.
            Assert.InRange(reading.AtPodKPa[i], 0, VacuumNetwork.MostKPa(n.Shop, n.Pods[i].Type, n.Pods.Length));
            Assert.InRange(VacuumNetwork.MostKPa(n.Shop, n.Pods[i].Type, n.Pods.Length), 0, VacuumNetwork.MostKPa(n.Shop, n.Pods[i].Type));
        }

        var fewer = VacuumNetwork.At(n.Shop, n.Pods[..^1], n.Lost < n.Pods.Length - 1 ? n.Lost : -1);
        var leaky = VacuumNetwork.At(
            n.Shop with { Vacuum = n.Shop.Vacuum with { Leak = new(n.Shop.Vacuum.Leak.SealLPerMinPerM * 1.5 + 1, n.Shop.Vacuum.Leak.WoodLPerMinPerM2) } }, n.Pods, n.Lost);
        for (var i = 0; i < n.Pods.Length; i++)
        {
            Assert.True(i == n.Pods.Length - 1 || fewer.AtPodKPa[i] >= reading.AtPodKPa[i] - 1e-6);
            Assert.True(leaky.AtPodKPa[i] <= reading.AtPodKPa[i] + 1e-6);
        }
    }).Check(Fixed);

    [Fact]
    public void The_order_of_the_pods_does_not_matter()
    {
        var shop = Shop(new VacuumSource.Pump([new(0, 60), new(85, 0)]), new(30, 100));
        var pods = Pods(0, 2, 12, 35, 36);
        var (one, other) = (VacuumNetwork.At(shop, pods, 1).AtPodKPa, VacuumNetwork.At(shop, [.. pods.Reverse()], 3).AtPodKPa.Reverse().ToArray());
        Assert.All(Enumerable.Range(0, 5), i => Assert.Equal(one[i], other[i], 1e-6));
    }

    [Fact]
    public void A_pod_without_an_open_port_has_no_vacuum() =>
        Assert.Equal(0, VacuumNetwork.At(Shop(new VacuumSource.Reading(70, 100), PodLeak.Default), [new(Square, [])]).AtPodKPa[0]);

    private static Arbitrary<(Shop Shop, ImmutableArray<PodOnPorts> Pods, int Lost)> Networks() => Arb.From(
        from count in Gen.Choose(2, 14)
        from places in Gen.ArrayOf(Gen.Choose(0, Board.Ports.Length - 1), 2 * count)
        from isSmall in Gen.ArrayOf(Gen.Choose(0, 1), count)
        from seal in Gen.Choose(0, 300)
        from wood in Gen.Choose(1, 2000)
        from lost in Gen.Choose(-count, count - 1)
        from wish in Gen.Elements(ChannelWish.Rows, ChannelWish.Columns, ChannelWish.CombOfRows)
        let shop = Shop(new VacuumSource.Pump([new(0, 60), new(85, 0)]), new(seal, wood))
        let channels = shop.Vacuum.Channels with { Wish = wish }
        select (
            shop with { Vacuum = shop.Vacuum with { Channels = channels } },
            Enumerable.Range(0, count).Select(i => isSmall[i] == 1
                ? new PodOnPorts(Small, [Board.Ports[places[2 * i]], Board.Ports[places[2 * i + 1]]])
                : new PodOnPorts(Square, [Board.Ports[places[2 * i]]])).ToImmutableArray(),
            Math.Max(-1, lost)));

    private static ImmutableArray<PodOnPorts> Pods(params int[] ports) => [.. ports.Select(p => new PodOnPorts(Square, [Board.Ports[p]]))];

    private static Shop Shop(VacuumSource source, PodLeak leak, double airKPa = AirKPa) => new("test shop", Board, [Square, Small], 0)
    {
        Vacuum = VacuumSupply.Default with { Source = source, Leak = leak, BarometerKPa = airKPa },
    };
}

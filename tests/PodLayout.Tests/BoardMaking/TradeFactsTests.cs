using PodLayout.BoardMaking;
using PodLayout.Findings;

namespace PodLayout.Tests.BoardMaking;

// Figures of the trade: common practice, no source.
public class TradeFactsTests
{
    [Fact]
    public void The_board_of_the_trade_is_accepted_without_a_finding_and_overlaps_by_a_sixteenth_of_an_inch()
    {
        var made = Boards.Made(Boards.TradeFacts());
        Assert.True(made.Succeeded);
        Assert.Empty(made.Findings);

        // 7/8 in + 3/16 in - 1 in = 1/16 in.
        Assert.Equal(25.4 / 16, made.Value.OverlapMm, 12);
        Assert.Equal("1.5875 mm", made.Value.Checks.Single(c => c.What.StartsWith("overlap", StringComparison.Ordinal)).Value);
    }

    [Fact]
    public void With_channels_of_a_sixteenth_of_an_inch_the_ports_miss_them()
    {
        var shop = Boards.TradeFacts();
        shop["making"]!["channels"]!["depthIn"] = 0.0625;
        var finding = Boards.Refused(shop, "port-misses-channel");

        // 7/8 in + 1/16 in - 1 in = -1/16 in; to overlap by 1 mm the channel must be 1/8 in + 1 mm deep.
        Assert.Contains("-1.5875 mm", finding.Message, StringComparison.Ordinal);
        Assert.Contains("4.175 mm deep", finding.Remedy, StringComparison.Ordinal);
        Assert.Equal("shop.json $.making.channels.depthIn", finding.Place!.ToString());
    }

    [Fact]
    public void Each_seat_of_a_120_mm_pod_has_one_port()
    {
        var seats = Assert.Single(Boards.Good(Boards.TradeFacts()).Seats);

        // Usable 1140 x 570 mm: 38 and 19 pitches, so 35 x 16 places for a pod of four pitches.
        Assert.Equal((35 * 16, 0, 1, 1), (seats.Seats, seats.Dead, seats.FewestPorts, seats.MostPorts));
    }

    [Fact]
    public void Grooves_ports_and_pins_are_counted_and_measured()
    {
        var plan = Boards.Good(Boards.TradeFacts());
        var along = plan.Grooves.Where(g => g.Run.IsAlongX).ToList();
        var across = plan.Grooves.Where(g => !g.Run.IsAlongX).ToList();

        // Along X at Y 15, 45 .. 585; along Y at X 30 .. 1170: the lines at 0 and 1200 are the edges. Run-out: a groove's width.
        Assert.Equal((20, 39), (along.Count, across.Count));
        Assert.All(along, g => Assert.Equal(1200 + 2 * 6.35, g.Run.LengthMm, 9));
        Assert.All(across, g => Assert.Equal(600 + 2 * 6.35, g.Run.LengthMm, 9));
        Assert.Equal(9 * 5, plan.Board.Ports.Length);
    }

    [Fact]
    public void Across_the_grain_is_cut_before_along_it()
    {
        var sheet = ShopSheet.Write(Boards.Good(Boards.TradeFacts()));
        string[] order = ["pin holes, then perimeter", "GROOVE-ACROSS-GRAIN-6.35MM-DEEP-7.5", "GROOVE-ALONG-GRAIN-6.35MM-DEEP-7.5", "Turn the board over", "CHANNEL-12.7MM-DEEP-4.7625"];
        var places = order.Select(words => sheet.IndexOf(words, StringComparison.Ordinal)).ToArray();
        Assert.DoesNotContain(-1, places);
        Assert.Equal(places.Order(), places);
        Assert.DoesNotContain("safe", sheet, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void The_cord_is_the_length_of_the_gasket_groove_and_its_waste()
    {
        // Middle of the groove 28 + 4 mm inside the edge: 2 (1136 + 536) mm, and a tenth more.
        var sheet = ShopSheet.Write(Boards.Good(Boards.TradeFacts()));
        Assert.Contains("3.34 m in the grooves, 3.7 m with 10 % waste", sheet, StringComparison.Ordinal);
    }

    [Fact]
    public void A_better_port_offset_is_told_and_searched_for()
    {
        var shop = Boards.Sample("small");
        shop["board"]!["ports"]!["lattice"]!["firstMm"] = Boards.At(50, 50);
        shop["board"]!["ports"]!["lattice"]!["spacingMm"] = 100;
        var note = Boards.Made(shop).Findings.SingleOrDefault(f => f.Code == "port-offset");
        var dead = Boards.Good(shop).Seats.Sum(s => s.Dead);
        shop["making"]!["portBore"]!["offset"] = "search";
        var best = Boards.Good(shop);
        Assert.True(best.Seats.Sum(s => s.Dead) <= dead);
        Assert.Equal(note is null, best.Seats.Sum(s => s.Dead) == dead);
        Assert.True(note is null || note.Severity == Severity.Note);
    }
}

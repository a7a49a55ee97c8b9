using FsCheck;
using FsCheck.Fluent;
using PodLayout.BoardMaking;
using PodLayout.Geometry;
using PodLayout.Seats;
using PodLayout.Shops;

namespace PodLayout.Tests.BoardMaking;

public class SeatCountingTests
{
    private const double Pitch = 30;

    /// <summary>The seal's inner edge is half a groove inside the body's edge; the port is a point, with no margin.</summary>
    private const double HalfGroove = 3;

    // Common practice, no source: one port in each 120 mm square. Any offset whose ports lie between grooves will do.
    [Fact]
    public void Exactly_one_port_lies_under_each_seat_of_a_120_mm_pod_at_any_offset_off_the_grooves() => Prop.ForAll(
        OffGrooves().Two().ToArbitrary(),
        offset =>
        {
            var (fewest, most) = OverAllSeats(offset.Item1, offset.Item2);
            return fewest == 1 && most == 1;
        }).QuickCheckThrowOnFailure();

    [Fact]
    public void And_no_longer_the_moment_a_port_lies_on_a_groove_line() => Prop.ForAll(
        Gen.Choose(0, 3).Zip(OffGrooves()).ToArbitrary(),
        at =>
        {
            // On a line, the port is inside no seal that stands on that line: seats on either side of it are dead.
            var (fewest, _) = OverAllSeats(at.Item1 * Pitch, at.Item2);
            return fewest == 0;
        }).QuickCheckThrowOnFailure();

    [Fact]
    public void Counting_from_the_ports_agrees_with_asking_every_seat() => Prop.ForAll(
        (from x in Gen.Choose(0, 119)
         from y in Gen.Choose(0, 119)
         from width in Gen.Choose(1, 5)
         from length in Gen.Choose(1, 5)
         from turned in Gen.Elements(false, true)
         select (x, y, width, length, turned)).ToArbitrary(),
        c =>
        {
            var board = Board(c.x, c.y);
            var type = new PodType("pod", new PodFootprint.Rectangle(c.width * Pitch, c.length * Pitch), 0, HalfGroove, 50, true, 1, 1);
            var pose = new PodPose(0, type, c.turned, c.turned ? c.length : c.width, c.turned ? c.width : c.length);
            var standing = SeatCounting.Standing(pose, board);
            var under = SeatCounting.PortsUnder(pose, board, standing);
            return Enumerable.Range(0, under.GetLength(0)).All(i => Enumerable.Range(0, under.GetLength(1)).All(j =>
                under[i, j] == BoardSeats.FeedingPorts(pose, board, i, j).Length));
        }).QuickCheckThrowOnFailure();

    // Every offset in hundredths of a millimetre at least half a groove and a little more from each groove line.
    private static Gen<double> OffGrooves() =>
        from land in Gen.Choose(0, 3)
        from hundredths in Gen.Choose(301, 2699)
        select land * Pitch + hundredths / 100.0;

    // By plain counting: every seat on the board against every port.
    private static (int Fewest, int Most) OverAllSeats(double x, double y)
    {
        var board = Board(x, y);
        List<int> counts = [];
        for (var column = 0; column * Pitch + 120 <= board.WidthMm; column++)
        {
            for (var row = 0; row * Pitch + 120 <= board.LengthMm; row++)
            {
                counts.Add(board.Ports.Count(p =>
                    p.Centre.X >= column * Pitch + HalfGroove && p.Centre.X <= column * Pitch + 120 - HalfGroove
                    && p.Centre.Y >= row * Pitch + HalfGroove && p.Centre.Y <= row * Pitch + 120 - HalfGroove));
            }
        }

        // The product's count must say the same.
        PodPose pose = new(0, new("120", new PodFootprint.Rectangle(120, 120), 0, HalfGroove, 50, false, 1, 1), false, 4, 4);
        var count = SeatCounting.Of(pose, board, SeatCounting.Standing(pose, board), new Point2(120, 120));
        Assert.Equal((counts.Count, counts.Min(), counts.Max()), (count.Seats, count.FewestPorts, count.MostPorts));
        return (counts.Min(), counts.Max());
    }

    private static GridBoard Board(double x, double y)
    {
        var ports = from j in Enumerable.Range(0, 6) from i in Enumerable.Range(0, 9) select new Port($"{i}-{j}", new(x + 120 * i, y + 120 * j), PortState.Working);
        return new("board", 960, 600, Pitch, 2 * HalfGroove, 7, default, new(0, 0, 960, 600), [.. ports.Where(p => p.Centre.X <= 960 && p.Centre.Y <= 600)], 1e-9, 0, []);
    }
}

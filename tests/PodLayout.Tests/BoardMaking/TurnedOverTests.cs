using FsCheck;
using FsCheck.Fluent;
using PodLayout.BoardMaking;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Handover.Picture;

namespace PodLayout.Tests.BoardMaking;

public class TurnedOverTests
{
    [Fact]
    public void After_turning_over_pins_and_ports_of_the_back_coincide_with_those_of_the_front()
    {
        var count = 0;
        Prop.ForAll(RandomBoards.All(), shop =>
        {
            var made = Boards.Made(shop);
            if (!made.Succeeded)
            {
                // A layout that was asked for may not join all ports, and a small zone may get none; nothing else may go wrong.
                Assert.All(made.Findings.Where(f => f.Severity == Severity.Refused), f => Assert.True(f.Code is "port-not-joined" or "web-thin" or "zone-without-ports", f.ToString()));
                return true;
            }

            count++;
            var (front, back) = (MachineDrawing.Draw(made.Value, BoardSide.Front), MachineDrawing.Draw(made.Value, BoardSide.Back));
            var alongX = (string)shop["making"]!["flipAxis"]! == "alongX";
            foreach (var (layerFront, layerBack) in ((string, string)[])[("PIN-HOLE", "REFERENCE-PIN-HOLES"), ("PORT-DRILL", "REFERENCE-PORTS")])
            {
                var ours = Discs(front, layerFront);
                var theirs = Discs(back, layerBack);

                // Turned over by hand: about the middle of the piece, where the pins are set in pairs.
                var middles = made.Value.Pieces.Select(p => p.Outline).ToArray();
                var turned = ours.Select(p =>
                {
                    var box = middles.Single(m => m.Contains(p));
                    return alongX ? p with { Y = box.MinY + box.MaxY - p.Y } : p with { X = box.MinX + box.MaxX - p.X };
                });
                if (!SamePlaces(turned, theirs))
                {
                    return false;
                }
            }

            // And the holes come down on the pins again.
            return SamePlaces(Discs(front, "PIN-HOLE"), Discs(back, "REFERENCE-PIN-HOLES"));
        }).QuickCheckThrowOnFailure();
        Assert.True(count > 50, "Most random boards can be made, or the test shows little.");
    }

    [Fact]
    public void Every_port_lies_in_a_channel_that_reaches_the_vacuum_and_no_channel_leaves_its_zone() => Prop.ForAll(
        RandomBoards.All(),
        shop =>
        {
            var made = Boards.Made(shop);
            if (!made.Succeeded)
            {
                return true;
            }

            var plan = made.Value;
            var served = plan.Channels.SelectMany(c => c.Ports).ToList();
            return served.Count == plan.Board.Ports.Length
                && plan.Board.Ports.All(p => plan.Channels.Any(c => c.Runs.Any(r => r.DistanceTo(p.Centre) < 1e-6)))
                && plan.Channels.All(c => c.Runs.All(r => c.Part.Area.Grow(-plan.Request.ChannelWidthMm / 2 - 2).Contains(r.Box)))
                && plan.Channels.All(c => c.Runs.All(r => plan.Request.Pins.All(p =>
                    r.DistanceTo(p.At) >= plan.Request.ChannelWidthMm / 2 + p.HoleDiameterMm / 2 + 2 - 1e-9)))
                && plan.Channels.All(c => Flooded(c.Runs, c.Part.Zone.VacuumExtent) == c.Runs.Length);
        }).QuickCheckThrowOnFailure();

    // Plain flooding from the runs that lie over the vacuum to all that touch a flooded one.
    private static int Flooded(IReadOnlyList<Run> runs, Box2 vacuum)
    {
        var wet = runs.Where(r => r.Box.Touches(vacuum)).ToHashSet();
        while (runs.FirstOrDefault(r => !wet.Contains(r) && wet.Any(w => w.DistanceTo(r) < 1e-6)) is var next && next != default)
        {
            wet.Add(next);
        }

        return wet.Count;
    }

    private static List<Point2> Discs(Sheet sheet, string layer) =>
        [.. sheet.Layers.Single(l => l.Name.StartsWith(layer, StringComparison.Ordinal)).Primitives.OfType<Primitive.Disc>().Select(d => d.Centre)];

    private static bool SamePlaces(IEnumerable<Point2> a, List<Point2> b)
    {
        var left = a.ToList();
        return left.Count == b.Count && left.All(p => b.Any(q => (p - q).Length < 1e-6));
    }
}

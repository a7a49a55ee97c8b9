using PodLayout.Geometry;
using PodLayout.Support;

namespace PodLayout.Tests.Support;

/// <summary>Edges by direction against all of them one by one.</summary>
public class BlindFanTests
{
    [Fact]
    public void What_is_cut_is_what_some_edge_cuts()
    {
        var random = new Random(7);
        var (cut, clear) = (0, 0);
        for (var round = 0; round < 300; round++)
        {
            // In whole steps now and then, so that corners lie in line with lookout and target.
            double Place() => round % 2 == 0 ? random.Next(-20, 21) : 40 * random.NextDouble() - 20;
            Point2 at = new(Place(), Place());
            Blind[] all = [.. Enumerable.Range(0, 400).Select(_ => new Blind(new(Place(), Place()), new(Place(), Place())))];
            var size = 1 + random.Next(40);
            Blind[] blinds = [.. all.Where(b => b.A != b.B && b.FacesAwayFrom(at)).Take(size)];
            if (BlindFan.Of(at, [.. blinds]) is not { } fan)
            {
                continue;
            }

            for (var i = 0; i < 300; i++)
            {
                // Half of the targets in the direction of a corner.
                var corner = blinds[random.Next(blinds.Length)].A;
                Point2 target = i % 2 == 0 ? new(Place(), Place()) : at + (corner - at) * (3 * random.NextDouble());
                var expected = blinds.Any(b => b.Cuts(at, target));
                Assert.True(expected == fan.Cuts(at, target), $"Round {round}, target {i}: {expected}.");
                cut += expected ? 1 : 0;
                clear += expected ? 0 : 1;
            }
        }

        Assert.True(cut > 5000 && clear > 5000, $"{cut} cut, {clear} clear.");
    }
}

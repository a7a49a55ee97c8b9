using PodLayout.Geometry;

namespace PodLayout.Tests.Geometry;

/// <summary>What a disc sweeps along a line, against closed forms.</summary>
public class AlongPathTests
{
    [Theory]
    [InlineData(200, 6, 90, 1)]
    [InlineData(200, 6, 90, 3)]
    [InlineData(40, 6, 200, 2)]
    [InlineData(40, 30, 120, 0.5)]
    [InlineData(900, 8, 60, 0.3)]
    [InlineData(60, 10, 300, 5)]
    public void Along_an_arc_nothing_is_missing_and_the_area_is_that_of_the_sweep(double arcMm, double radiusMm, double turnDeg, double stepDeg)
    {
        // Guldin's rule: the width times the way of its middle, and half a disc at each end. Chords are shorter than their arc.
        var count = (int)Math.Round(turnDeg / stepDeg);
        Point2 At(double deg, double radius) => Turn.FromDegrees(deg).Apply(new(radius, 0));
        List<Point2> line = [.. Enumerable.Range(0, count + 1).Select(i => At(turnDeg * i / count, arcMm))];
        var half = turnDeg / count / 2 * Math.PI / 180;
        var area = Region.AlongPath(line, radiusMm);
        var length = 2 * arcMm * Math.Sin(half) * count;
        var exact = 2 * radiusMm * length + Math.PI * radiusMm * radiusMm;

        // At a joint between chords the outer side gains r2 tan(a) less the wedge of the disc; the inner side loses r2 tan(a).
        exact += (count - 1) * radiusMm * radiusMm * (half - Math.Tan(half));
        Assert.InRange(area.AreaMm2 / exact, 1, 1 + 1e-4);
        AllCovered(area, line, radiusMm);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    public void Along_a_line_that_bends_to_and_fro_nothing_is_missing_and_nothing_lies_farther_off(int seed)
    {
        // Turns of up to a twentieth and a few sharp ones, steps of half a millimetre to a few.
        var random = new Random(seed);
        var (at, deg) = (new Point2(0, 0), 0.0);
        List<Point2> line = [at];
        for (var i = 0; i < 200; i++)
        {
            deg += random.Next(12) == 0 ? random.NextDouble() * 80 - 40 : random.NextDouble() * 6 - 3;
            at += Turn.FromDegrees(deg).Apply(new(0.5 + 3 * random.NextDouble(), 0));
            line.Add(at);
        }

        foreach (var radiusMm in new[] { 0.5, 4, 12 })
        {
            var area = Region.AlongPath(line, radiusMm);
            AllCovered(area, line, radiusMm);

            // Every corner of the edge lies at the distance, or the hair beyond that chords outside an arc need.
            Assert.All(area.Boundary.SelectMany(r => r.Points), p => Assert.InRange(
                Enumerable.Range(1, line.Count - 1).Min(i => Off(line[i - 1], line[i], p)), radiusMm * (1 - 1e-9), radiusMm * 1.0004 + 0.0015));
        }
    }

    [Fact]
    public void Along_a_closed_line_it_is_a_ring()
    {
        List<Point2> line = [.. Enumerable.Range(0, 181).Select(i => Turn.FromDegrees(2 * (i % 180)).Apply(new(100, 0)))];
        var area = Region.AlongPath(line, 10);
        Assert.Equal(2, area.Boundary.Length);
        AllCovered(area, line, 10);

        // pi (110^2 - 90^2), a little less for the chords.
        Assert.InRange(area.AreaMm2 / (Math.PI * 4000), 1 - 2e-4, 1 + 1e-4);
    }

    private static void AllCovered(Region area, List<Point2> line, double radiusMm)
    {
        var index = new RegionIndex(area);
        for (var i = 1; i < line.Count; i++)
        {
            foreach (var share in new[] { 0.0, 0.3, 0.5, 0.9, 1 })
            {
                var middle = line[i - 1] + (line[i] - line[i - 1]) * share;
                Assert.All(Enumerable.Range(0, 72), k => Assert.True(index.Contains(middle + Turn.FromDegrees(5 * k + 1).Apply(new(radiusMm * (1 - 1e-9), 0)))));
                var way = (line[i] - line[i - 1]) * (radiusMm * (1 - 1e-9) / (line[i] - line[i - 1]).Length);
                Assert.True(index.Contains(middle + new Point2(-way.Y, way.X)) && index.Contains(middle - new Point2(-way.Y, way.X)));
            }
        }
    }

    private static double Off(Point2 a, Point2 b, Point2 p)
    {
        var way = b - a;
        var along = Math.Clamp((p - a).Dot(way) / way.Dot(way), 0, 1);
        return (p - (a + way * along)).Length;
    }
}

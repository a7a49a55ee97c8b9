using System.Text.Json;
using FsCheck;
using FsCheck.Fluent;
using PodLayout.Geometry;

namespace PodLayout.Tests.Geometry;

public class RegionTests
{
    private const double Allowed = 1e-5;

    [Fact]
    public void A_disc_eroded_by_a_square_leaves_what_geometry_says()
    {
        // Centres of a square of side 2a inside a disc of radius R: all four corners in the disc, so the common part of four
        // discs of radius R about (+-a, +-a). Its quarter: where (x+a)^2 + (y+a)^2 <= R^2, x, y >= 0.
        const double radius = 300, a = 45;
        var disc = Region.Inside(Shapes.Circle(0, 0, radius, 20000));
        var corner = Math.Sqrt(radius * radius - a * a);
        double Primitive(double x) => (x * Math.Sqrt(radius * radius - x * x) + radius * radius * Math.Asin(x / radius)) / 2;
        var quarter = Primitive(corner) - Primitive(a) - a * (corner - a);
        Assert.Equal(1, disc.ErodeByRectangle(2 * a, 2 * a).AreaMm2 / (4 * quarter), 1e-5);
    }

    [Fact]
    public void A_disc_shrunk_leaves_a_smaller_disc() =>
        Assert.Equal(
            1, Region.Inside(Shapes.Circle(0, 0, 300, 20000)).Shrink(120).AreaMm2 / (Math.PI * 180 * 180), 1e-5);

    [Fact]
    public void A_rectangle_eroded_by_a_rectangle_is_a_rectangle() =>
        Assert.Equal(
            (400 - 120) * (250 - 60), Region.Inside(Shapes.Rectangle(7, -3, 400, 250)).ErodeByRectangle(120, 60).AreaMm2, 6);

    [Fact]
    public void An_l_eroded_by_a_rectangle_is_an_l()
    {
        // Legs 140 and 100 wide; eroding by 40 x 30 takes half of it off every side.
        var l = Region.Inside(new Ring([new(0, 0), new(400, 0), new(400, 100), new(140, 100), new(140, 300), new(0, 300)]));
        Assert.Equal((400 - 40) * (100 - 30) + (140 - 40) * 200, l.ErodeByRectangle(40, 30).AreaMm2, 6);
    }

    [Theory]
    [InlineData(120)]
    [InlineData(150)]
    [InlineData(200)]
    public void A_narrow_ring_shrunk_nearly_away_is_a_thinner_ring(int sides)
    {
        // The engine gave up on a ring of radii 300 and 170 mm under round pods of 120 mm: the strips that put its arcs back
        // touch along their ends. What is left lies between radii 300 - 63 and 170 + 63 (of the polygons: a little less).
        var ring = Region.Inside(Shapes.Circle(0, 0, 300, sides), Shapes.Circle(0, 0, 170, sides)).Shrink(3).Shrink(60);
        var inner = 300 * Math.Cos(Math.PI / sides) - 63;
        Assert.InRange(ring.AreaMm2, Math.PI * (inner * inner - 233 * 233) * 0.98, Math.PI * (237 * 237 - 233 * 233));
    }

    [Fact]
    public void A_square_grown_has_rounded_corners()
    {
        var grown = Region.Inside(Shapes.Rectangle(0, 0, 100, 100)).Grow(20).AreaMm2;
        var exact = 100 * 100 + 4 * 100 * 20 + Math.PI * 20 * 20;
        Assert.InRange(grown, exact, exact * (1 + 1e-5));
    }

    [Theory]
    [InlineData("geos-areas.json")]
    [InlineData("clipper2-areas.json")]
    public void Areas_of_irregular_shapes_agree_with_an_independent_library(string file)
    {
        // Recorded by the scripts beside the files, which name library and version.
        using var recorded = JsonDocument.Parse(File.ReadAllText(Reference(file)));
        using var shapes = JsonDocument.Parse(File.ReadAllText(Reference("shapes.json")));
        Assert.Equal(10, shapes.RootElement.GetArrayLength());
        foreach (var shape in shapes.RootElement.EnumerateArray())
        {
            var region = Region.Inside(ToRing(shape.GetProperty("outline")), shape.GetProperty("holes").EnumerateArray().Select(ToRing));
            var areas = recorded.RootElement.GetProperty("areas").GetProperty(shape.GetProperty("name").GetString()!);
            Assert.Equal(1, region.ErodeByRectangle(90, 50).AreaMm2 / areas.GetProperty("rectangle").GetDouble(), Allowed);
            Assert.Equal(1, region.Shrink(35).AreaMm2 / areas.GetProperty("disc").GetDouble(), Allowed);
            Assert.Equal(1, region.Shrink(8).AreaMm2 / areas.GetProperty("shrunk").GetDouble(), Allowed);
        }
    }

    [Fact]
    public void A_centre_is_in_the_eroded_region_exactly_when_its_rectangle_is_in_the_shape() => Prop.ForAll(
        Gen.Choose(0, 1_000_000).ToArbitrary(),
        seed =>
        {
            var random = new Random(seed);
            var shape = RandomShape(random);
            double width = random.Next(20, 120), height = random.Next(20, 120);
            var index = new RegionIndex(Region.Inside(shape).ErodeByRectangle(width, height));
            for (var i = 0; i < 40; i++)
            {
                var centre = new Point2(random.NextDouble() * 600 - 300, random.NextDouble() * 600 - 300);
                var body = new Box2(centre.X - width / 2, centre.Y - height / 2, centre.X + width / 2, centre.Y + height / 2);
                var gap = Naive.SignedGap(shape, body);
                if (Math.Abs(gap) > 1e-6)
                {
                    Assert.Equal(gap > 0, index.Contains(centre));
                }
            }
        }).Check(Reproducible);

    [Fact]
    public void A_box_touches_a_region_exactly_when_one_of_its_points_is_inside_or_an_edge_crosses_it() => Prop.ForAll(
        Gen.Choose(0, 1_000_000).ToArbitrary(),
        seed =>
        {
            var random = new Random(seed);
            var shape = RandomShape(random);
            var index = new RegionIndex(Region.Inside(shape));
            for (var i = 0; i < 40; i++)
            {
                double x = random.NextDouble() * 700 - 350, y = random.NextDouble() * 700 - 350;
                var box = new Box2(x, y, x + random.NextDouble() * 40, y + random.NextDouble() * 40);
                // Independent: the box as a region of its own.
                var common = Region.Inside(shape).Intersect(Region.Inside(box)).AreaMm2;
                Assert.True(common < 1e-9 || index.Touches(box));
                Assert.True(common > 0 || !index.Touches(box.Grow(-1e-6)));
            }
        }).Check(Reproducible);

    private static Config Reproducible => Config.QuickThrowOnFailure.WithMaxTest(60).WithReplay(new Replay(new Rnd(20261125, 7), null));

    private static string Reference(string file) => Path.Combine(AppContext.BaseDirectory, "Geometry", "Reference", file);

    private static Ring ToRing(JsonElement points) =>
        new([.. points.EnumerateArray().Select(p => new Point2(p[0].GetDouble(), p[1].GetDouble()))]);

    private static Ring RandomShape(Random random) => Shapes.Wavy(
        200 + 100 * random.NextDouble(), 0.6 + 0.4 * random.NextDouble(),
        [(2, 0.25 * random.NextDouble(), 6 * random.NextDouble()), (3 + random.Next(4), 0.2 * random.NextDouble(), 6 * random.NextDouble())],
        40 + random.Next(200));

    [Fact]
    public void Regions_that_overlap_here_and_touch_along_a_line_there_have_their_overlap_in_common_and_no_more()
    {
        // The second reaches 2 x 2 into the first from above, and lies on its upper edge for 2 more.
        Region first = Region.Inside(Shapes.Rectangle(0, 0, 10, 10)), second = Region.Inside(new Ring([new(5, 8), new(7, 8), new(7, 10), new(9, 10), new(9, 12), new(5, 12)]));
        var common = first.Intersect(second);
        Assert.Equal(4, common.AreaMm2, 1e-9);
        // What comes of it can be worked with.
        Assert.Equal(3, common.Minus(Region.Inside(Shapes.Rectangle(6, 9, 5, 5))).AreaMm2, 1e-9);
        Assert.True(first.Intersect(Region.Inside(Shapes.Rectangle(10, 0, 5, 10))).IsEmpty);
    }
}

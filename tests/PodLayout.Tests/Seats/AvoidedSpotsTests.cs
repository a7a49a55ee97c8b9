using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Seats;
using PodLayout.Shops;
using PodLayout.Tests.Independent;
using PodLayout.Tests.Placing;

namespace PodLayout.Tests.Seats;

public class AvoidedSpotsTests
{
    [Fact]
    public void A_spot_takes_its_sum_with_the_body_from_the_seat_region()
    {
        // 600 x 400 less 3 mm and half a body on each side: 474 x 274. The spot of 50 x 40 mm takes 170 x 160 from its middle.
        var shape = new PartShape(Shapes.Rectangle(0, 0, 600, 400), [], []);
        var spotted = shape with { Avoided = [new("inlay", Shapes.Rectangle(275, 180, 50, 40))] };
        var pose = new PodPose(0, Shapes.Pod(120, 120), false, 4, 4);
        double Area(PartShape part) => SeatRegion.Of(ClearWood.Of(part, new Margins(3, 3)), pose, 0).Centres.AreaMm2;
        // The clearance's corners are chords on the side of more room: a few parts in a million.
        Assert.Equal(1, Area(shape) / (474.0 * 274), 5e-6);
        Assert.Equal(170.0 * 160, Area(shape) - Area(spotted), 1e-6);
    }

    [Fact]
    public void A_spot_turns_and_moves_with_the_part()
    {
        var shape = new PartShape(Shapes.Rectangle(0, 0, 600, 400), [], []) { Avoided = [new("inlay", Shapes.Rectangle(100, 50, 10, 20))] };
        var box = Assert.Single(shape.Laid(Turn.FromDegrees(90), new(1000, 0)).Avoided).Ring.Bounds;
        Assert.Equal(new Box2(1000 - 70, 100, 1000 - 50, 110), box);
    }

    [Fact]
    public void Planned_layouts_keep_clear_of_what_the_job_avoids()
    {
        var random = new Random(8);
        var found = 0;
        for (var i = 0; i < 8; i++)
        {
            var shape = new PartShape(Shapes.Wavy(230, 0.8, [(2, 0.1, random.NextDouble()), (3, 0.1, 2)], 60), [], [])
            {
                Avoided = [new("inlay", Shapes.Circle(80, 20, 15, 20)), new("socket", Shapes.Rectangle(-120, -60, 30, 12))],
            };
            var board = Shapes.Board(900, 900, 60);
            board = board with { Obstacles = [new("vice", ObstacleKind.Avoided, new ObstacleShape.Rectangle(new(430, 430, 470, 480)), 0)] };
            var job = Shapes.JobFor(
                shape, board, [Shapes.Pod(120, 120), Shapes.Pod(60, 60)], 80, placement: new PlacementWish.Given(new(430 + (40 * random.NextDouble()), 450), 20 * i));
            var result = PlannedLayoutsTests.Plan(job);
            if (result.Layout is not null)
            {
                found++;
                Assert.Empty(LayoutChecker.Check(result).Violations);
                Assert.True(PodLayout.Checking.LayoutCheck.Of(result).AllHold);
            }
        }

        Assert.InRange(found, 4, 8);
    }
}

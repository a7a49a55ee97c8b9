using System.Text;
using PodLayout.Findings;
using PodLayout.Jobs;
using PodLayout.Jobs.Written;
using PodLayout.Parts;
using PodLayout.Seats;
using PodLayout.Shops;
using PodLayout.Tests.Independent;

namespace PodLayout.Tests.Seats;

public class KeptPodsTests
{
    // Grooves every 30 mm from 15, ports every 120 mm from 60 in both directions, usable area 5 mm in; 6 mm seal insets.
    private static readonly GridBoard Board = HandMade.Board(900, 600) with
    {
        Obstacles = [new("pin", ObstacleKind.Pin, new ObstacleShape.Disc(new(700, 300), 20), 5)],
    };

    private static readonly Shop Shop = new(
        "bench shop", Board,
        [HandMade.Square with { Stock = 2 }, HandMade.Narrow, HandMade.Small, HandMade.Round with { HeightMm = 80, Stock = 3 }, HandMade.Narrow with { Name = "fixed", MayTurn = false }], 10);

    public static TheoryData<string, string, string> Wrong() => new()
    {
        { """{"pod":"120x12","column":1,"row":1}""", "kept-pod-unknown", "$.keep[0].pod" },
        { """{"pod":"fixed","turned":true,"column":1,"row":1}""", "kept-pod-turned", "$.keep[0].turned" },
        // The 27th groove is at 15 + 26 * 30 = 795: the body would end at 915.
        { """{"pod":"120x120","column":27,"row":1}""", "kept-pod-off-board", "$.keep[0].column" },
        { """{"pod":"120x120","column":1,"row":100000}""", "kept-pod-off-board", "$.keep[0].row" },
        // Groove 22 is at 645: the body covers 645 to 765, and 255 to 375 from groove 9.
        { """{"pod":"120x120","column":22,"row":9}""", "kept-pod-on-obstacle", "$.keep[0]" },
        // From (75, 75) to (135, 135): between the ports at 60 and 180.
        { """{"pod":"60x60","column":3,"row":3}""", "kept-pod-without-port", "$.keep[0]" },
        { """{"pod":"120x120","column":1,"row":1},{"pod":"120x120","column":4,"row":1}""", "kept-pods-overlap", "$.keep[1]" },
        // Side by side they touch; the gap is 10 mm.
        { """{"pod":"120x120","column":1,"row":1},{"pod":"120x120","column":5,"row":1}""", "kept-pods-overlap", "$.keep[1]" },
        { """{"pod":"120x120","column":1,"row":1},{"pod":"round 120","column":9,"row":1}""", "kept-heights-mixed", "$.keep[1].pod" },
        { """{"pod":"120x120","column":1,"row":1},{"pod":"120x120","column":9,"row":1},{"pod":"120x120","column":1,"row":9}""", "kept-pods-stock", "$.keep[2].pod" },
    };

    [Theory]
    [MemberData(nameof(Wrong))]
    public void A_pod_that_cannot_be_kept_is_refused_at_its_path(string keep, string code, string path)
    {
        var refusal = Job(keep).Refusal!;
        Assert.Equal(code, refusal.Code);
        Assert.Equal(new Place.InJson("job.json", path), refusal.Place);
        Assert.DoesNotContain('\n', refusal.ToString());
        Assert.False(string.IsNullOrWhiteSpace(refusal.Remedy));
    }

    [Fact]
    public void An_area_that_the_job_avoids_is_an_obstacle_of_its_board()
    {
        const string avoid = """, "avoid":[{"name":"vice","area":{"minXMm":0,"minYMm":0,"maxXMm":40,"maxYMm":40}}]""";
        Assert.Equal("kept-pod-on-obstacle", Job("""{"pod":"120x120","column":1,"row":1}""", avoid).Refusal!.Code);
        var job = Job("""{"pod":"120x120","column":5,"row":1}""", avoid).Value!;
        Assert.Equal((ObstacleKind.Avoided, "vice"), (job.Shop.Board.Obstacles[^1].Kind, job.Shop.Board.Obstacles[^1].Name));
    }

    [Fact]
    public void Kept_pods_stand_on_grooves_counted_from_one_fed_by_the_port_nearest_to_their_middle()
    {
        var kept = Assert.Single(Job("""{"pod":"120X60","turned":true,"column":2,"row":2}""").Value!.Keep);
        Assert.Equal(new KeptPod(HandMade.Narrow, true, 1, 1), kept);
        var pod = KeptPods.Placed(kept, Board);
        // From (45, 45), 60 wide and 120 high when turned; the port at (60, 60) is too near its edge? 60 - 45 = 15 - 6 - 6 = 3 mm.
        Assert.Equal((75, 105), (pod.Centre.X, pod.Centre.Y));
        Assert.Equal("1-1", Assert.Single(pod.OpenPorts).Name);
    }

    [Fact]
    public void A_square_pod_that_is_said_to_be_turned_is_not() =>
        Assert.False(Assert.Single(Job("""{"pod":"120x120","turned":true,"column":2,"row":2}""").Value!.Keep).Turned);

    private static Outcome<Job> Job(string keep, string more = "")
    {
        var json = $$"""{"version":1,"drawing":"part.dxf","thicknessMm":30,"keep":[{{keep}}]{{more}}}""";
        var request = JobReading.Read("job.json", Encoding.UTF8.GetBytes(json), []).Value!;
        var shape = new PartShape(HandMade.Rectangle(0, 0, 500, 300), [], []);
        return request.With(shape, Shop).Then(job => KeptPods.Check(job, request.File));
    }
}

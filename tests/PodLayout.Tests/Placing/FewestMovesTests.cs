using System.Collections.Immutable;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Shops;
using PodLayout.Tests.Independent;

namespace PodLayout.Tests.Placing;

public class FewestMovesTests
{
    private static readonly PodType[] Pods = [Shapes.Pod(120, 120), Shapes.Pod(120, 60, mayTurn: true), Shapes.Pod(60, 60)];

    [Fact]
    public void Pods_that_stand_at_another_place_of_the_board_are_used_where_they_stand()
    {
        var job = Shapes.JobFor(Shapes.UPart(), Shapes.Board(1500, 1200, 30), Pods, 60, 8);
        var first = PlannedLayoutsTests.Plan(job).Layout!;
        // The same setup three grooves to the right and two up: the part can be laid there just as well.
        var standing = Standing(first.Pods.Select(p => new StandingPod(p.Type.Name, p.Turned, p.Column + 3, p.Row + 2)), first);
        var again = PlannedLayoutsTests.Plan(job with { Standing = standing });
        Assert.Equal(first.Pods.Length, again.Layout!.Pods.Length);
        Assert.Equal(first.Pods.Length, standing.Staying(again.Layout.Pods).Length);
        Assert.Empty(LayoutChecker.Check(again).Violations);
    }

    [Fact]
    public void A_pod_is_never_added_to_save_a_move()
    {
        var job = Shapes.JobFor(Shapes.UPart(), Shapes.Board(1500, 1200, 30), Pods, 60, 8);
        var first = PlannedLayoutsTests.Plan(job).Layout!;
        // Two of the pods stand as they should; the others stand in a corner of the board.
        var standing = Standing(first.Pods.Select((p, i) => new StandingPod(
            p.Type.Name, p.Turned, i < 2 ? p.Column : 0, i < 2 ? p.Row : 0)), first);
        var again = PlannedLayoutsTests.Plan(job with { Standing = standing });
        Assert.Equal(first.Pods.Length, again.Layout!.Pods.Length);
        Assert.InRange(standing.Staying(again.Layout.Pods).Length, 2, first.Pods.Length);
        Assert.Empty(LayoutChecker.Check(again).Violations);
    }

    private static StandingLayout Standing(IEnumerable<StandingPod> pods, Layout layout) =>
        new(pods.ToImmutableArray(), layout.Placement);
}

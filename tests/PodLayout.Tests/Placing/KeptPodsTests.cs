using PodLayout.Jobs;
using PodLayout.Tests.Independent;

namespace PodLayout.Tests.Placing;

public class KeptPodsTests
{
    [Fact]
    public void A_pod_to_keep_stands_in_the_layout_where_it_was_asked_for()
    {
        var pods = new[] { Shapes.Pod(120, 120), Shapes.Pod(120, 60, mayTurn: true), Shapes.Pod(60, 60) };
        var job = Shapes.JobFor(Shapes.UPart(), Shapes.Board(1500, 1200, 30), pods, 60, 8);
        var free = PlannedLayoutsTests.Plan(job).Layout!;
        var kept = new KeptPod(job.Shop.Pods[1], true, free.Pods[0].Column + 5, free.Pods[0].Row + 1);
        var result = PlannedLayoutsTests.Plan(job with { Keep = [kept] });
        Assert.NotNull(result.Layout);
        Assert.Contains(result.Layout.Pods, p => (p.Type, p.Turned, p.Column, p.Row) == (kept.Type, kept.Turned, kept.Column, kept.Row));
        Assert.InRange(result.Layout.Pods.Length, free.Pods.Length, free.Pods.Length + 1);
        Assert.Equal(result.Layout.Pods.Length, result.Layout.Proof.FewestPodsPossible);
        Assert.Empty(LayoutChecker.Check(result).Violations);
    }

    [Fact]
    public void A_pod_to_keep_that_cannot_stand_under_the_part_is_named()
    {
        var job = Shapes.JobFor(Shapes.UPart(), Shapes.Board(1500, 1200, 30), [Shapes.Pod(120, 120), Shapes.Pod(60, 60)], 60, 8);
        var placement = PlannedLayoutsTests.Plan(job).Layout!.Placement;
        job = job with { Placement = new PlacementWish.Given(placement.ZeroOnBoard, placement.AngleDeg) };
        Assert.NotNull(PlannedLayoutsTests.Plan(job).Layout);
        var result = PlannedLayoutsTests.Plan(job with { Keep = [new(job.Shop.Pods[0], false, 1, 2)] });
        Assert.Null(result.Layout);
        Assert.Contains("column 2, row 3", result.Findings[^1].Message);
    }
}

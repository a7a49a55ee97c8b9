using PodLayout.Geometry;
using PodLayout.Holding;
using PodLayout.Parts;

namespace PodLayout.Tests.Holding;

/// <summary>How deep a pass may go, against statics by hand.</summary>
public class PassDepthsTests
{
    private const double Pull = 4 * 0.12 * 0.12 * 80_000;

    [Theory]
    [InlineData(100, 10, 2)]
    [InlineData(200, 10, 2)]
    [InlineData(400, 8, 2)]
    [InlineData(1500, 6, 1.7)]
    public void A_push_through_the_middle_that_only_slides_may_grow_to_mu_times_the_pull_over_the_target(double pushN, double depthMm, double target)
    {
        // Force proportional to depth: F d'/d = mu N / target. Four pods far apart and a thin part: no height tips it, and none makes it
        // slide sooner, since what is pressed less on one side is pressed more on the other.
        var report = Report(pushN, depthMm, target);
        var expected = Math.Min(40, depthMm * 0.4 * Pull / target / pushN);
        var limit = Assert.Single(report.Passes);
        Assert.Equal(depthMm, limit.DepthMm);
        // Told to half a millimetre, below 3 mm to a tenth, rounded down; the corners of the pods bear a little less evenly.
        Assert.InRange(limit.MostDepthMm, 0.93 * expected - 0.5, expected + 1e-9);
        Assert.Equal(expected >= 40, limit.IsThrough);
    }

    [Fact]
    public void At_the_depth_that_is_told_the_target_is_reached_and_a_millimetre_deeper_it_is_not()
    {
        var depth = Assert.Single(Report(1500, 10, 2).Passes).MostDepthMm;
        Assert.InRange(depth, 1, 9.9);
        Assert.True(Report(1500 * depth / 10, depth, 2).Factor >= 1.998);
        Assert.True(Report(1500 * (depth + 1) / 10, depth + 1, 2).Factor < 2);
    }

    [Fact]
    public void Where_the_depth_is_too_much_the_share_of_the_feed_that_would_do_is_told()
    {
        // Force as the power 0.7 of the feed (1 less Kienzle's exponent of 0.3, from memory): (factor / target)^(1/0.7).
        var report = Report(1500, 10, 2);
        var expected = Math.Pow(report.Factor / 2, 1 / 0.7);
        Assert.InRange(Assert.Single(report.Passes).FeedShare!.Value, expected - 0.02, expected + 1e-9);
        Assert.Null(Assert.Single(Report(100, 10, 2).Passes).FeedShare);
    }

    // A plate of 400 x 400 x 40 mm on four pods in its corners, pushed along X in its middle from the top down.
    private static HoldingReport Report(double pushN, double depthMm, double target)
    {
        var outline = new Ring([new(0, 0), new(400, 0), new(400, 400), new(0, 400)]);
        var loads = new CutterLoads(
            [new PathLoad(new(200, 200), 40 - depthMm / 2, [new Force(pushN, 0, 0)], 0) { DepthMm = depthMm }],
            [new("slot", "test", pushN, pushN) { FollowsFeed = true }], []);
        var (job, layout) = PodLayout.Tests.Layouts.HeldLayoutTests.OnFourPods(new PartShape(outline, [], []), loads, 40, target);
        return PodLayout.Layouts.HeldLayout.Report(job, layout, 1)!;
    }
}

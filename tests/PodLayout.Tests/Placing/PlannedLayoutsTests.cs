using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Handover;
using PodLayout.Jobs;
using PodLayout.Jobs.Written;
using PodLayout.Layouts;
using PodLayout.Parts;
using PodLayout.Reading;
using PodLayout.Shops;
using PodLayout.Shops.Written;
using PodLayout.Tests.Independent;

namespace PodLayout.Tests.Placing;

/// <summary>Every layout that the planner hands over keeps every rule, as an independent checker sees it.</summary>
public class PlannedLayoutsTests
{
    [Theory]
    [InlineData("kidney-table")]
    [InlineData("u-yoke")]
    [InlineData("crest-rail")]
    [InlineData("chair-seat")]
    public void A_layout_of_a_sample_keeps_every_rule(string sample)
    {
        var result = Plan(SampleJob(sample));
        AssertKeepsRules(result);
        Assert.Equal(result.Layout!.Pods.Length, result.Layout.Proof.FewestPodsPossible);
    }

    [Fact]
    public void The_layout_of_the_oval_top_at_one_placement_keeps_every_rule_and_is_proven()
    {
        var job = Oval(new PlacementWish.Given(new(780, 400), 0));
        var result = Plan(job);
        AssertKeepsRules(result);
        Assert.Equal(result.Layout!.Pods.Length, result.Layout.Proof.FewestPodsPossible);
        Assert.Equal(ProofScope.ThisPlacement, result.Layout.Proof.Scope);
    }

    [Fact]
    public void Over_all_offsets_the_oval_top_needs_seventeen_and_the_u_part_seven()
    {
        // The numbers of an independent prototype in another language.
        var oval = Plan(Oval(new PlacementWish.Search([0])));
        AssertKeepsRules(oval);
        Assert.Equal((17, 17), (oval.Layout!.Pods.Length, oval.Layout.Proof.FewestPodsPossible));
        var u = Plan(Shapes.JobFor(
            Shapes.UPart(), Shapes.Board(1500, 1200), [Shapes.Pod(120, 120), Shapes.Pod(120, 60, true), Shapes.Pod(60, 60)], 60, 8));
        AssertKeepsRules(u);
        Assert.Equal((7, 7), (u.Layout!.Pods.Length, u.Layout.Proof.FewestPodsPossible));
    }

    [Fact]
    public void Layouts_of_random_parts_in_random_shops_keep_every_rule()
    {
        var random = new Random(20261125);
        var found = 0;
        for (var i = 0; i < 60; i++)
        {
            var result = Plan(RandomJob(random, i));
            if (result.Layout is null)
            {
                Assert.NotEmpty(result.Findings);
                continue;
            }

            found++;
            AssertKeepsRules(result, $"case {i}");
        }

        Assert.InRange(found, 25, 60);
    }

    [Theory]
    [InlineData("u-yoke")]
    [InlineData("chair-seat")]
    public void The_same_job_gives_the_same_bytes_on_any_number_of_threads_and_every_time(string sample)
    {
        var job = SampleJob(sample);
        var one = Plan(job, threads: 1);
        var first = LayoutJson.Write(one);
        Assert.InRange(one.Work.Rows, 1, one.Work.Pairs);
        foreach (var threads in new[] { 2, 3, 2, 2, 1, 2, 2, 2, 2, 2 })
        {
            var again = Plan(job, threads);
            Assert.Equal(first, LayoutJson.Write(again));
            Assert.Equal(one.Work, again.Work);
        }
    }

    [Fact]
    public void Over_an_interval_of_angles_a_slanted_strip_is_found_and_proven()
    {
        // A strip 130 mm wide, drawn at 20 degrees: pods of 120 mm fit under it only within half a degree or so of straight.
        var turn = Turn.FromDegrees(20);
        var strip = Shapes.Rectangle(0, 0, 480, 130).Laid(turn, new(10, 20));
        var job = Shapes.JobFor(
            new(strip, [], []), Shapes.Board(1200, 900), [Shapes.Pod(120, 120)], 70, placement: new PlacementWish.SearchInterval(-40, 10));
        var result = Plan(job);
        AssertKeepsRules(result);
        // 480 mm with 70 mm over at most: two pods reach 2 x 120 + 4 x 70 = 520 mm less what the corners take.
        Assert.Equal((2, 2), (result.Layout!.Pods.Length, result.Layout.Proof.FewestPodsPossible));
        Assert.InRange(result.Layout.Placement.AngleDeg, -21.5, -18.5);
        Assert.Equal(ProofScope.AllOffsetsAndAngles, result.Layout.Proof.Scope);
    }

    [Fact]
    public void Work_that_is_cut_short_gives_the_best_so_far_and_a_bound_below_it()
    {
        var job = Oval(new PlacementWish.SearchInterval(0, 90));
        using var stop = new CancellationTokenSource();
        var rounds = 0;
        var progress = new Told(p =>
        {
            if (p.PodsOfBest is not null && ++rounds == 3)
            {
                stop.Cancel();
            }
        });
        var result = Planning.Plan(job, new Effort(2, null), progress, stop.Token);
        Assert.True(result.Interrupted);
        AssertKeepsRules(result);
        Assert.InRange(result.Layout!.Proof.FewestPodsPossible, 0, result.Layout.Pods.Length - 1);
    }

    [Fact]
    public void When_pods_are_too_few_the_stock_is_named_as_the_cause()
    {
        // The U part needs seven pods.
        var job = Shapes.JobFor(
            Shapes.UPart(), Shapes.Board(1500, 1200, 30), [Shapes.Pod(120, 120, stock: 2), Shapes.Pod(60, 60, stock: 1)], 60, 8);
        var result = Plan(job with { Support = job.Support with { MustSupportAll = true } });
        Assert.Null(result.Layout);
        Assert.Contains(result.Findings, f => f.Code == "stock-too-small");
        Assert.Contains("120x120 (in stock: 2)", result.Findings[^1].Message);

        // Else the three go where they support most, and the rest is told.
        var partial = Plan(job);
        AssertKeepsRules(partial);
        Assert.Equal(3, partial.Layout!.Pods.Length);
        Assert.Contains(partial.Unsupported, s => s.Cause.Contains("more in stock would do", StringComparison.Ordinal));
    }

    [Fact]
    public void A_part_drawn_in_the_wrong_unit_is_told_to_be_larger_than_the_board_at_once()
    {
        // 400 x 300 mm taken for inches: ten metres.
        var job = Shapes.JobFor(
            new(Shapes.Rectangle(0, 0, 400 * 25.4, 300 * 25.4), [], []), Shapes.Board(1500, 1200), [Shapes.Pod(120, 120)], 60,
            interiorSpanMm: 200);
        var result = Plan(job);
        Assert.Equal("part-larger-than-board", Assert.Single(result.Findings).Code);
        Assert.Contains("10160 x 7620 mm", result.Findings[0].Message);
    }

    private sealed class Told(Action<Progress> told) : IProgress<Progress>
    {
        public void Report(Progress value) => told(value);
    }

    internal static PlanResult Plan(Job job, int threads = 2) =>
        Planning.Plan(job, new Effort(threads, null), null, TestContext.Current.CancellationToken);

    internal static Job SampleJob(string sample)
    {
        var folder = Path.Combine(Repository.Root, "samples", sample);
        var path = Path.Combine(folder, "job.json");
        var request = JobReading.Read(path, File.ReadAllBytes(path), []).Value!;
        var shop = ShopReading.Read("shop.json", File.ReadAllBytes(Path.Combine(folder, request.ShopPath!))).Value!;
        var drawing = DrawingReader.Read("part.dxf", File.ReadAllBytes(Path.Combine(folder, request.DrawingPath)), request.Reading).Value!;
        return request.With(PartShaping.From(drawing, request.Layers).Value!, shop).Value!;
    }

    internal static Job Oval(PlacementWish placement) => Shapes.JobFor(
        Shapes.OvalTop(), Shapes.Board(1600, 1000), [Shapes.Pod(120, 120), Shapes.Pod(120, 60, true), Shapes.Pod(60, 60)], 60, 8, placement);

    private static void AssertKeepsRules(PlanResult result, string what = "")
    {
        Assert.NotNull(result.Layout);
        var report = LayoutChecker.Check(result);
        Assert.True(report.Violations.Count == 0, what + ": " + string.Join("\n", report.Violations));
    }

    // Random outlines, holes, defects, grain, limits, margins, pods (round ones and gaps too), ports, obstacles, placements.
    internal static Job RandomJob(Random random, int i)
    {
        var radius = 120 + 160 * random.NextDouble();
        var outline = Shapes.Wavy(
            radius, 0.6 + 0.4 * random.NextDouble(),
            [(2, 0.2 * random.NextDouble(), 6 * random.NextDouble()), (3 + random.Next(4), 0.15 * random.NextDouble(), 6 * random.NextDouble())],
            30 + random.Next(150));
        ImmutableArray<Ring> holes = random.Next(2) == 0 ? [] : [Shapes.Circle(0.3 * radius, 5, 10 + 20 * random.NextDouble(), 24)];
        ImmutableArray<Ring> defects = random.Next(3) > 0 ? [] : [Shapes.Rectangle(-0.4 * radius, -20, 25, 15)];
        var board = Shapes.Board(900, 750, 120, 15 + 30 * random.Next(4)) with
        {
            Obstacles = random.Next(2) == 0 ? []
                : [
                    new("pin", ObstacleKind.Pin, new ObstacleShape.Disc(new(450, 380), 12), 3),
                    new("stop", ObstacleKind.Stop, new ObstacleShape.Rectangle(new(0, 0, 60, 300)), 5),
                ],
        };
        board = board with
        {
            Ports = [.. board.Ports.Select((p, k) => k % 7 == i % 7 ? p with { State = (PortState)random.Next(3) } : p)],
        };
        PodType[] pods =
        [
            Shapes.Pod(120, 120) with { SealInsetAboveMm = random.Next(8), SealInsetBelowMm = 3 },
            Shapes.Pod(120, 60, mayTurn: random.Next(2) == 0, stock: 6),
            random.Next(2) == 0 ? Shapes.Pod(60, 60)
                : new PodType("round 90", new PodFootprint.Round(90), 4, 4, 50, false, 20, 1),
        ];
        PlacementWish wish = i % 3 == 0 ? new PlacementWish.Given(new(300 + random.Next(300), 300 + random.Next(150)), random.Next(360))
            : new PlacementWish.Search([random.Next(90)]);
        var job = Shapes.JobFor(
            new(outline, holes, defects), board, pods, 60 + 40 * random.NextDouble(), 2 + 4 * random.NextDouble(), wish,
            acrossMm: 50 + 20 * random.NextDouble(), grainDeg: random.Next(180), interiorSpanMm: random.Next(2) == 0 ? null : 110);
        return job with { Shop = job.Shop with { PodGapMm = random.Next(3) == 0 ? 12 : 0 } };
    }
}

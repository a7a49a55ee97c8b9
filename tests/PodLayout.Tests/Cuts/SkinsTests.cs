using PodLayout.Checking;
using PodLayout.Cuts;
using PodLayout.Findings;
using PodLayout.Jobs;
using PodLayout.Programs;
using PodLayout.Reading;
using PodLayout.Tests.Independent;
using PodLayout.Tests.Programs;

namespace PodLayout.Tests.Cuts;

public class SkinsTests
{
    [Fact]
    public void A_strip_narrower_than_the_pod_is_held_where_a_skin_is_left_and_its_seals_fit()
    {
        // Bodies of 60 mm, seals of 44: a strip of 54 takes the seals with a margin of 3 (50), not the bodies (66).
        Assert.Null(Planned(Strip(54, skin: null)).Layout);
        var result = Planned(Strip(54, skin: 0.4));
        Assert.NotNull(result.Layout);
        Assert.Equal([0], result.Job.Part.Shape.Skinned);
        Assert.Empty(LayoutChecker.Check(result).Violations);
        Assert.Empty(LayoutCheck.Of(result.Job, result.Layout).Rules.SelectMany(r => r.Breaches));

        // Seals keep their margin: 44 + 2 x 3 = 50 is the narrowest.
        Assert.NotNull(Planned(Strip(50, skin: 0.4)).Layout);
        Assert.Null(Planned(Strip(49.9, skin: 0.4)).Layout);
    }

    [Fact]
    public void Past_the_edge_a_pod_supports_as_far_as_its_seal_only()
    {
        // The strip's end lies 8 mm farther from the seal than from the body.
        var worst = Planned(Strip(54, skin: 0.4)).Layout!.WorstShareOfLimit;
        var wide = Planned(Strip(72, skin: 0.4)).Layout!;
        Assert.True(worst > wide.WorstShareOfLimit);
    }

    [Fact]
    public void With_a_skin_a_part_never_needs_more_pods()
    {
        foreach (var width in new[] { 66.0, 90, 130 })
        {
            Assert.True(Planned(Strip(width, skin: 0.4)).Layout!.Pods.Length <= Planned(Strip(width, skin: null)).Layout!.Pods.Length);
        }
    }

    [Fact]
    public void A_skin_that_the_program_cuts_through_is_none()
    {
        var path = Posted.Read("G21 G90 G17\nT1 M6\nM3 F900\nG0 X-6 Y-6 Z9\nG1 Z-31\nX306\nG0 Z9\nM2\n").Value;
        var outcome = Apply(54, 0.4, path);
        Assert.Empty(outcome.Value!.Part.Shape.Skinned);
        Assert.Contains(outcome.Findings, f => f.Code == "skin-not-left" && f.Severity == Severity.Warning);
    }

    [Fact]
    public void A_skin_thinner_than_what_counts_frees_nothing() => Assert.Empty(Strip(54, 0.05).Part.Shape.Skinned);

    private static PodLayout.Layouts.PlanResult Planned(Job job) =>
        Planning.Plan(job, new Effort(2, null), null, TestContext.Current.CancellationToken);

    private static Job Strip(double width, double? skin)
    {
        var outcome = Apply(width, skin, null);
        Assert.True(outcome.Succeeded, outcome.Refusal?.ToString());
        return outcome.Value;
    }

    private static Outcome<Job> Apply(double width, double? skin, ToolPath? path)
    {
        var strip = Shapes.Rectangle(0, 0, 300, width);
        Drawing drawing = new("part.dxf", "DXF", "millimetre", 1, 0.05, [new("PART", strip)], [], [], []);
        var job = Shapes.JobFor(
            new(strip, [], []), Shapes.Board(600, 300, portSpacing: 60), [Shapes.Pod(60, 60) with { SealInsetAboveMm = 8 }], 70);
        CutOperation outline = new(CutKind.ThroughProfile, new CutLines.Outline(), "$.cuts[0]")
        {
            Side = CutSide.Outside,
            ToolDiameterMm = 12,
            LowestTipMm = skin ?? -1,
        };
        var tools = Posted.Tools(new Tool(1, 12, new CutterForm.Flat()));
        return Cutting.Apply(
            job, drawing, new([outline], new("part.nc", tools, ZZero.PartFace, default, null, false), 0.1, 2, null), path, "job.json");
    }
}

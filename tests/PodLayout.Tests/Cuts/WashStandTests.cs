using PodLayout.Checking;
using PodLayout.Findings;
using PodLayout.Handover;
using PodLayout.Handover.Setup;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Tests.Independent;

namespace PodLayout.Tests.Cuts;

/// <summary>The sample that hangs on a skin, with a held offcut and a thin floor.</summary>
public class WashStandTests
{
    // Where the search puts it; planned there alone, so that the test is quick.
    private static readonly PlacementWish Place = new PlacementWish.Given(new(313, 283.5), 0);

    private static readonly Lazy<PlanResult> ByProgram = new(() => Planned("job.json"));

    [Fact]
    public void The_layout_from_the_program_and_from_the_operations_agree()
    {
        var byOperations = Planned("job-by-operations.json").Layout!;
        Assert.Equal(
            byOperations.Pods.Select(p => (p.Type.Name, p.Turned, p.Column, p.Row, p.Holds)),
            ByProgram.Value.Layout!.Pods.Select(p => (p.Type.Name, p.Turned, p.Column, p.Row, p.Holds)));
    }

    [Theory]
    [InlineData("job.json", "part.nc lines ")]
    [InlineData("job-by-operations.json", "on layer DISH")]
    public void Skin_floor_and_offcut_are_those_that_are_drawn(string file, string source)
    {
        var (job, findings, _, _) = SampleJob.Read("wash-stand", file);
        var shape = job.Part.Shape;
        Assert.Equal([0], shape.Skinned);

        // 5 mm of ash: more than a quarter of a millimetre of sag over the two larger pods, and none to speak of over the small ones.
        var told = Assert.Single(findings, f => f.Severity >= Severity.Warning);
        Assert.Equal("floor-too-thin", told.Code);
        var weak = Assert.Single(shape.WeakFloors);
        Assert.Equal(["120 x 120", "120 x 60"], weak.Pulls.Select(p => p.Pod));
        Assert.Equal(1, weak.Area.AreaMm2 / (140 * 90 - (4 - Math.PI) * 25 * 25), 0.02);

        // The dish: 140 x 90 mm with corners of 25 mm, 25 mm deep in 30.
        var floor = Assert.Single(shape.Floors);
        Assert.Contains(source, floor.Source, StringComparison.Ordinal);
        Assert.Equal(5, floor.LeastMm, 1e-9);
        Assert.Equal(1, floor.Area.AreaMm2 / (140 * 90 - (4 - Math.PI) * 25 * 25), 2e-3);

        // The basin's hole is 340 x 240 mm with corners of 100; the tool takes 12 mm all round.
        var piece = Assert.Single(shape.Held);
        var area = 316 * 216 - (4 - Math.PI) * 88 * 88;
        Assert.Equal(1, piece.MassKg / (area * 30e-9 * job.Part.Wood.WeightKgPerM3), 1e-3);
    }

    [Fact]
    public void The_layout_keeps_every_rule_and_has_a_body_beyond_the_outline_where_the_skin_is()
    {
        var plan = ByProgram.Value;
        var layout = plan.Layout!;
        Assert.Empty(LayoutChecker.Check(plan).Violations);
        Assert.Empty(LayoutCheck.Of(plan.Job, layout).Rules.SelectMany(r => r.Breaches));
        Assert.Equal("offcut 1", Assert.Single(layout.Pods, p => p.Holds is not null).Holds);

        // Nearer to the outline than a body may stand beside a through cut (3 mm), in front of the basin: 63 mm of wood, 60 of body.
        var front = layout.Placement.ZeroOnBoard.Y;
        Assert.Contains(layout.Pods, p => p.BodyBox.MinY < front + 3 && p.BodyBox.MinY + p.Type.SealInsetAboveMm >= front + 3 - Tolerances.ContactMm);
    }

    [Fact]
    public void The_picture_and_the_card_tell_skin_floor_and_held_offcut_apart()
    {
        var plan = ByProgram.Value;
        var picture = LayoutPicture.Draw(plan);
        var styles = picture.Layers.SelectMany(l => l.Primitives).Select(p => p.Style).ToHashSet();
        Assert.Superset(new HashSet<string> { "skin-edge", "skin-core", "floor-edge", "piece-edge", "cut-edge" }, styles);
        var svg = LayoutPicture.Svg(plan);
        Assert.Contains(">offcut 1<", svg, StringComparison.Ordinal);
        Assert.Contains("edge held by a thin skin", svg, StringComparison.Ordinal);

        // Every sign that a part without them does not have.
        var plain = LayoutPicture.Svg(HandMade.Oval());
        Assert.DoesNotContain("held by a thin skin", plain, StringComparison.Ordinal);

        var card = System.Text.Encoding.UTF8.GetString(CardFiles.Of(plan, new CardOptions(), LayoutDoubts.None).Single(f => f.Name == "card.html").Content);
        Assert.Contains("The part hangs in its blank on a skin along the outline", card, StringComparison.Ordinal);
        Assert.Contains("A thin floor of 5 mm is left about X ", card, StringComparison.Ordinal);
        var held = layoutPod(plan);
        Assert.Contains($"comes loose from the blank; held by {held}.", card, StringComparison.Ordinal);

        static string layoutPod(PlanResult plan) => LayoutFiling.PodId(plan.Layout!.Pods.Select((p, i) => (p, i)).Single(p => p.p.Holds is not null).i);
    }

    private static PlanResult Planned(string file)
    {
        var (job, findings, _, _) = SampleJob.Read("wash-stand", file);
        var plan = Planning.Plan(job with { Placement = Place }, new Effort(2, null), null, TestContext.Current.CancellationToken);
        return plan with { Findings = [.. plan.Findings, .. findings] };
    }
}

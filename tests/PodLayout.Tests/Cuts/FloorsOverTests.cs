using System.Collections.Immutable;
using PodLayout.Checking;
using PodLayout.Cuts;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Handover;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Parts;
using PodLayout.Programs;
using PodLayout.Reading;
using PodLayout.Shops;
using PodLayout.Tests.Independent;
using PodLayout.Tests.Programs;
using PodLayout.Woods;

namespace PodLayout.Tests.Cuts;

/// <summary>Floors that cuts leave over the vacuum of pods.</summary>
public class FloorsOverTests
{
    private static readonly PodType Large = Shapes.Pod(120, 120) with { SealInsetAboveMm = 5 };
    private static readonly PodType Small = Shapes.Pod(60, 60) with { SealInsetAboveMm = 5 };

    // A pocket in the middle of a panel of 500 x 360.
    private static readonly Ring Pocket = Shapes.Rectangle(200, 140, 100, 80);

    [Theory]
    [InlineData(0.8)]
    [InlineData(0.2)]
    public void No_pod_has_any_of_a_pocket_of_a_thin_panel_inside_its_seal(double left)
    {
        foreach (var (job, findings) in new[] { ByOperation(8, left), ByProgram(8, left) })
        {
            var result = Planning.Plan(job, new Effort(2, null), null, TestContext.Current.CancellationToken);
            Assert.True(result.Layout is not null, string.Join("; ", result.Findings));
            Assert.All(result.Layout.Pods, pod => Assert.False(Touches(pod, result.Layout, Pocket)));
            Assert.Empty(LayoutChecker.Check(result).Violations);
            Assert.Empty(LayoutCheck.Of(job, result.Layout).Rules.SelectMany(r => r.Breaches));
            var told = Assert.Single(findings, f => f.Code == "floor-too-thin");
            Assert.Equal(Severity.Warning, told.Severity);
            // 100 x 80 mm; the program's tool leaves its corners.
            Assert.Matches(FormattableString.Invariant($"leaves {left:0.##} mm of wood over (80[.]2|80[.]1|80|79[.]9) cm2"), told.Message);
            Assert.Contains("Every kind of pod of the shop would do so", told.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_layout_without_the_rule_would_have_stood_under_that_floor()
    {
        // Every point of the pocket is to have a pod within 20 mm: that asks for pods under it.
        var (job, _) = ByOperation(8, 0.8);
        job = job with { Support = job.Support with { ThinFloorSpanMm = 20 } };
        var with = Planning.Plan(job, new Effort(2, null), null, TestContext.Current.CancellationToken);
        Assert.True(with.IsPartial);
        Assert.DoesNotContain(with.Layout!.Pods, pod => Touches(pod, with.Layout, Pocket));
        Assert.Contains(with.Unsupported, s => s.Limit == SupportLimit.ThinFloor && s.Cause.Contains("too thin to bear", StringComparison.Ordinal));
        var without = job with { Part = job.Part with { Shape = job.Part.Shape with { WeakFloors = [] } } };
        var layout = Planning.Plan(without, new Effort(2, null), null, TestContext.Current.CancellationToken).Layout!;
        Assert.Contains(layout.Pods, pod => Touches(pod, layout, Pocket));

        // The check finds it, and names pod, floor, figures and what mends it.
        var report = LayoutCheck.Of(job, layout);
        var breach = report[CheckedRule.FloorsBearVacuum].Breaches[0];
        Assert.Equal("floor-sucked-in", breach.Code);
        Assert.Matches("^P[0-9]+: pocket \\(.*\\) leaves 0.8 mm of wood, and the pod's upper seal reaches .* mm over it at X .*: the vacuum of a \"(120x120|60x60)\" \\(70 kPa\\) sucks it in", breach.Message);
        Assert.Matches("leave at least [0-9.]+ mm of wood", breach.Remedy);
        Assert.Equal(
            layout.Pods.Select((p, i) => (p, i)).Where(p => Touches(p.p, layout, Pocket)).Select(p => p.i), report[CheckedRule.FloorsBearVacuum].Pods);
    }

    [Fact]
    public void What_was_found_is_the_same_after_the_layout_file_was_written_and_read()
    {
        var (job, _) = ByOperation(8, 0.8);
        var result = Planning.Plan(job, new Effort(2, null), null, TestContext.Current.CancellationToken);
        var text = LayoutJson.Write(result);
        var read = LayoutJson.ToPlan(LayoutJson.Read("layout.json", text).Value!);
        var (before, after) = (job.Part.Shape.WeakFloors.Single(), read.Job.Part.Shape.WeakFloors.Single());
        Assert.Equal((before.Name, before.Source, before.LeftMm), (after.Name, after.Source, after.LeftMm));
        Assert.Equal(before.Pulls.Select(p => p.Pod), after.Pulls.Select(p => p.Pod));
        Assert.Equal(before.Area.AreaMm2, after.Area.AreaMm2, 0.5);
        Assert.Equal(text, LayoutJson.Write(read));
    }

    [Fact]
    public void Program_and_operation_make_the_same_floor()
    {
        var (one, other) = (ByOperation(8, 0.8).Job.Part.Shape.WeakFloors.Single(), ByProgram(8, 0.8).Job.Part.Shape.WeakFloors.Single());
        Assert.Equal(1, one.Area.Intersect(other.Area).AreaMm2 / one.Area.AreaMm2, 0.01);
        Assert.Equal(1, other.Area.AreaMm2 / one.Area.AreaMm2, 0.01);
        Assert.Equal(0.8, other.LeftMm, 0.011);
        Assert.Matches("^part.nc lines [0-9]+ to [0-9]+, tool 1$", other.Source);
    }

    [Fact]
    public void Of_two_depths_of_a_program_each_is_a_floor_of_its_own_thickness()
    {
        // Two slots of 40 x 12, far apart: 3 mm and 1 mm are left of 8.
        var (job, _) = Posting(8, "G0 X100 Y100 Z9\nG1 Z-5\nX128\nG0 Z9\nX400 Y100\nG1 Z-7\nX428\nG0 Z9\n", WoodTable.Find("eastern white pine")!);
        Assert.Equal([1.0], job.Part.Shape.WeakFloors.Where(f => f.Pulls.Any(p => p.Pod == Small.Name)).Select(f => Math.Round(f.LeftMm, 2)));
        Assert.Equal("part.nc lines 9 to 11, tool 1", job.Part.Shape.WeakFloors.Single(f => Math.Round(f.LeftMm, 2) == 1).Source);
    }

    [Fact]
    public void A_small_pod_may_stand_where_a_large_one_may_not()
    {
        // 5 mm of maple as a whole: 0.8 mm of sag over the large pod, under 0.05 over the small one.
        var (job, findings) = Plain(5);
        Assert.Equal([Large.Name], job.Part.Shape.WeakFloors.Single().Pulls.Select(p => p.Pod));
        var told = Assert.Single(findings, f => f.Code == "floor-too-thin").Message;
        Assert.Contains("the part itself is 5 mm thick", told, StringComparison.Ordinal);
        Assert.Contains("Only \"60x60\" may stand under it", told, StringComparison.Ordinal);
        var layout = Planning.Plan(job, new Effort(2, null), null, TestContext.Current.CancellationToken).Layout!;
        Assert.All(layout.Pods, p => Assert.Equal(Small.Name, p.Type.Name));
        Assert.Empty(Plain(8).Job.Part.Shape.WeakFloors);
    }

    [Fact]
    public void A_part_that_no_pod_may_stand_under_is_refused_with_the_reason_among_what_is_told()
    {
        var (job, findings) = Plain(1.5);
        Assert.Null(Planning.Plan(job, new Effort(2, null), null, TestContext.Current.CancellationToken).Layout);
        Assert.Contains(findings, f => f.Code == "floor-too-thin" && f.Message.Contains("none may stand under it", StringComparison.Ordinal));
    }

    [Fact]
    public void A_skin_inside_the_part_is_a_floor()
    {
        var (job, _) = Made(8, [new(CutKind.ThroughProfile, new CutLines.OfLayer("POCKET"), "$.cuts[0]") { ToolDiameterMm = 12, LowestTipMm = 0.8 }], null);
        var floor = job.Part.Shape.WeakFloors.Single();
        Assert.Equal(0.8, floor.LeftMm);
        // 12 mm wide about the line, its outer corners as round as the tool; the corners within count with it up to a quarter of the cavity.
        var swept = 112 * 92 - (4 - Math.PI) * 36 - 88 * 68;
        Assert.InRange(floor.Area.AreaMm2, swept - 1, swept + (4 - Math.PI) * 27.5 * 27.5 + 0.1 * 720);
        // Thick enough, the same skin is none: 6 mm over a width of 12.
        Assert.Empty(Made(8, [new(CutKind.ThroughProfile, new CutLines.OfLayer("POCKET"), "$.cuts[0]") { ToolDiameterMm = 12, LowestTipMm = 7.6 }], null).Job.Part.Shape.WeakFloors);
    }

    [Fact]
    public void A_groove_under_a_pocket_takes_its_depth_off_the_floor()
    {
        CutOperation pocket = new(CutKind.PocketFromFace, new CutLines.OfLayer("POCKET"), "$.cuts[0]") { LowestTipMm = 7.8 };
        CutOperation groove = new(CutKind.GrooveInUnderside, new CutLines.OfLayer("GROOVE"), "$.cuts[1]") { ToolDiameterMm = 30, DepthMm = 7 };
        Assert.Empty(Made(12, [pocket], null).Job.Part.Shape.WeakFloors);
        var floor = Made(12, [pocket, groove], null).Job.Part.Shape.WeakFloors.First();
        Assert.Equal("pocket from the face over groove in the underside", floor.Name);
        Assert.Equal(0.8, floor.LeftMm, 1e-9);
    }

    [Fact]
    public void Floors_with_thin_ribs_between_them_count_as_one()
    {
        Ring[] Pockets(double rib) => [Shapes.Rectangle(190, 100, 50, 50), Shapes.Rectangle(240 + rib, 100, 50, 50)];
        WeakFloor[] Floors(double rib) => [.. Made(
            9, [new(CutKind.PocketFromFace, new CutLines.OfLayer("TWO"), "$.cuts[0]") { LowestTipMm = 3 }], null, rings: Pockets(rib)).Job.Part.Shape.WeakFloors];
        Assert.Single(Floors(4));
        Assert.InRange(Floors(4)[0].Area.AreaMm2, 2 * 2500 + 3.5 * 50, 2 * 2500 + 4.1 * 50 + 0.1 * 308);
        Assert.Equal(2, Floors(80).Length);
    }

    [Fact]
    public void A_looser_limit_frees_pods_and_less_vacuum_too()
    {
        int Weak(FloorLimits limits, double gaugeKPa) => Made(
            8, [], null, limits: limits, gaugeKPa: gaugeKPa, thicknessMm: 6).Job.Part.Shape.WeakFloors.Sum(f => f.Pulls.Length);
        Assert.Equal(1, Weak(FloorLimits.Default, 70));
        Assert.Equal(0, Weak(new(0.6, 2), 70));
        Assert.Equal(0, Weak(FloorLimits.Default, 30));
        Assert.Equal(2, Weak(new(0.25, 90), 70));
    }

    // Pod's upper seal against the ring, both by their boxes: the part lies straight.
    private static bool Touches(PlacedPod pod, Layout layout, Ring ring)
    {
        Assert.Equal(0, layout.Placement.AngleDeg);
        var (seal, floor) = (pod.BodyBox.Grow(-pod.Type.SealInsetAboveMm), ring.Bounds.Moved(layout.Placement.ZeroOnBoard));
        return Math.Min(seal.MaxX, floor.MaxX) - Math.Max(seal.MinX, floor.MinX) > 0.02 && Math.Min(seal.MaxY, floor.MaxY) - Math.Max(seal.MinY, floor.MinY) > 0.02;
    }

    private static (Job Job, IEnumerable<Finding> Findings) ByOperation(double thickness, double left) =>
        Made(thickness, [new(CutKind.PocketFromFace, new CutLines.OfLayer("POCKET"), "$.cuts[0]") { Name = "pocket", LowestTipMm = left }], null);

    // The same pocket in passes of a 10 mm tool, the corners by plunges of a 1 mm tool left out: 0.2 % of it.
    private static (Job Job, IEnumerable<Finding> Findings) ByProgram(double thickness, double left)
    {
        var moves = new System.Text.StringBuilder();
        moves.AppendLine("G0 X205 Y145 Z9").AppendLine(FormattableString.Invariant($"G1 Z{left - thickness}"));
        for (var row = 0; row <= 14; row++)
        {
            moves.AppendLine(FormattableString.Invariant($"G1 X{(row % 2 == 0 ? 295 : 205)}"));
            moves.AppendLine(FormattableString.Invariant($"G1 Y{Math.Min(215, 150 + 5 * row)}"));
        }

        moves.AppendLine("G1 X205").AppendLine("G1 Y145").AppendLine("G1 X295").AppendLine("G1 Y215").AppendLine("G0 Z9");
        return Posting(thickness, moves.ToString(), WoodTable.Find("hard maple")!, 10);
    }

    private static (Job Job, IEnumerable<Finding> Findings) Posting(double thickness, string moves, WoodSpecies wood, double tool = 12) => Made(
        thickness, [], Posted.Read("G21 G90 G17\nT1 M6\nM3 F900\n" + moves + "M2\n").Value, wood: wood, tool: tool);

    private static (Job Job, IEnumerable<Finding> Findings) Plain(double thickness) => Made(thickness, [], null);

    private static (Job Job, IEnumerable<Finding> Findings) Made(
        double thickness, ImmutableArray<CutOperation> operations, ToolPath? path, WoodSpecies? wood = null, double tool = 12, Ring[]? rings = null,
        FloorLimits? limits = null, double gaugeKPa = 70, double? thicknessMm = null)
    {
        Drawing drawing = new(
            "part.dxf", "DXF", "millimetre", 1, 0.05,
            [
                new("PART", Shapes.Rectangle(0, 0, 500, 360)), new("POCKET", Pocket), new("GROOVE", Shapes.Rectangle(230, 170, 40, 20)),
                .. (rings ?? []).Select(r => new DrawnRing("TWO", r)),
            ], [], [], []);
        var job = Shapes.JobFor(
            new(Shapes.Rectangle(0, 0, 500, 360), [], []), Shapes.Board(900, 720, portSpacing: 60), [Large, Small], 110);
        var vacuum = job.Shop.Vacuum with { Source = new VacuumSource.Reading(gaugeKPa, 100) };
        job = job with
        {
            Part = job.Part with { ThicknessMm = thicknessMm ?? thickness, Wood = Wood.Of(wood ?? WoodTable.Find("hard maple")!) },
            Shop = job.Shop with { Vacuum = vacuum },
            Support = job.Support with { ThinFloorSpanMm = 70 },
        };
        var tools = Posted.Tools(new Tool(1, tool, new CutterForm.Flat()));
        var outcome = Cutting.Apply(
            job, drawing,
            new(operations, path is null ? null : new("part.nc", tools, ZZero.PartFace, default, null, false), 0.1, 2, null) { FloorLimits = limits ?? FloorLimits.Default },
            path, "job.json");
        Assert.True(outcome.Succeeded, outcome.Refusal?.ToString());
        return (outcome.Value, outcome.Findings);
    }
}

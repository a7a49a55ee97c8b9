using System.Collections.Immutable;
using PodLayout.Checking;
using PodLayout.Cuts;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Placing;
using PodLayout.Programs;
using PodLayout.Reading;
using PodLayout.Seats;
using PodLayout.Support;
using PodLayout.Tests.Independent;
using PodLayout.Tests.Programs;

namespace PodLayout.Tests.Cuts;

public class ThinFloorsTests
{
    private const double Thickness = 30;

    // A pocket of 240 x 180 in a plate of 500 x 360.
    private static readonly Ring Pocket = Shapes.Rectangle(130, 90, 240, 180);

    [Theory]
    [InlineData(4, true)]
    [InlineData(5.99, true)]
    [InlineData(6, false)]
    [InlineData(12, false)]
    public void A_pocket_is_a_thin_floor_when_less_than_the_stated_thickness_is_left(double left, bool isThin)
    {
        var shape = ByOperation(left).Part.Shape;
        Assert.Equal(isThin ? [240.0 * 180] : [], shape.Floors.Select(f => Math.Round(f.Area.AreaMm2, 3)));
        Assert.Empty(shape.Hazards);
    }

    [Fact]
    public void The_floor_of_a_program_is_what_its_tool_sweeps_at_the_heights_between()
    {
        // One pass of a tool of 12 mm, 200 mm long, 3 mm above the underside: a stadium. A second pass at 8 mm is none.
        var byProgram = ByProgram("G0 X100 Y100 Z9\nG1 Z-27\nX300\nG0 Z9\nX100 Y200\nG1 Z-22\nX300\nG0 Z9\n").Part.Shape;
        var floor = Assert.Single(byProgram.Floors);
        Assert.Equal(1, floor.Area.AreaMm2 / (200 * 12 + Math.PI * 36), 1e-3);
        Assert.Equal(3, floor.LeastMm, 9);
    }

    [Fact]
    public void Each_floor_of_a_program_is_told_with_its_own_lines_and_thickness()
    {
        // 3 mm and 5 mm are left, from the way down to the way up; between the two the same tool goes through elsewhere.
        var floors = ByProgram(
            "G0 X100 Y100 Z9\nG1 Z-27\nX300\nG0 Z9\nX100 Y300\nG1 Z-31\nX300\nG0 Z9\nX100 Y200\nG1 Z-25\nX200\nG0 Z9\n").Part.Shape.Floors;
        Assert.Equal([(3.0, "part.nc lines 5 to 7, tool 1"), (5.0, "part.nc lines 13 to 15, tool 1")], floors.Select(f => (Math.Round(f.LeastMm, 9), f.Source)));
    }

    [Fact]
    public void The_point_of_a_drill_that_goes_through_leaves_no_floor_around_its_hole()
    {
        // 20 mm wide, 118 degrees at the point, which is 2 mm below the underside: 6 mm above it the drill is at its full width.
        Tool drill = new(1, 20, new CutterForm.Vee(118));
        Assert.Empty(ByProgram("G0 X200 Y200 Z9\nG81 X200 Y200 Z-32 R2\nG80\n", drill).Part.Shape.Floors);
        // Where it stops short of the underside, the hole's bottom is one.
        Assert.Single(ByProgram("G0 X200 Y200 Z9\nG81 X200 Y200 Z-29 R2\nG80\n", drill).Part.Shape.Floors);
    }

    [Fact]
    public void What_is_cut_through_is_no_floor()
    {
        // Down a ramp that passes 6 mm and 0.1 mm: the floor ends where the cut through begins, and before it the tool is higher.
        var shape = ByProgram("G0 X100 Y100 Z9\nG1 Z-20\nX300 Z-31\nX300 Y250\nG0 Z9\n").Part.Shape;
        var (floor, cut) = (Assert.Single(shape.Floors).Area, Assert.Single(shape.Hazards).Area);
        Assert.True(floor.Intersect(cut).AreaMm2 < 0.01 * floor.AreaMm2);
        double At(double left) => 100 + 200 * (Thickness - left - 20) / 11;
        Assert.Equal(1, floor.AreaMm2 / ((At(0.1) - At(6)) * 12), 0.02);
    }

    [Fact]
    public void Every_point_of_a_floor_has_a_pod_within_its_own_span_and_the_independent_checker_agrees()
    {
        foreach (var span in new[] { 25.0, 40, 70 })
        {
            var job = ByOperation(4, span);
            var result = Planning.Plan(job, new Effort(2, null), null, TestContext.Current.CancellationToken);
            Assert.True(result.Layout is not null, $"{span}: {string.Join("; ", result.Findings)}");
            Assert.Empty(LayoutChecker.Check(result).Violations);
            var report = LayoutCheck.Of(job, result.Layout);
            Assert.Empty(report.Rules.SelectMany(r => r.Breaches));
            Assert.NotNull(report[CheckedRule.FloorWithinLimit].Worst);
        }
    }

    [Fact]
    public void A_tighter_span_never_takes_fewer_pods_and_one_too_tight_is_named()
    {
        var counts = new[] { 25.0, 40, 70 }.Select(span => Planning.Plan(
            ByOperation(4, span), new Effort(2, null), null, TestContext.Current.CancellationToken).Layout!.Pods.Length).ToList();
        Assert.Equal(counts.OrderDescending(), counts);
        Assert.True(counts[0] > counts[2]);

        // Pods of 60 mm and holes between them on a board with one port only: nothing stands within 5 mm of every point.
        var tight = ByOperation(4, 5) with { Shop = new("s", Shapes.Board(600, 480, portSpacing: 240), [Shapes.Pod(60, 60)], 0) };
        var result = Planning.Plan(tight, new Effort(2, null), null, TestContext.Current.CancellationToken);
        Assert.True(result.IsPartial);
        Assert.Contains(result.Unsupported, s => s.Limit == PodLayout.Layouts.SupportLimit.ThinFloor);
    }

    [Fact]
    public void What_one_place_of_a_box_supports_of_a_floor_is_never_ruled_out_for_the_box()
    {
        for (var seed = 0; seed < 12; seed++)
        {
            var random = new Random(seed);
            var job = ByOperation(4, 20 + 40 * random.NextDouble());
            var reach = ReachMap.Of(job.Part, job.Support);
            var half = seed % 2 == 0 ? 0 : 2.0;
            var frame = new PlacingFrame(job, reach, PodPose.Of(job, 50), 10, half);
            var box = new OffsetBox(new(30 * random.NextDouble(), 30 * random.NextDouble()), 12 * random.NextDouble(), 12 * random.NextDouble());
            var seats = frame.PossibleSeats(box);
            var could = new BoxReach(frame, seats, box);
            var offset = box.Centre + new Point2((2 * random.NextDouble() - 1) * box.HalfXMm, (2 * random.NextDouble() - 1) * box.HalfYMm);
            var exact = new PlacingFrame(job, reach, frame.Poses, 10 + (2 * random.NextDouble() - 1) * half, 0);
            var supported = 0;
            foreach (var seat in exact.PossibleSeats(new(offset, 0, 0)))
            {
                var s = seats.IndexOf(seat);
                for (var p = 0; p < reach.Points.Length; p++)
                {
                    if (exact.Reach.Share(p, exact.Faces[seat.Pose], exact.CentreOf(seat, offset)) <= 1)
                    {
                        Assert.True(could.Supports(s, p));
                        supported += reach.Points[p].Limit == PodLayout.Layouts.SupportLimit.ThinFloor ? 1 : 0;
                    }
                }
            }

            Assert.True(supported > 0);
        }
    }

    private static Job ByOperation(double left, double span = 60) => Made(
        [new(CutKind.PocketFromFace, new CutLines.OfLayer("POCKET"), "$.cuts[0]") { LowestTipMm = left }], null, span);

    private static Job ByProgram(string moves, Tool? tool = null) =>
        Made([], Posted.Read("G21 G90 G17\nT1 M6\nM3 F900\n" + moves + "M2\n").Value, 60, tool);

    private static Job Made(ImmutableArray<CutOperation> operations, ToolPath? path, double span, Tool? tool = null)
    {
        Drawing drawing = new(
            "part.dxf", "DXF", "millimetre", 1, 0.05,
            [new("PART", Shapes.Rectangle(0, 0, 500, 360)), new("POCKET", Pocket)], [], [], []);
        var job = Shapes.JobFor(
            new(Shapes.Rectangle(0, 0, 500, 360), [], []), Shapes.Board(720, 600, portSpacing: 60), [Shapes.Pod(60, 60)], 90, interiorSpanMm: 150);
        job = job with { Support = job.Support with { ThinFloorSpanMm = span } };
        var tools = Posted.Tools(tool ?? new Tool(1, 12, new CutterForm.Flat()));
        var outcome = Cutting.Apply(
            job, drawing, new(operations, new("part.nc", tools, ZZero.PartFace, default, null, false), 0.1, 2, null), path, "job.json");
        Assert.True(outcome.Succeeded, outcome.Refusal?.ToString());
        return outcome.Value;
    }
}

using PodLayout.Cuts;
using PodLayout.Forces;
using PodLayout.Geometry;
using PodLayout.Handover;
using PodLayout.Holding;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Programs;
using PodLayout.Reading;
using PodLayout.Tests.Programs;

namespace PodLayout.Tests.Holding;

/// <summary>The part's mass with what is cut out of it, by hand: a plate of 400 x 300 x 30 mm of 700 kg/m³, 3.6e6 mm³ about (200, 150).</summary>
public class MassTests
{
    private const double Gravity = 9.80665;
    private static readonly Ring Plate = Shapes.Rectangle(0, 0, 400, 300);

    // 100 x 80 x 20 mm: 1.6e5 mm³ about (80, 60).
    private static readonly CutOperation Pocket = new(CutKind.PocketFromFace, new CutLines.OfLayer("POCKET"), "$.cuts[0]") { LowestTipMm = 10 };

    // 50 x 200 x 6 mm: 6e4 mm³ about (325, 150).
    private static readonly CutOperation Recess = new(CutKind.PocketInUnderside, new CutLines.OfLayer("RECESS"), "$.cuts[1]") { DepthMm = 6 };

    [Fact]
    public void A_pocket_and_a_recess_come_off_the_weight_and_move_its_centre()
    {
        var ground = Ground(null, Pocket, Recess);
        const double volume = 3.6e6 - 1.6e5 - 6e4;
        Assert.Equal(volume * 1e-9 * 700 * Gravity, ground.WeightN, 1e-6);
        var centre = ground.CentreOfMass + ground.Middle;
        Assert.Equal((3.6e6 * 200 - 1.6e5 * 80 - 6e4 * 325) / volume, centre.X, 1e-6);
        Assert.Equal((3.6e6 * 150 - 1.6e5 * 60 - 6e4 * 150) / volume, centre.Y, 1e-6);
    }

    [Fact]
    public void Put_down_the_part_still_has_its_pockets_full_but_what_is_in_its_underside_is_gone()
    {
        var ground = Ground(null, Pocket, Recess);
        Assert.Equal((3.6e6 * 200 - 6e4 * 325) / (3.6e6 - 6e4), (ground.StandingCentre + ground.Middle).X, 1e-6);
        Assert.Equal(150, (ground.StandingCentre + ground.Middle).Y, 1e-6);
    }

    [Fact]
    public void Two_cuts_over_the_same_place_are_taken_off_once()
    {
        // The same pocket again, 5 mm deeper: 100 x 80 x 25 in all.
        var ground = Ground(null, Pocket, Pocket with { LowestTipMm = 5 });
        Assert.Equal((3.6e6 - 2e5) * 1e-9 * 700 * Gravity, ground.WeightN, 1e-6);
    }

    [Fact]
    public void Where_round_pockets_overlap_the_deeper_counts()
    {
        // Two discs of 40 mm, their middles 40 mm apart: the lens that they share is r² (2 pi/3 - sqrt(3)/2), by elementary geometry.
        const double r = 40;
        var lens = r * r * (2 * Math.PI / 3 - Math.Sqrt(3) / 2);
        var disc = Math.PI * r * r;
        var gone = Assert.Single(CutAways.Of(
            new(Plate, [], []), 30,
            [Round(150, 12), Round(190, 22)],
            Region.Empty, []));
        Assert.Equal(1, gone.VolumeMm3 / (disc * 18 + (disc - lens) * 8), 1e-4);
        // About the middle of the deeper disc, and that of the other without the lens, whose middle lies half way between.
        Assert.Equal((disc * 18 * 150 + (disc * 190 - lens * 170) * 8) / (disc * 18 + (disc - lens) * 8), gone.Centroid.X, 1e-2);
        Assert.Equal(150, gone.Centroid.Y, 1e-2);

        static ThinnedArea Round(double x, double leftMm) => new("pocket", "", Region.Inside(Shapes.Circle(x, 150, r, 720)), leftMm, "");
    }

    [Fact]
    public void What_cuts_reach_beyond_the_part_or_over_its_holes_is_not_taken_off()
    {
        // A pocket over the plate's corner, half of it outside; a quarter of what is inside lies over a hole.
        var gone = Assert.Single(CutAways.Of(
            new(Plate, [Shapes.Rectangle(10, 10, 25, 25)], []), 30,
            [new("pocket", "", Region.Inside(Shapes.Rectangle(-50, 0, 100, 50)), 20, "")],
            Region.Empty, []));
        Assert.Equal((50 * 50 - 25 * 25) * 10, gone.VolumeMm3, 1e-6);
        Assert.Equal((50.0 * 50 * 25 - 25 * 25 * 22.5) / (50 * 50 - 25 * 25), gone.Centroid.X, 1e-6);
    }

    [Fact]
    public void A_recess_of_unknown_depth_is_half_the_thickness_deep()
    {
        var ground = Ground(null, Recess with { DepthMm = null });
        Assert.Equal((3.6e6 - 50 * 200 * 15) * 1e-9 * 700 * Gravity, ground.WeightN, 1e-6);
    }

    [Fact]
    public void A_program_takes_off_what_its_tool_sweeps()
    {
        // A slot of 12 mm, 200 long and 18 deep, round at both ends; and one of 100 mm right through.
        var ground = Ground("G0 X100 Y100 Z9\nG1 Z-18\nX300\nG0 Z9\nX100 Y200\nG1 Z-31\nX200\nG0 Z9\n");
        var gone = (200 * 12 + Math.PI * 36) * 18 + (100 * 12 + Math.PI * 36) * 30;
        // Within a thousandth of what is gone: the swept area is never too small.
        Assert.Equal(1, (3.6e6 - ground.WeightN / Gravity / 700 * 1e9) / gone, 2e-3);
    }

    [Fact]
    public void The_layout_file_keeps_what_is_gone()
    {
        var job = Made(null, Pocket, Recess);
        var result = Planning.Plan(job, new Effort(2, null), null, TestContext.Current.CancellationToken);
        Assert.NotNull(result.Layout?.Holding);
        var read = LayoutJson.ToPlan(LayoutJson.Read("layout.json", LayoutJson.Write(result)).Value!).Job.Part;
        Assert.Equal([(1.6e5, false), (6e4, true)], read.CutAway.Select(c => (c.VolumeMm3, c.IsGone)));
        Assert.Equal(new Point2(80, 60), read.CutAway[0].Centroid);
    }

    private static HoldingGround Ground(string? moves, params CutOperation[] operations)
    {
        var job = Made(moves, operations);
        return HoldingGround.Of(job.Part, job.Shop, 2)!;
    }

    private static Job Made(string? moves, params CutOperation[] operations)
    {
        Drawing drawing = new(
            "part.dxf", "DXF", "millimetre", 1, 0.05,
            [
                new("PART", Plate), new("POCKET", Shapes.Rectangle(30, 20, 100, 80)), new("RECESS", Shapes.Rectangle(300, 50, 50, 200)),
            ], [], [], []);
        var job = Shapes.JobFor(new(Plate, [], []), Shapes.Board(900, 720, portSpacing: 60), [Shapes.Pod(60, 60)], 110);
        var tools = Posted.Tools(new Tool(1, 12, new CutterForm.Flat()));
        var path = moves is null ? null : Posted.Read("G21 G90 G17\nT1 M6\nM3 F900\n" + moves + "M2\n").Value;
        // Along the outline, so that something is known of the cutter; it takes nothing off the part.
        CutOperation outline = new(CutKind.ThroughProfile, new CutLines.Outline(), "$.cuts[9]") { Side = CutSide.Outside, ToolDiameterMm = 12 };
        var outcome = Machining.Apply(
            job, drawing, new([.. operations, .. path is null ? [outline] : Array.Empty<CutOperation>()],
                path is null ? null : new("part.nc", tools, ZZero.PartFace, default, null, false), 0.1, 2, null), path, "job.json");
        Assert.True(outcome.Succeeded, outcome.Refusal?.ToString());
        return outcome.Value;
    }
}

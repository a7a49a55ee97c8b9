using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using PodLayout.Findings;
using PodLayout.Forces;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Programs;
using PodLayout.Reading;
using PodLayout.Tests.Programs;
using PodLayout.Woods;

namespace PodLayout.Tests.Forces;

public class LoadingTests
{
    private static readonly Tool Mill = new(1, 12, new CutterForm.Flat());

    // Forces that need no wood: 30 N/mm2 in all directions, straight flutes.
    private static readonly CutterSetup Plain = new("$.cutter") { CuttingForceNPerMm2 = 30, Helix = CutterHelix.Straight, Flutes = 2, SpindleRpm = 18_000, FeedMmPerMin = 6000 };

    [Fact]
    public void A_job_that_names_no_cut_is_taken_to_be_cut_out_along_its_outline_and_holes()
    {
        var loads = Loads(new([], null, 0.1, 2, null), null, [Shapes.Circle(200, 150, 40, 90)]);
        Assert.Equal(["outline", "holes"], loads.Passes.Select(p => p.Name));
        Assert.True(loads.AreAssumed);
        Assert.False(Loads(new([Slot(200, 6)], null, 0.1, 2, null), null).AreAssumed);
        Assert.Contains(loads.Assumptions, a => a.StartsWith("The job names no cut", StringComparison.Ordinal));
        // The tool's centre runs 6 mm outside the outline of 400 x 300 and 6 mm inside the hole.
        Assert.All(loads.Points.Where(p => p.Pass == 0), p => Assert.Equal(6, OutsideBox(p.OnPart), 0.05));
        Assert.All(loads.Points.Where(p => p.Pass == 1), p => Assert.Equal(34, (p.OnPart - new Point2(200, 150)).Length, 0.1));
        Assert.All(loads.Passes, p => Assert.True(p.PeakN > 2 * p.LeastPeakN && p.LeastPeakN > 0));
    }

    [Fact]
    public void Points_come_every_ten_millimetres_or_so_all_along_the_cut()
    {
        var loads = Loads(new([], null, 0.1, 2, null), null);
        var around = 2 * (400 + 300) + 2 * Math.PI * 6;
        Assert.InRange(loads.Points.Length, around / 10 * 0.9, around / 10 * 1.3);
        for (var x = 0.0; x <= 400; x += 5)
        {
            Assert.True(loads.Points.Min(p => (p.OnPart - new Point2(x, -6)).Length) <= 15);
        }
    }

    [Fact]
    public void A_slot_takes_the_force_of_its_chip_whichever_way_it_is_given()
    {
        // 6 mm deep in both: chip 1/6 mm, 30 N/mm2: 30 N along the cut and up to 0.6 of that across it.
        var expected = 30 * Math.Sqrt(1 + 0.36);
        var byOperation = Loads(new([Slot(200, 6)], null, 0.1, 2, null) { Cutter = Plain }, null);
        // The peak is the largest of the forces that are reckoned with: corners of a figure around all that may happen.
        Assert.InRange(byOperation.Passes.Single().PeakN, expected, 1.03 * expected);
        Assert.Equal(byOperation.Points.Max(Peak), byOperation.Passes.Single().PeakN, 1e-9);
        var byProgram = Loads(Request(Plain), Read("G0 X50 Y150 Z5\nG1 Z-6 F6000\nX350\nG0 Z5"));
        var along = byProgram.Points.Where(p => p.OnPart.X > 70);
        // The corners lie around what may happen, never within, and not far out.
        Assert.All(along, p => Assert.InRange(Peak(p), expected, 1.15 * expected));
        // The middle of what is cut of a part of 30 mm.
        Assert.All(along, p => Assert.Equal(27, p.HeightMm, 1e-3));
    }

    [Fact]
    public void Each_pass_of_a_program_cuts_only_what_the_passes_before_it_left()
    {
        var text = new StringBuilder("G0 X50 Y150 Z5\n");
        for (var depth = 6; depth <= 24; depth += 6)
        {
            text.Append(CultureInfo.InvariantCulture, $"G1 Z-{depth} F6000\nX{(depth % 12 == 0 ? 50 : 350)}\n");
        }

        var loads = Loads(Request(Plain), Read(text + "G0 Z5"));
        Assert.All(loads.Points.Where(p => p.OnPart.X is > 70 and < 330), p => Assert.InRange(Peak(p), 30 * Math.Sqrt(1.36), 1.15 * 30 * Math.Sqrt(1.36)));
        Assert.All(loads.Points.Where(p => p.OnPart.X is > 70 and < 330), p => Assert.Contains(p.HeightMm, new[] { 27.0, 21, 15, 9 }));
    }

    [Fact]
    public void A_pass_through_air_puts_no_force_on_the_part()
    {
        const string Once = "G0 X50 Y150 Z5\nG1 Z-6 F6000\nX350\nG0 Z5\n";
        var once = Loads(Request(Plain), Read(Once + "G0 X-100 Y-100\nG1 Z-6\nX-90\nG0 Z5"));
        var twice = Loads(Request(Plain), Read(Once + "G0 X50 Y150\nG1 Z-6\nX350\nG0 Z5\nG0 X-100 Y-100\nG1 Z-6\nX-90\nG0 Z5"));
        Assert.Equal(once.Points.Length, twice.Points.Length);
        Assert.Equal(once.Passes[0].PeakN, twice.Passes[0].PeakN, 1e-9);
        Assert.All(once.Points, p => Assert.InRange(p.OnPart.X, 0, 400));
    }

    [Fact]
    public void A_line_in_a_thousand_short_moves_loads_the_part_as_the_line_does()
    {
        var moves = string.Concat(Enumerable.Range(1, 1500).Select(i => string.Create(CultureInfo.InvariantCulture, $"X{50 + 0.2 * i:0.###}\n")));
        var (line, many) = (Loads(Request(Plain), Read("G0 X50 Y150 Z5\nG1 Z-6 F6000\nX350\nG0 Z5")), Loads(Request(Plain), Read($"G0 X50 Y150 Z5\nG1 Z-6 F6000\n{moves}G0 Z5")));
        Assert.Equal(line.Passes[0].PeakN, many.Passes[0].PeakN, 1e-6);
        Assert.Equal(line.Points.Length, many.Points.Length, 2.0);
    }

    [Fact]
    public void However_long_the_program_the_points_stay_few_and_the_worst_is_among_them()
    {
        var text = new StringBuilder("G0 X0 Y0 Z5\nG1 Z-2 F6000\n");
        for (var row = 0; row <= 60; row++)
        {
            text.Append(CultureInfo.InvariantCulture, $"Y{row * 5}\nX{(row % 2 == 0 ? 400 : 0)}\n");
        }

        // One stretch three times as fast: three times the chip.
        var loads = Loads(Request(Plain), Read(text + "G0 Z5\nX200 Y150\nG1 Z-12 F6000\nX230 F18000\nG0 Z5"));
        Assert.InRange(loads.Points.Length, 100, 1600);
        Assert.Contains(loads.Points, p => Peak(p) > 30 * 3 * 10 / 6.0 && (p.OnPart - new Point2(215, 150)).Length < 30);
    }

    [Theory]
    [InlineData(CutterHelix.UpCut, 0, 1)]
    [InlineData(CutterHelix.DownCut, -1, 0)]
    [InlineData(CutterHelix.Compression, -1, 1)]
    [InlineData(null, -1, 1)]
    [InlineData(CutterHelix.Straight, 0, 0)]
    public void Flutes_lift_or_press_as_they_are_wound(CutterHelix? helix, int down, int up)
    {
        var forces = Loads(new([Slot(200, 6)], null, 0.1, 2, null) { Cutter = Plain with { Helix = helix } }, null).Points[0].Forces;
        // 30 N along the cut at 30 degrees of helix.
        Assert.Equal((down * 17.32, up * 17.32), (forces.Min(f => f.ZN), forces.Max(f => f.ZN)), Near);
    }

    [Fact]
    public void Given_forces_are_taken_as_they_are()
    {
        var given = new CutterSetup("$.cutter") { TangentialN = 80, NormalN = 20, AxialN = 15, Helix = CutterHelix.UpCut, Milling = MillingDirection.Climb };
        var loads = Loads(new([Slot(200, 6)], null, 0.1, 2, null) { Cutter = given }, null);
        Assert.All(loads.Points.SelectMany(p => p.Forces), f => Assert.Equal(Math.Sqrt(80 * 80 + 20 * 20), Math.Sqrt(f.XN * f.XN + f.YN * f.YN), 1e-9));
        Assert.Equal(Math.Sqrt(80 * 80 + 20 * 20 + 15 * 15), loads.Passes[0].PeakN, 1e-9);
    }

    [Fact]
    public void Cutting_denser_wood_takes_more_force()
    {
        CutRequest request = new([Slot(200, 6)], null, 0.1, 2, null);
        double With(string species) => Loads(request, null, wood: Wood.Of(WoodTable.Find(species)!)).Passes[0].PeakN;
        // The force goes with the density: 706 kg/m3 against 392 kg/m3.
        Assert.Equal(0.63 / 0.35, With("hard maple") / With("eastern white pine"), 1e-6);
    }

    [Fact]
    public void A_tool_wider_than_the_part_is_refused_where_it_stands()
    {
        var refusal = Apply(new([Slot(200, 6) with { ToolDiameterMm = 301 }], null, 0.1, 2, null), null, [], null).Refusal!;
        Assert.Equal(("tool-wider-than-part", "job.json $.cuts[0].toolDiameterMm"), (refusal.Code, refusal.Place?.ToString()));
    }

    [Fact]
    public void Grooves_that_are_in_the_underside_already_put_no_force_on_the_part()
    {
        CutOperation groove = new(CutKind.GrooveInUnderside, new CutLines.OfLayer("SLOT"), "$.cuts[0]") { ToolDiameterMm = 8 };
        Assert.Equal(["outline"], Loads(new([groove], null, 0.1, 2, null), null).Passes.Select(p => p.Name));
    }

    private static readonly IEqualityComparer<(double, double)> Near =
        EqualityComparer<(double A, double B)>.Create((a, b) => Math.Abs(a.A - b.A) < 0.05 && Math.Abs(a.B - b.B) < 0.05);

    private static double Peak(PathLoad load) => load.Forces.Max(f => Math.Sqrt(f.XN * f.XN + f.YN * f.YN));

    private static double OutsideBox(Point2 p)
    {
        double x = Math.Max(-p.X, p.X - 400), y = Math.Max(-p.Y, p.Y - 300);
        return x > 0 && y > 0 ? Math.Sqrt(x * x + y * y) : Math.Max(x, y);
    }

    private static CutOperation Slot(double lengthMm, double depthMm) => new(CutKind.ThroughProfile, new CutLines.OfLayer("SLOT"), "$.cuts[0]")
    {
        Side = CutSide.On,
        ToolDiameterMm = 12,
        LowestTipMm = 30 - depthMm,
        Name = $"slot of {lengthMm} mm",
    };

    private static CutRequest Request(CutterSetup cutter) =>
        new([], new("part.nc", Posted.Tools(Mill), ZZero.PartFace, default, null, false), 0.1, 2, null) { Cutter = cutter };

    private static ToolPath Read(string text) => Posted.Read("G21 G90 G17\nT1 M6\nS18000 M3\n" + text + "\nM30\n", new() { Tools = Posted.Tools(Mill) }).Value!;

    private static CutterLoads Loads(CutRequest request, ToolPath? path, ImmutableArray<Ring>? holes = null, Wood? wood = null)
    {
        var outcome = Apply(request, path, holes ?? [], wood);
        Assert.True(outcome.Succeeded, outcome.Refusal?.ToString());
        return outcome.Value;
    }

    private static Outcome<CutterLoads> Apply(CutRequest request, ToolPath? path, ImmutableArray<Ring> holes, Wood? wood)
    {
        var outline = Shapes.Rectangle(0, 0, 400, 300);
        var job = Shapes.JobFor(new(outline, holes, []), Shapes.Board(1200, 900), [Shapes.Pod(60, 60)], 60);
        job = wood is null ? job : job with { Part = job.Part with { Wood = wood } };
        Drawing drawing = new(
            "part.dxf", "DXF", "millimetre", 1, 0.05, [new("PART", outline)],
            [new("SLOT", [new(100, 150), new(300, 150)], null, null)], [], []);
        return Loading.Of(job, drawing, request, path, "job.json");
    }
}

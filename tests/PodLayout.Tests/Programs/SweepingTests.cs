using System.Globalization;
using System.Text;
using System.Text.Json;
using PodLayout.Geometry;
using PodLayout.Programs;

namespace PodLayout.Tests.Programs;

public class SweepingTests
{
    private const double Thickness = 20;

    // What is swept may be larger than the truth by this share, never smaller (apart from rounding).
    private const double Grown = 1e-4;

    // The same where chords stand for an arc.
    private const double GrownAlongArcs = 2e-4;

    private static readonly Tool Mill = new(1, 12, new CutterForm.Flat());

    [Fact]
    public void A_straight_cut_sweeps_a_stadium() =>
        Near(100 * 12 + Math.PI * 36, Cut("G0 X0 Y0 Z-21\nG1 X60 Y80").Swept.AreaMm2);

    [Fact]
    public void A_whole_circle_sweeps_a_ring_and_a_small_one_a_disc()
    {
        Near(Math.PI * (26 * 26 - 14 * 14), Cut("G0 X20 Y0 Z-21\nG3 I-20").Swept.AreaMm2);
        Near(Math.PI * 9 * 9, Cut("G0 X3 Y0 Z-21\nG2 I-3").Swept.AreaMm2);
    }

    [Theory]
    [InlineData(50, 90)]
    [InlineData(50, 200)]
    [InlineData(7, 120)]
    [InlineData(400, 35)]
    public void An_arc_sweeps_a_piece_of_a_ring_with_round_ends(double radius, double degrees)
    {
        var turn = degrees * Math.PI / 180;
        var end = string.Create(CultureInfo.InvariantCulture, $"X{radius * Math.Cos(turn):0.00000000} Y{radius * Math.Sin(turn):0.00000000}");
        var swept = Cut($"G0 X{radius.ToString(CultureInfo.InvariantCulture)} Y0 Z-21\nG3 {end} I{(-radius).ToString(CultureInfo.InvariantCulture)}").Swept;
        // Width 12 along the arc, and two half discs of radius 6.
        Near(radius * turn * 12 + Math.PI * 36, swept.AreaMm2, GrownAlongArcs);
    }

    [Fact]
    public void A_drilled_hole_is_a_disc() =>
        Near(Math.PI * 36, Cut("G0 X0 Y0 Z5\nG81 X40 Y30 Z-22 R2").Swept.AreaMm2);

    [Fact]
    public void A_ramp_counts_from_where_it_passes_the_height()
    {
        // From Z 0 to -40 over 100 mm; the underside is at -20 and tips count from 0.1 mm above it, so from 49.75 mm on.
        var cut = Cut("G0 X0 Y0 Z0\nG1 X100 Z-40");
        Near((100 - 49.75) * 12 + Math.PI * 36, cut.Swept.AreaMm2);
        Assert.Equal(49.75 - 6, cut.Swept.Bounds.MinX, 2);
        Assert.Equal(-20, cut.LowestTipMm);
    }

    [Fact]
    public void A_helix_counts_from_where_it_passes_the_height()
    {
        // One turn on radius 50 from -15 to -25: the part below -19.9 is the last 51 %.
        var turn = 2 * Math.PI * 0.51;
        Near(50 * turn * 12 + Math.PI * 36, Cut("G0 X50 Y0 Z-15\nG3 I-50 Z-25").Swept.AreaMm2, GrownAlongArcs);
    }

    [Fact]
    public void An_upright_arc_counts_where_it_hangs_below_the_height()
    {
        // In the plane of Z and X, through (0, -15), (15, -30) and (30, -15): below -19.9 it is 2 sqrt(15^2 - 4.9^2) long.
        var wide = 2 * Math.Sqrt(15 * 15 - 4.9 * 4.9);
        var cut = Cut("G0 X0 Y0 Z-15\nG18 G2 X30 Z-15 I15 K0");
        Near(wide * 12 + Math.PI * 36, cut.Swept.AreaMm2, 1e-3);
        Assert.Equal(-10, cut.LowestTipMm, 9);
    }

    [Fact]
    public void A_tool_that_narrows_sweeps_what_it_is_wide_at_the_height()
    {
        // The tip 3 mm below the height that counts. By Pythagoras, sqrt(6^2 - 3^2) and 2 + sqrt(4^2 - 1^2); 3 tan 45.
        (CutterForm Form, double Half)[] forms =
        [
            (new CutterForm.Flat(), 6),
            (new CutterForm.Ball(), Math.Sqrt(27)),
            (new CutterForm.Bull(4), 2 + Math.Sqrt(15)),
            (new CutterForm.Vee(90), 3),
        ];
        foreach (var (form, half) in forms)
        {
            // The radius is rounded up to a thirty-second.
            Assert.InRange(Cut("G0 X0 Y0 Z-22.9\nG1 X100", new Tool(1, 12, form)).Swept.Bounds.MaxY, half, half + 6.0 / 32 + 0.01);
        }
    }

    [Fact]
    public void Fifty_random_paths_agree_with_an_independent_library()
    {
        using var recorded = JsonDocument.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Programs", "Reference", "geos-sweeps.json")));
        var sweeps = recorded.RootElement.GetProperty("sweeps");
        Assert.Equal(50, sweeps.GetArrayLength());
        foreach (var sweep in sweeps.EnumerateArray())
        {
            var points = sweep.GetProperty("points").EnumerateArray().Select(p => (X: p[0].GetDouble(), Y: p[1].GetDouble())).ToArray();
            var text = new StringBuilder("G0 Z-21 ");
            foreach (var (x, y) in points)
            {
                text.Append(CultureInfo.InvariantCulture, $"X{x} Y{y}\nG1 ");
            }

            var cut = Cut(text + "Z5", new Tool(1, 2 * sweep.GetProperty("radiusMm").GetDouble(), new CutterForm.Flat()));
            Near(sweep.GetProperty("areaMm2").GetDouble(), cut.Swept.AreaMm2);
            var bounds = sweep.GetProperty("bounds").EnumerateArray().Select(b => b.GetDouble()).ToArray();
            Assert.Equal(bounds[0], cut.Swept.Bounds.MinX, 0.003);
            Assert.Equal(bounds[3], cut.Swept.Bounds.MaxY, 0.003);
        }
    }

    [Fact]
    public void Many_short_moves_are_simplified_and_no_tool_position_is_lost()
    {
        const int Moves = 20_000;
        var text = new StringBuilder("G0 X400 Y0 Z-21\n");
        var tips = new List<Point2>();
        for (var i = 1; i <= Moves; i++)
        {
            var t = 4 * Math.PI * i / Moves;
            var r = 300 + 60 * Math.Cos(3 * t) + 20 * Math.Sin(7 * t);
            tips.Add(new(Math.Round(r * Math.Cos(t), 4), Math.Round(r * Math.Sin(t), 4)));
            text.Append(CultureInfo.InvariantCulture, $"G1 X{tips[^1].X:0.0000} Y{tips[^1].Y:0.0000}\n");
        }

        var swept = Cut(text.ToString()).Swept;
        Assert.True(swept.Boundary.Sum(b => b.Points.Length) < Moves);
        var index = new RegionIndex(swept);
        foreach (var tip in tips.Where((_, i) => i % 5 == 0))
        {
            for (var k = 0; k < 64; k++)
            {
                // Every point of the tool's edge, a thousandth of a micrometre inside it.
                var edge = tip + new Point2(Math.Cos(k * Math.PI / 32), Math.Sin(k * Math.PI / 32)) * (6 - 1e-6);
                Assert.True(index.Contains(edge));
            }
        }
    }

    [Fact]
    public void No_position_of_the_tool_is_lost_whatever_the_path()
    {
        for (var seed = 0; seed < 30; seed++)
        {
            var random = new Random(seed);
            var path = Posted.Read(RandomProgram(random)).Value!;
            var tool = new Tool(1, 2 + 10 * random.NextDouble(), new CutterForm.Flat());
            var setting = Setting(tool);
            var cuts = Sweeping.Of(path, setting).Value!;
            var index = new RegionIndex(cuts.Count == 0 ? Region.Empty : cuts[0].Swept);
            foreach (var stretch in path.Stretches)
            {
                for (var i = 0; i <= 40; i++)
                {
                    // Independent of the sweep: only the moves' own points.
                    var tip = stretch.At(i / 40.0);
                    var angle = 2 * Math.PI * random.NextDouble();
                    var edge = new Point2(tip.XMm, tip.YMm) + new Point2(Math.Cos(angle), Math.Sin(angle)) * (tool.DiameterMm / 2 - 1e-6);
                    Assert.True(tip.ZMm >= -Thickness + 0.1 - 1e-9 || index.Contains(edge));
                }
            }
        }
    }

    [Theory]
    [InlineData(ZZero.PartFace, -20)]
    [InlineData(ZZero.PartUnderside, 0)]
    [InlineData(ZZero.PodFace, 0)]
    [InlineData(ZZero.BoardFace, 50)]
    public void The_height_of_the_underside_follows_from_where_zero_lies(ZZero zero, double z)
    {
        var setting = Setting(Mill) with { ZZero = zero };
        Assert.Equal((z, z + 20, z - 50), (setting.UndersideZMm, setting.FaceZMm, setting.BoardZMm));
    }

    [Fact]
    public void An_offset_moves_the_cut_into_the_drawing()
    {
        var path = Posted.From(0, 0, -21, "M3 F100 T1 M6\nG1 X10");
        var cut = Sweeping.Of(path, Setting(Mill) with { Offset = new(100, -50) }).Value![0];
        Assert.Equal((new Point2(100, -50), new Point2(110, -50)), (cut.TipPaths[0][0], cut.TipPaths[0][^1]));
    }

    [Fact]
    public void A_tool_that_is_not_in_the_table_is_refused_with_line_and_number()
    {
        var path = Posted.From(0, 0, 0, "T1 M6\nG0 X1\nT7 M6\nG0 X2");
        var refusal = Sweeping.Of(path, Setting(Mill)).Refusal!;
        Assert.Equal(("tool-missing", "part.nc:4"), (refusal.Code, refusal.Place?.ToString()));
        Assert.Contains("tool 7", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_line_that_comes_nearest_to_a_point_is_found()
    {
        var path = Posted.From(0, 0, -21, "T1 M6\nM3 F100\nG1 X100\nY100\nX0\nY0");
        var (stretch, distance) = Sweeping.Nearest(path, Setting(Mill), new(95, 60))!.Value;
        Assert.Equal((4, 1, -1), (stretch.Line, stretch.ToolNumber, Math.Round(distance, 9)));
    }

    [Fact]
    public void Rapids_below_the_face_over_the_part_are_named_and_ways_out_of_a_hole_are_not()
    {
        var shape = new PodLayout.Parts.PartShape(Shapes.Rectangle(0, 0, 200, 100), [], []);
        var path = Posted.From(0, 0, 50, "T1 M6\nM3 F100\nG0 X50 Y50\nZ-5\nG1 Z-10\nG0 X80\nZ5\nG0 X400\nZ-30\nX300\nZ50\nG83 X20 Y20 Z-20 R1 Q3\nG0 Z-1");
        var found = LowRapids.Of(path, Setting(Mill), shape);
        Assert.Equal(["part.nc:4", "part.nc:6", "part.nc:13"], found.Select(f => f.Place!.ToString()));
        Assert.Contains("passes 10 mm below", found[1].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Extents_depths_lengths_and_times_are_told_by_tool()
    {
        var path = Posted.From(0, 0, 10, "T1 M6\nM3 F600\nG1 Z-3\nX60 F1200\nG2 X60 Y20 J10 F600\nT2 M6\nM3\nG0 X0 Y0\nG81 X5 Y5 Z-8 R2 F300");
        var uses = ToolUses.Of(path);
        Assert.Equal((1, -3.0, 3, 10.0), (uses[0].ToolNumber, uses[0].LowestZMm, uses[0].LowestLine, uses[0].HighestZMm));
        Assert.Equal(new Box2(0, 0, 60, 20), uses[0].Extent with { MaxX = Math.Min(60, uses[0].Extent.MaxX) });
        Assert.Equal(13 + 60 + Math.PI * 10, uses[0].FedMm, 9);
        Assert.Equal(60 * (13 / 600.0 + 60 / 1200.0 + Math.PI * 10 / 600), uses[0].CuttingSeconds, 9);
        Assert.Equal((2, -8.0, 9, 10.0), (uses[1].ToolNumber, uses[1].LowestZMm, uses[1].LowestLine, uses[1].FedMm));
    }

    private static ProgramSetting Setting(Tool tool) =>
        new(Posted.Tools(tool), ZZero.PartFace, Thickness, 50, 0.1, default);

    private static ToolCut Cut(string text, Tool? tool = null)
    {
        var path = Posted.Read("G21 T1 M6\nM3 F1000\n" + text + "\nM2").Value!;
        return Sweeping.Of(path, Setting(tool ?? Mill)).Value!.Single();
    }

    private static void Near(double exact, double found, double share = Grown) =>
        Assert.InRange(found, exact * (1 - 1e-9), exact * (1 + share));

    private static string RandomProgram(Random random)
    {
        var text = new StringBuilder("G21 T1 M6\nM3 F1000\nG0 X0 Y0 Z-19\n");
        double x = 0, y = 0;
        for (var i = 0; i < 60; i++)
        {
            var z = -19 - 3 * random.NextDouble();
            double centreX = random.Next(-30, 30), centreY = random.Next(1, 30);
            switch (random.Next(4))
            {
                case 0:
                    text.Append(CultureInfo.InvariantCulture, $"G{random.Next(2, 4)} I{centreX} J{centreY} Z{z:0.000}\n");
                    break;
                case 1:
                    // Half a turn: the end lies as far beyond the centre.
                    (x, y) = (x + 2 * centreX, y + 2 * centreY);
                    text.Append(CultureInfo.InvariantCulture, $"G{random.Next(2, 4)} X{x} Y{y} I{centreX} J{centreY} Z{z:0.000}\n");
                    break;
                default:
                    (x, y) = (random.Next(-100, 100), random.Next(-100, 100));
                    text.Append(CultureInfo.InvariantCulture, $"G1 X{x} Y{y} Z{z:0.000}\n");
                    break;
            }
        }

        return text + "M2";
    }
}

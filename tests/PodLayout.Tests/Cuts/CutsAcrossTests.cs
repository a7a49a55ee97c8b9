using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Cuts;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Programs;
using PodLayout.Reading;
using PodLayout.Tests.Programs;

namespace PodLayout.Tests.Cuts;

/// <summary>A plate of 600 x 400 mm with a hole of 100 x 80 mm at (250, 160), cut out by a program of a 12 mm tool.</summary>
public class CutsAcrossTests
{
    private static readonly Ring Plate = Shapes.Rectangle(0, 0, 600, 400);
    private static readonly Ring Hole = Shapes.Rectangle(250, 160, 100, 80);

    // Line 4 is the way around the plate, line 7 that within the hole; corners are cut square, so nothing of the plate is touched.
    private const string Program = """
        G21 G90 G17 T1 M6 M3 F6000
        G0 X-6 Y-6 Z9
        G1 Z-21
        Y406 X-6
        X606
        Y-6
        X-6
        G0 Z9
        X256 Y166
        G1 Z-21
        Y234
        X344
        Y166
        X256
        G0 Z9
        M2
        """;

    [Fact]
    public void A_program_on_the_right_side_of_its_lines_draws_no_warning() => Assert.Empty(Told(Program, default));

    [Theory]
    [InlineData(0.4)]
    [InlineData(-0.4)]
    public void A_cut_that_is_off_by_less_than_a_worn_tool_draws_no_warning(double mm) => Assert.Empty(Told(Program, new(mm, 0)));

    [Fact]
    public void An_offset_mistyped_by_fifty_millimetres_is_warned_about_with_line_tool_and_place()
    {
        var told = Told(Program, new(50, 0));
        Assert.All(told, f => Assert.Equal(Severity.Warning, f.Severity));
        // The left side of the way, now from X 38 to 50, cuts a strip off the plate along its 400 mm: the line that drives it is 4.
        var outline = Assert.Single(told, f => f.Message.Contains("its outline is cut into", StringComparison.Ordinal));
        Assert.Equal("part.nc:4", outline.Place?.ToString());
        Assert.StartsWith("tool 1 cuts through the finished part about (4", outline.Message, StringComparison.Ordinal);
        // The strip on the left, the rest, and what the hole's way now cuts off beside the hole as drawn.
        Assert.Contains("the part falls into 3 pieces", outline.Message, StringComparison.Ordinal);
        // 12 mm x 400 mm, less the half millimetre at each edge.
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"takes {12 * 399 / 100.0:0.##} cm2"), outline.Message, StringComparison.Ordinal);
        // The hole's way reaches 50 mm too far to the right.
        Assert.Single(told, f => f.Message.Contains("inside its outline", StringComparison.Ordinal));
    }

    [Fact]
    public void A_hole_that_is_cut_larger_than_drawn_is_warned_about()
    {
        var told = Assert.Single(Told(Program.Replace("X344", "X349", StringComparison.Ordinal), default));
        Assert.Equal(("cut-across-part", Severity.Warning), (told.Code, told.Severity));
        // 5 mm wide, less the half millimetre that a cut may pass its line; there the tool's round corners stand 1.5 mm beyond its centre.
        var high = 80 - 2 * (6 - Math.Sqrt(6 * 6 - 1.5 * 1.5));
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"(4.5 x {high:0.#} mm)"), told.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Drilled_holes_that_are_not_drawn_are_listed_in_a_note()
    {
        var told = Assert.Single(Told(Program.Replace("M2", "G99 G81 X60 Y60 Z-22 R2\nX540\nG80\nM2", StringComparison.Ordinal), default));
        Assert.Equal(("hole-not-drawn", Severity.Note, "part.nc:16"), (told.Code, told.Severity, told.Place?.ToString()));
        Assert.Contains("tool 1 cuts 2 holes through the wood that the drawing does not have, up to 12 mm wide", told.Message, StringComparison.Ordinal);
        Assert.Contains("(60, 60)", told.Message, StringComparison.Ordinal);
        Assert.Contains("(540, 60)", told.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_hole_drilled_at_the_very_edge_is_a_warning()
    {
        var told = Assert.Single(Told(Program.Replace("M2", "G99 G81 X3 Y60 Z-22 R2\nG80\nM2", StringComparison.Ordinal), default));
        Assert.Equal(("cut-across-part", Severity.Warning), (told.Code, told.Severity));
    }

    [Theory]
    [InlineData(true, 0)]
    [InlineData(false, 1)]
    public void A_slit_within_the_wood_is_meant_where_it_is_drawn(bool isDrawn, int warnings)
    {
        var slit = Program.Replace("M2", "G0 X100 Y100\nG1 Z-21\nX200\nG0 Z9\nM2", StringComparison.Ordinal);
        ImmutableArray<OpenContour> lines = isDrawn ? [new("SLIT", [new(100, 100), new(200, 100)], null, null)] : [];
        Assert.Equal(warnings, Told(slit, default, lines).Count);
    }

    [Fact]
    public void A_slit_that_an_operation_states_is_meant()
    {
        var slit = Program.Replace("M2", "G0 X100 Y100\nG1 Z-21\nX200\nG0 Z9\nM2", StringComparison.Ordinal);
        CutOperation drill = new(CutKind.ThroughProfile, new CutLines.OfLayer("SLIT"), "$.cuts[0]") { Side = CutSide.On, ToolDiameterMm = 12, LowestTipMm = -1 };
        Assert.Empty(Told(slit, default, [new("SLIT", [new(100, 100), new(200, 100)], null, null)], drill));
    }

    [Fact]
    public void What_leaves_wood_below_it_cuts_across_nothing()
    {
        // A pocket 18 mm deep in 20 mm, right across the plate.
        var across = Program.Replace("M2", "G0 X-20 Y300\nG1 Z-18\nX620\nG0 Z9\nM2", StringComparison.Ordinal);
        Assert.Empty(Told(across, default));
    }

    [Fact]
    public void Many_places_are_told_up_to_a_few_and_then_counted()
    {
        var rows = string.Join('\n', Enumerable.Range(0, 9).Select(i => $"G0 X20 Y{20 + 15 * i}\nG1 Z-21\nX{100 + i}\nG0 Z9"));
        var told = Told(Program.Replace("M2", rows + "\nM2", StringComparison.Ordinal), default);
        Assert.Equal(7, told.Count);
        Assert.StartsWith("3 more smaller places", told[^1].Message, StringComparison.Ordinal);
    }

    private static IReadOnlyList<Finding> Told(
        string program, Point2 offset, ImmutableArray<OpenContour> lines = default, params ImmutableArray<CutOperation> operations)
    {
        Drawing drawing = new(
            "part.dxf", "DXF", "millimetre", 1, 0.05, [new("PART", Plate), new("HOLE", Hole)], lines.IsDefault ? [] : lines, [], []);
        var job = Shapes.JobFor(new(Plate, [Hole], []), Shapes.Board(900, 600), [Shapes.Pod(60, 60)], 60);
        job = job with { Part = job.Part with { ThicknessMm = 20 } };
        var tools = Posted.Tools(new Tool(1, 12, new CutterForm.Flat()));
        var path = Posted.Read(program, new() { Tools = tools }).Value!;
        var outcome = Cutting.Apply(
            job, drawing, new(operations, new("part.nc", tools, ZZero.PartFace, offset, null, false), 0.1, 2, null), path, "job.json");
        Assert.True(outcome.Succeeded, outcome.Refusal?.ToString());
        return [.. outcome.Findings.Where(f => f.Code is "cut-across-part" or "hole-not-drawn")];
    }
}

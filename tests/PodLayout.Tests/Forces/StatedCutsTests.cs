using System.Collections.Immutable;
using PodLayout.Findings;
using PodLayout.Forces;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Programs;
using PodLayout.Reading;
using PodLayout.Tests.Programs;

namespace PodLayout.Tests.Forces;

/// <summary>What a job states of its cutters, held against what can be and against what its program cuts: a part of 400 x 300 x 30 mm.</summary>
public class StatedCutsTests
{
    private static readonly Tool Mill = new(1, 12, new CutterForm.Flat());

    // Line 6 is a slot over the whole width of the tool, 8 mm deep; line 9 a way beside it that takes 4 mm more of the wood.
    private const string Slot = """
        G21 G90 G17
        T1 M6
        S18000 M3
        G0 X50 Y150 Z5
        G1 Z-8 F3000
        X350 F6000
        G0 Z5
        X50 Y154
        G1 Z-8 X51 F6000
        X350
        G0 Z5
        M30
        """;

    [Fact]
    public void What_is_stated_as_it_is_cut_draws_no_word()
    {
        Assert.Empty(Told(new("$.cutter") { PassDepthMm = 8 }, Slot));
        Assert.Empty(Told(new("$.cutter") { PassDepthMm = 8, WidthMm = 12 }, Slot));
        Assert.Empty(Told(new("$.cutter"), Slot));
    }

    [Fact]
    public void A_smaller_depth_than_the_program_cuts_is_warned_about_with_line_and_both_figures()
    {
        var told = Assert.Single(Told(new("$.cutter") { PassDepthMm = 3 }, Slot));
        Assert.Equal(("cut-above-stated", Severity.Warning, "part.nc:6"), (told.Code, told.Severity, told.Place?.ToString()));
        Assert.StartsWith("tool 1 cuts 8 mm deep here; passDepthMm says 3 mm", told.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_smaller_width_than_the_program_cuts_is_warned_about_with_line_and_both_figures()
    {
        var told = Assert.Single(Told(new("$.cutter") { WidthMm = 4 }, Slot));
        Assert.Equal(("cut-above-stated", Severity.Warning, "part.nc:6"), (told.Code, told.Severity, told.Place?.ToString()));
        Assert.StartsWith("tool 1 cuts about 12 mm wide here; widthMm says 4 mm", told.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_finishing_way_is_as_wide_as_the_wood_beside_the_slot()
    {
        // After a wide pass of another tool only 4 mm are left for this one.
        var finishing = Slot.Replace("T1 M6", "T2 M6", StringComparison.Ordinal).Replace("X50 Y154", "T1 M6\nX50 Y154", StringComparison.Ordinal);
        Assert.Empty(Told(new("$.program.tools[0].cutter") { WidthMm = 4 }, finishing, Mill with { Number = 2 }));
    }

    [Fact]
    public void Forces_that_are_given_need_no_depth() =>
        Assert.Empty(Told(new("$.cutter") { TangentialN = 50, PassDepthMm = 3 }, Slot));

    [Fact]
    public void A_program_that_feeds_more_than_any_edge_can_take_is_warned_about()
    {
        // 6000 mm a minute at 100 turns of 2 edges.
        var told = Assert.Single(Told(new("$.cutter"), Slot.Replace("S18000", "S100", StringComparison.Ordinal)));
        Assert.Equal(("chip-too-thick", Severity.Warning, "part.nc:6"), (told.Code, told.Severity, told.Place?.ToString()));
        Assert.Contains("30 mm for each cutting edge", told.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(1.0, null, "$.cutter.spindleRpm", "6000 mm a minute at 1 rpm is 3000 mm")]
    [InlineData(null, 190_000.0, "$.cutter.feedMmPerMin", "190000 mm a minute at 18000 rpm is 5.278 mm")]
    public void A_chip_that_cannot_be_is_refused_where_it_is_stated(double? rpm, double? feed, string path, string says)
    {
        var refusal = Apply(new([], null, 0.1, 2, null) { Cutter = new("$.cutter") { SpindleRpm = rpm, FeedMmPerMin = feed } }, null).Refusal!;
        Assert.Equal(("chip-too-thick", $"job.json {path}"), (refusal.Code, refusal.Place?.ToString()));
        Assert.Contains(says, refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_cut_wider_than_its_tool_is_refused_wherever_the_tool_stands()
    {
        CutRequest byProgram = new([], Program(new("$.program.tools[0].cutter") { WidthMm = 13 }), 0.1, 2, null);
        Assert.Equal("job.json $.program.tools[0].cutter.widthMm", Apply(byProgram, Slot).Refusal!.Place?.ToString());
        CutOperation operation = new(CutKind.ThroughProfile, new CutLines.Outline(), "$.cuts[0]")
        {
            ToolDiameterMm = 8,
            Side = CutSide.Outside,
            Cutter = new("$.cuts[0].cutter") { WidthMm = 9 },
        };
        Assert.Equal("job.json $.cuts[0].cutter.widthMm", Apply(new([operation], null, 0.1, 2, null), null).Refusal!.Place?.ToString());
        // Nothing is said of a diameter: 12 mm is reckoned with.
        Assert.Equal("job.json $.cutter.widthMm", Apply(new([], null, 0.1, 2, null) { Cutter = new("$.cutter") { WidthMm = 13 } }, null).Refusal!.Place?.ToString());
        Assert.Null(Apply(new([operation with { Cutter = null }], null, 0.1, 2, null) { Cutter = new("$.cutter") { WidthMm = 8 } }, null).Refusal);
    }

    [Fact]
    public void A_tool_larger_than_the_part_is_named()
    {
        CutOperation operation = new(CutKind.ThroughProfile, new CutLines.Outline(), "$.cuts[0]") { Name = "rim", ToolDiameterMm = 301, Side = CutSide.Outside };
        Assert.StartsWith("the tool of \"rim\" is 301 mm wide", Apply(new([operation], null, 0.1, 2, null), null).Refusal!.Message, StringComparison.Ordinal);
        var tools = Posted.Tools(Mill with { DiameterMm = 401 });
        CutRequest request = new([], new("part.nc", tools, ZZero.PartFace, default, null, false), 0.1, 2, null);
        Assert.StartsWith("tool 1 is 401 mm wide; the part is 400 x 300 mm", Apply(request, Slot).Refusal!.Message, StringComparison.Ordinal);
    }

    private static ImmutableArray<Finding> Told(CutterSetup setup, string program, params Tool[] others)
    {
        var isOfTool = setup.Path != "$.cutter";
        var outcome = Apply(
            new([], Program(isOfTool ? setup : null, others), 0.1, 2, null) { Cutter = isOfTool ? null : setup }, program, others);
        Assert.True(outcome.Succeeded, outcome.Refusal?.ToString());
        return outcome.Findings;
    }

    private static ProgramRequest Program(CutterSetup? setup, params Tool[] others) =>
        new("part.nc", Posted.Tools([Mill, .. others]), ZZero.PartFace, default, null, false)
        {
            Cutters = setup is null ? ImmutableSortedDictionary<int, CutterSetup>.Empty : ImmutableSortedDictionary<int, CutterSetup>.Empty.Add(1, setup),
        };

    private static Outcome<CutterLoads> Apply(CutRequest request, string? program, params Tool[] others)
    {
        var outline = Shapes.Rectangle(0, 0, 400, 300);
        var job = Shapes.JobFor(new(outline, [], []), Shapes.Board(1200, 900), [Shapes.Pod(60, 60)], 60);
        Drawing drawing = new("part.dxf", "DXF", "millimetre", 1, 0.05, [new("PART", outline)], [], [], []);
        return Loading.Of(job, drawing, request, program is null ? null : Posted.Read(program, new() { Tools = Posted.Tools([Mill, .. others]) }).Value, "job.json");
    }
}

using PodLayout.Findings;
using PodLayout.Parts;
using static PodLayout.Tests.Reading.Drawings;

namespace PodLayout.Tests.Reading;

/// <summary>Open lines beside closed rings: what is an engraving, and what is an edge that was not drawn to its end.</summary>
public class OpenLinesTests
{
    private static readonly string Square = Rectangle(0, 0, 200, 100);

    private static string Open(string layer, params (double X, double Y)[] points) =>
        Closed(layer, points).Replace(" 70 1 ", " 70 0 ", StringComparison.Ordinal);

    /// <summary>A part of 200 x 100 mm with lines that are no edge.</summary>
    public static TheoryData<string> Engraved() =>
    [
        Dxf(Square + Line(20, 20, 180, 80)),
        Dxf(Square + Line(-10, 50, 210, 50) + Line(100, -10, 100, 110)),
        Dxf(Square + Line(-10, 50, 210, 50, "CENTER") + Line(100, -10, 100, 110, "CENTER")),
        Dxf(Square + Open("0", (40, 20), (60, 80), (80, 20), (100, 80))),
        Dxf(Square + "0 ARC 8 0 10 100 20 50 40 30 50 20 51 340 "),
        Dxf(Square + Line(20, 40, 180, 40) + Line(20, 41, 180, 41)),
        Dxf(Square + Line(0, -30, 200, -30, "DIM") + Line(0, 0, 0, -35, "DIM") + Line(200, 0, 200, -35, "DIM") + Line(230, 0, 230, 100, "DIM") + Line(200, 0, 235, 0, "DIM") + Line(200, 100, 235, 100, "DIM")),
        Dxf(Square + Line(0, -30, 200, -30)),
        Dxf(Square + Line(300, -100, 400, -100) + Line(300, -110, 400, -110) + Line(350, -90, 350, -120)),
        Dxf(Line(0, 0, 200, 0) + Line(200, 0, 200, 100) + Line(200, 100, 0, 100) + Line(0, 100, 0, 0) + Line(0, 0, 60, 40) + Line(200, 100, 150, 60)),
        Dxf(Square + Line(50, 0, 50, 100) + Line(0, 50, 200, 50)),
        Dxf(Square + Open("DIM", (50, 100), (50, 120), (150, 120), (150, 100))),
        Dxf(Square + Open("0", (50, 100), (50, 80), (150, 80), (150, 100))),
        Dxf(Square + Open("0", (50, 100), (52, 110), (48, 120))),
        Dxf(Square + Line(40, 40, 60, 40) + Line(60, 40, 60, 60) + Line(60, 40, 80, 40) + Line(60, 40, 60, 20)),
    ];

    [Theory]
    [MemberData(nameof(Engraved))]
    public void Open_lines_are_left_out_with_a_warning_where_the_rings_alone_make_a_part(string text)
    {
        var outcome = Part(text);
        Assert.True(outcome.Succeeded, string.Join('\n', outcome.Findings));
        Assert.Empty(outcome.Value.Holes);
        Assert.Equal(20000, outcome.Value.AreaMm2, 1e-6);
        Assert.Contains(outcome.Findings, f => f is { Code: "open-left-out", Severity: Severity.Warning });
    }

    /// <summary>Drawings whose outline or hole is open, so that another ring must not be taken for the part; and words of the refusal.</summary>
    public static TheoryData<string, string> Unfinished() => new()
    {
        { Dxf(Open("0", (0, 0), (200, 0), (200, 100), (0, 100), (0, 0.5)) + Circle(100, 50, 20)), "gap of 0.5 mm" },
        { Dxf(Open("OUTLINE", (0, 0), (200, 0), (200, 100), (0, 100), (0, 0.5)) + Circle(100, 50, 20, "HOLES")), "gap of 0.5 mm" },
        { Dxf(Open("0", (0, 0), (200, 0), (200, 100), (0, 100), (0, 9)) + Circle(100, 50, 20)), "gap of 9 mm" },
        { Dxf(Open("0", (0, 0), (200, 0), (200, 100), (0, 100)) + Circle(100, 50, 20)), "(0, 0)" },
        { Dxf(Open("0", (0, 0), (200, 0), (200, 99.4)) + Open("0", (200, 100), (0, 100), (0, 0.3)) + Circle(100, 50, 20)), "gap of 0.6 mm" },
        { Dxf(Line(5, 0, 195, 0) + Line(200, 5, 200, 95) + Line(195, 100, 5, 100) + Line(0, 95, 0, 5) + Circle(100, 50, 20)), "(5, 0)" },
        { Dxf(Square + "0 ARC 8 0 10 100 20 50 40 20 50 1 51 359.5 "), "gap of" },
        { Dxf(Square + Open("0", (50, 30), (90, 30), (90, 70), (50, 70), (50, 31.5))), "gap of 1.5 mm" },
        { Dxf(Open("0", (0, 0), (400, 0), (400, 300), (0, 300)) + Rectangle(600, 0, 60, 40)), "(0, 0)" },
        // A tenon drawn on the edge of a rectangle: with or without it the rectangle is closed.
        { Dxf(Square + Open("0", (50, 100), (50, 120), (150, 120), (150, 100))), "(50, 100)" },
        { Dxf(Square + Open("TENON", (200, 30), (215, 30), (215, 70), (200.02, 70))), "--layer \"TENON=ignore\"" },
        // The right edge is missing, and a line across makes a ring of what is left of it.
        { Dxf(Line(0, 0, 50, 0) + Line(50, 0, 200, 0) + Line(50, 0, 50, 100) + Line(50, 100, 200, 100) + Line(50, 100, 0, 100) + Line(0, 100, 0, 0)), "(200, 0)" },
    };

    [Theory]
    [MemberData(nameof(Unfinished))]
    public void An_edge_that_is_not_drawn_to_its_end_is_refused_with_its_ends(string text, string words)
    {
        var outcome = Part(text);
        Assert.False(outcome.Succeeded, $"taken: {outcome.Value?.AreaMm2}");
        Assert.Contains(outcome.Findings, f => f is { Severity: Severity.Refused, Code: "ring-open" or "ring-branch" } && f.ToString().Contains(words, StringComparison.Ordinal));
    }

    [Fact]
    public void A_gap_that_can_be_joined_is_told_with_the_option_that_joins_it()
    {
        var text = Dxf(Open("0", (0, 0), (200, 0), (200, 100), (0, 100), (0, 0.16)));
        var refusal = Part(text).Refusal!;
        Assert.Contains("--join-gap 0.17", refusal.Remedy);
        Assert.Equal(20000, Shape(text, PodLayout.Reading.ReadingOptions.Default with { JoinGapMm = 0.17 }).AreaMm2, 20.0);
    }

    [Fact]
    public void Ignoring_a_layer_is_advised_only_where_it_is_not_the_outlines_own()
    {
        var own = Part(Dxf(Open("0", (0, 0), (200, 0), (200, 100), (0, 100))));
        Assert.DoesNotContain("ignore", string.Join('\n', own.Findings.Where(f => f.Severity == Severity.Refused)));
        var other = Part(Dxf(Square + Open("X", (-10, -10), (210, -10), (210, 110), (-10, 110))));
        Assert.Contains("--layer \"X=ignore\"", other.Refusal!.Remedy);
    }

    [Fact]
    public void An_outline_layer_that_is_named_settles_open_lines_of_other_layers()
    {
        var text = Dxf(Rectangle(0, 0, 200, 100, "CUT") + Open("X", (-10, -10), (210, -10), (210, 110), (-10, 110)));
        Assert.Equal(20000, Shape(text, roles: LayerRoles.ByShape with { OutlineLayer = "CUT" }).AreaMm2, 1e-6);
    }

    [Theory]
    [InlineData(0, 50)]
    [InlineData(0, 200)]
    [InlineData(120, 300)]
    public void Lines_drawn_twice_in_different_pieces_make_one_outline(double from, double to)
    {
        // The lower edge whole, and a part of it again; or in two pieces that overlap.
        var lower = to > 200 ? Line(0, 0, 150, 0) + Line(120, 0, 200, 0) : Line(0, 0, 200, 0) + Line(from, 0, to, 0);
        var outcome = Part(Dxf(lower + Line(200, 0, 200, 100) + Line(200, 100, 0, 100) + Line(0, 100, 0, 0)));
        Assert.True(outcome.Succeeded, string.Join('\n', outcome.Findings));
        Assert.Equal(20000, outcome.Value.AreaMm2, 1e-6);
        Assert.Contains(outcome.Findings, f => f.Code is "lines-overlap" or "duplicate" && f.Place is Place.InDrawing);
    }

    [Fact]
    public void An_edge_drawn_whole_and_again_in_two_pieces_makes_one_outline() => Assert.Equal(20000, Shape(Dxf(
        Line(0, 0, 200, 0) + Line(0, 0, 80, 0) + Line(80, 0, 200, 0) + Line(200, 0, 200, 100) + Line(200, 100, 0, 100) + Line(0, 100, 0, 0))).AreaMm2, 1e-6);

    [Fact]
    public void Two_parts_that_share_a_stretch_of_an_edge_stay_two()
    {
        static string Box(double x, double y, double w, double h) => Line(x, y, x + w, y) + Line(x + w, y, x + w, y + h) + Line(x + w, y + h, x, y + h) + Line(x, y + h, x, y);
        Assert.Equal(2, Read(Dxf(Box(0, 0, 200, 100) + Box(200, 20, 150, 120))).Value!.Rings.Length);
    }
}

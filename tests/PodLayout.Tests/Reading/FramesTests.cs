using System.Collections.Immutable;
using PodLayout.Findings;
using PodLayout.Parts;
using static PodLayout.Tests.Reading.Drawings;

namespace PodLayout.Tests.Reading;

/// <summary>Sheet frames, blanks and backgrounds around the part; sizes of sheets by ISO 216.</summary>
public class FramesTests
{
    private static string Part200(string layer) => Rectangle(60, 80, 200, 100, layer);

    private static string Oval(string layer) => $" 0 ELLIPSE 8 {layer} 10 200 20 150 11 120 21 0 40 0.6 ";

    /// <summary>Drawings in which the ring around everything may be the part or not, and the layer to be offered.</summary>
    public static TheoryData<string, string> Doubtful() => new()
    {
        { Dxf(Rectangle(0, 0, 430, 290, "FRAME") + Oval("CUT")), "CUT" },
        { Dxf(Rectangle(0, 0, 430, 290, "FRAME") + Rectangle(200, 100, 20, 20, "CUT")), "CUT" },
        { Dxf(Rectangle(0, 0, 420, 297, "0") + Oval("1")), "1" },
        { Dxf(Rectangle(0, 0, 500, 300, "0") + Oval("1")), "1" },
        { Dxf(Rectangle(0, 0, 900, 700, "STOCK") + Oval("1")), "1" },
        { Dxf(Rectangle(0, 0, 900, 700, "0") + Oval("OUTLINE") + Circle(200, 150, 20, "BORE")), "OUTLINE" },
        { Dxf(Rectangle(0, 0, 420, 297, "A") + Rectangle(10, 10, 400, 277, "A") + Rectangle(300, 10, 110, 40, "A") + Part200("B")), "B" },
        { Dxf(Circle(0, 0, 300, "X") + Circle(0, 0, 250, "Y")), "Y" },
    };

    [Theory]
    [MemberData(nameof(Doubtful))]
    public void A_ring_around_everything_on_a_layer_of_its_own_leaves_the_choice_in_words(string text, string layer)
    {
        var outcome = Part(text);
        Assert.Equal("outline-doubtful", outcome.Refusal!.Code);
        Assert.Contains($"--outline-layer \"{layer}\"", outcome.Refusal.Remedy);
        Assert.True(Part(text, roles: LayerRoles.ByShape with { OutlineLayer = layer }).Succeeded);
        // The other answer is taken as well, unless a part with holes of its own would then lie in a hole.
        Assert.NotEqual("outline-doubtful", Part(text, roles: LayerRoles.ByShape with { Part = 1 }).Refusal?.Code);
    }

    [Fact]
    public void A_rectangle_with_one_large_hole_on_its_own_layer_is_taken_with_a_word_and_the_hole_can_be_taken_instead()
    {
        var text = Dxf(Rectangle(-100, -100, 1000, 700, "0") + Rectangle(0, 0, 600, 400, "0"));
        var outcome = Part(text);
        Assert.Equal((1000, 1), (outcome.Value!.Outline.Bounds.Width, outcome.Value.Holes.Length));
        Assert.Contains("--part 2", Assert.Single(outcome.Findings, f => f.Code == "hole-may-be-part").Remedy);
        var other = Part(text, roles: LayerRoles.ByShape with { Part = 2 }).Value!;
        Assert.Equal((600, 0), (other.Outline.Bounds.Width, other.Holes.Length));
        // A small hole is a hole.
        Assert.DoesNotContain(Part(Dxf(Rectangle(0, 0, 1000, 700, "0") + Rectangle(50, 50, 300, 200, "0"))).Findings, f => f.Code == "hole-may-be-part");
    }

    [Fact]
    public void A_part_with_a_hole_within_a_rectangle_is_among_what_can_be_chosen()
    {
        var text = Dxf(Rectangle(0, 0, 2440, 1220, "0") + Rectangle(100, 100, 600, 400, "0") + Circle(400, 300, 40, "0"));
        var refusal = Part(text).Refusal!;
        Assert.Equal("ring-nested", refusal.Code);
        Assert.Contains("part 3 of 600 x 400 mm", refusal.Message);
        var part = Part(text, roles: LayerRoles.ByShape with { Part = 3 }).Value!;
        Assert.Equal((600, 1), (part.Outline.Bounds.Width, part.Holes.Length));
    }

    [Fact]
    public void A_frame_with_the_signs_of_a_sheet_is_left_out_with_a_warning()
    {
        var sheet = Rectangle(0, 0, 420, 297, "BORDER") + Rectangle(10, 10, 400, 277, "BORDER") + Rectangle(300, 10, 110, 40, "BORDER") + "0 TEXT 8 BORDER 1 TITLE 10 310 20 20 40 5 ";
        var outcome = Part(Dxf(sheet + Oval("PART") + Circle(200, 150, 20, "HOLES")));
        Assert.True(outcome.Succeeded, string.Join('\n', outcome.Findings));
        Assert.Equal(Math.PI * (120 * 72 - 400), outcome.Value.AreaMm2, 6.0);
        var told = Assert.Single(outcome.Findings, f => f.Code == "frame-left-out");
        Assert.Equal(Severity.Warning, told.Severity);
        Assert.Contains("--outline-layer \"BORDER\"", told.Remedy);
    }

    [Fact]
    public void A_frames_name_with_the_size_of_a_sheet_or_an_outlines_name_inside_shows_the_part()
    {
        Assert.Equal(900 * Math.PI, Shape(Dxf(Rectangle(0, 0, 420, 297, "RAHMEN") + Circle(200, 150, 30, "1"))).AreaMm2, 2.0);
        Assert.Equal(120 * 72 * Math.PI, Shape(Dxf(Rectangle(0, 0, 900, 700, "STOCK") + Oval("PART"))).AreaMm2, 6.0);
    }

    [Fact]
    public void Several_parts_in_a_sheet_are_never_its_holes()
    {
        var text = Dxf(Rectangle(0, 0, 420, 297, "BORDER") + Circle(100, 150, 60, "PARTS") + Circle(300, 150, 50, "PARTS") + "0 TEXT 8 BORDER 1 T 10 1 20 1 40 5 ");
        var outcome = Part(text);
        Assert.Equal("outline-doubtful", outcome.Refusal!.Code);
        Assert.Contains("--part", outcome.Refusal.Remedy);
        Assert.Equal(Math.PI * 2500, Shape(text, roles: LayerRoles.ByShape with { Part = 3 }).AreaMm2, 4.0);
    }

    /// <summary>Ordinary parts with holes on layers of their own, and how many holes.</summary>
    public static TheoryData<string, int> Plain() => new()
    {
        { Dxf(Rectangle(0, 0, 600, 400, "OUTLINE") + Rectangle(100, 100, 300, 200, "HOLES")), 1 },
        { Dxf(Rectangle(0, 0, 600, 400, "0") + Rectangle(100, 100, 300, 200, "CUTOUT")), 1 },
        { Dxf(Rectangle(0, 0, 600, 400, "0") + Circle(100, 100, 40, "1") + Circle(300, 100, 40, "1")), 2 },
        { Dxf(Rectangle(0, 0, 600, 400, "A") + Rectangle(50, 50, 500, 300, "A")), 1 },
        { Dxf(Rectangle(0, 0, 600, 400, "KONTUR") + Oval("5")), 1 },
        { Dxf(Circle(0, 0, 300, "A") + Circle(0, 0, 150, "B")), 1 },
        { Dxf(Rectangle(0, 0, 420, 297, "A") + Circle(20, 20, 4, "A") + Circle(400, 20, 4, "A")), 2 },
    };

    [Theory]
    [MemberData(nameof(Plain))]
    public void A_part_with_holes_on_their_own_layer_is_no_frame(string text, int holes) => Assert.Equal(holes, Shape(text).Holes.Length);

    [Fact]
    public void A_layer_that_is_given_a_role_leaves_no_doubt()
    {
        var roles = LayerRoles.ByShape with { ByLayer = ImmutableSortedDictionary<string, LayerRole>.Empty.Add("1", LayerRole.Hole) };
        Assert.Single(Shape(Dxf(Rectangle(0, 0, 500, 300, "0") + Oval("1")), roles: roles).Holes);
        var ignored = LayerRoles.ByShape with { ByLayer = ImmutableSortedDictionary<string, LayerRole>.Empty.Add("0", LayerRole.Ignore) };
        Assert.Empty(Shape(Dxf(Rectangle(0, 0, 500, 300, "0") + Oval("1")), roles: ignored).Holes);
    }

    [Fact]
    public void A_background_that_fills_the_page_of_an_SVG_is_not_taken_for_the_part()
    {
        const string Open = "<svg xmlns='http://www.w3.org/2000/svg' width='400mm' height='300mm' viewBox='0 0 400 300'>";
        const string Text = Open + "<rect width='100%' height='100%' fill='white'/><circle cx='200' cy='150' r='100'/></svg>";
        Assert.Equal("outline-doubtful", Part(Text).Refusal!.Code);
        Assert.Equal(Math.PI * 10000, Shape(Text, roles: LayerRoles.ByShape with { Part = 2 }).AreaMm2, 7.0);
        Assert.Single(Shape(Open + "<rect width='400' height='300' fill='none' stroke='red'/><circle cx='200' cy='150' r='100' stroke='red'/></svg>").Holes);
    }

    [Fact]
    public void Title_block_boxes_that_touch_each_other_do_not_stand_in_the_way_of_a_named_outline()
    {
        var boxes = Rectangle(0, 0, 100, 20, "TITLE") + Rectangle(0, 20, 100, 20, "TITLE") + Rectangle(0, -50, 600, 500, "TITLE");
        Assert.Equal(20000, Shape(Dxf(boxes + Rectangle(200, 80, 200, 100, "CUT")), roles: LayerRoles.ByShape with { OutlineLayer = "CUT" }).AreaMm2, 1e-6);
    }
}

using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Parts;
using PodLayout.Reading;
using static PodLayout.Tests.Reading.Drawings;

namespace PodLayout.Tests.Reading;

/// <summary>One bad or odd drawing for each finding.</summary>
public class FindingsOfDrawingsTests
{
    private static readonly string Square = Rectangle(0, 0, 200, 100);

    private static readonly string OpenSquare = Line(0, 0, 200, 0) + Line(200, 0, 200, 100) + Line(200, 100, 0, 100);

    /// <summary>Code, a drawing that is refused with it, and words that the line must hold.</summary>
    public static TheoryData<string, string, string> Refused() => new()
    {
        { "file-empty", "", "empty" },
        { "file-empty", " \r\n ", "blanks" },
        { "file-unknown", "Dear shop, the drawing follows.", "neither DXF nor SVG" },
        { "file-dwg", "AC1027 and so on", "DWG" },
        { "file-pdf", "%PDF-1.4", "PDF" },
        { "file-archive", "PK\u0003\u0004", "archive" },
        { "unit-missing", Dxf(Square, header: ""), "--units mm" },
        { "unit-missing", Dxf(Square, header: "9 $INSUNITS 70 0"), "$INSUNITS 0" },
        { "dxf-truncated", Dxf(Square)[..^15], "ENTITIES" },
        { "dxf-truncated", Groups("0 SECTION 2 ENTITIES 0 LINE 10"), "breaks off" },
        { "dxf-group-code", Groups("0 SECTION 2 ENTITIES 0 LINE ten 5"), "\"ten\"" },
        { "dxf-no-section", Groups("0 LINE 8 0 0 EOF"), "no section" },
        { "dxf-number", Dxf("0 CIRCLE 8 0 10 wide 20 5 40 9"), "\"wide\"" },
        { "dxf-not-finite", Dxf("0 CIRCLE 8 0 10 NaN 20 5 40 9"), "part.dxf:20" },
        { "dxf-not-finite", Dxf("0 CIRCLE 8 0 10 0 20 5 40 inf".Replace("inf", "Infinity", StringComparison.Ordinal)), "Infinity" },
        { "coordinate-too-large", Dxf(Square + Circle(1e12, 0, 5)), "CIRCLE" },
        { "dxf-angle", Dxf(Square + "0 ARC 8 0 10 50 20 50 40 5 50 0 51 1e9"), "ARC" },
        { "dxf-spline", Dxf(Square + "0 SPLINE 8 0 71 3 10 0 20 0 10 5 20 0"), "at least 4" },
        { "dxf-block-cycle", Dxf("0 INSERT 2 A 10 0 20 0", more: "0 SECTION 2 BLOCKS 0 BLOCK 2 A 10 0 20 0 0 INSERT 2 A 10 0 20 0 0 ENDBLK 0 ENDSEC"), "Block A" },
        { "drawing-too-large", Dxf("0 INSERT 2 A 10 0 20 0 70 30000 71 30000", more: "0 SECTION 2 BLOCKS 0 BLOCK 2 A 10 0 20 0 0 POINT 10 0 20 0 0 ENDBLK 0 ENDSEC"), "1000000" },
        { "drawing-empty", Dxf("0 TEXT 8 0 1 PART 10 0 20 0"), "no line" },
        { "ring-open", Dxf(OpenSquare), "(0, 100)" },
        { "ring-open", Dxf(Line(0, 0, 200, 0) + Line(200, 0, 200, 100) + Line(200, 100, 0, 100) + Line(0, 100, 0, 0.86)), "a gap of 0.86 mm" },
        { "ring-branch", Dxf(OpenSquare + Line(0, 100, 0, 0) + Line(200, 100, 0, 0)), "(0, 0)" },
        { "ring-branch", Dxf(OpenSquare + Line(0, 100, 0, 0) + Line(200, 100, 280, 130)), "(280, 130)" },
        { "ring-crosses-itself", Dxf(Closed("0", (0, 0), (200, 100), (200, 0), (0, 100))), "(100, 50)" },
        { "ring-crosses-itself", Dxf(Closed("0", (0, 0), (200, 0), (200, 100), (100, 0), (0, 100))), "(100, 0)" },
        { "rings-cross", Dxf(Square + Circle(200, 50, 20)), "cross" },
        { "ring-nested", Dxf(Square + Circle(50, 50, 30) + Circle(50, 50, 10)), "inside the hole" },
        { "parts-several", Dxf(Square + Rectangle(300, 0, 90, 90)), "(300, 0)" },
        { "outline-missing", Dxf(Circle(50, 50, 30, "HOLES")), "--outline-layer" },
        { "hole-outside", Dxf(Square + Circle(500, 50, 30, "HOLES")), "HOLES" },
        { "svg-damaged", "<svg><path d='M0 0'", "XML" },
        { "svg-root", "<html/>", "html" },
        { "unit-missing", "<svg viewBox='0 0 100 100'><rect width='50' height='50'/></svg>", "--units" },
        { "svg-path", "<svg width='100mm' height='100mm'><path d='M0 0 L 5 X'/></svg>", "part.dxf:1" },
        { "svg-number", "<svg width='100mm' height='100mm'><circle r='NaN'/></svg>", "NaN" },
        { "svg-transform", "<svg width='100mm' height='100mm'><g transform='tilt(3)'><circle r='5'/></g></svg>", "tilt" },
        { "svg-cycle", "<svg width='100mm' height='100mm'><g id='a'><use href='#a'/></g></svg>", "#a" },
        { "coordinate-too-large", "<svg width='100mm' height='100mm'><circle r='1e12'/></svg>", "circle" },
    };

    [Theory]
    [MemberData(nameof(Refused))]
    public void A_bad_drawing_is_refused_with_its_code_and_place(string code, string text, string words)
    {
        var roles = LayerRoles.ByShape with { ByLayer = ImmutableSortedDictionary<string, LayerRole>.Empty.Add("HOLES", LayerRole.Hole) };
        var outcome = Part(text, roles: text.Contains("HOLES") ? roles : null);
        Assert.False(outcome.Succeeded);
        Assert.Equal(code, outcome.Refusal!.Code);
        Assert.Contains(words, outcome.Refusal.ToString());
        Assert.DoesNotContain('\n', outcome.Refusal.ToString());
        Assert.False(string.IsNullOrEmpty(outcome.Refusal.Remedy));
    }

    /// <summary>Code, and a drawing that becomes a part of 200 x 100 mm all the same.</summary>
    public static TheoryData<string, string> Accepted() => new()
    {
        { "gap-joined", Dxf(Line(0, 0, 200, 0) + Line(200, 0.03, 200, 100) + Line(200, 100, 0, 100) + Line(0, 100, 0, 0)) },
        { "duplicate", Dxf(OpenSquare + Line(0, 100, 0, 0) + Line(0, 0, 0, 100)) },
        { "duplicate", Dxf(Square + Closed("0", (200, 100), (200, 0), (0, 0), (0, 100))) },
        { "duplicate", Dxf(Square + Rectangle(0, 0, 200, 100, "OTHER")) },
        { "zero-length", Dxf(Square + Line(5, 5, 5, 5)) },
        { "vertex-repeated", Dxf(Closed("0", (0, 0), (200, 0), (200, 0), (200, 100), (0, 100), (0, 0))) },
        { "open-left-out", Dxf(OpenSquare + Line(0, 100, 0, 0) + Line(200, 100, 240, 130)) },
        { "flaw-mended", Dxf(Closed("0", (0, 0), (200, 0), (200, 100), (200, 150), (200, 100), (0, 100))) },
        { "dxf-comma-tags", "0,SECTION\n2,HEADER\n9,$INSUNITS\n70,4\n0,ENDSEC\n0,SECTION\n2,ENTITIES\n" + Commas(Square) + "0,ENDSEC\n0,EOF\n" },
        { "dxf-decimal-comma", Dxf(Line(0, 0, 200, 0).Replace("200", "200,000", StringComparison.Ordinal) + Line(200, 0, 200, 100) + Line(200, 100, 0, 100) + Line(0, 100, 0, 0)) },
        { "dxf-no-end", Dxf(Square).Replace("0\nEOF\n", "", StringComparison.Ordinal) },
        { "dxf-no-section-end", Dxf(Square).Replace("0\nENDSEC\n0\nEOF\n", "0\nEOF\n", StringComparison.Ordinal) },
        { "dxf-encoding", Dxf(Rectangle(0, 0, 200, 100, "KONTUR_Ä"), header: "9 $ACADVER 1 AC1009 9 $INSUNITS 70 4 9 $DWGCODEPAGE 3 ANSI_1252") },
        { "dxf-after-end", Dxf(Square) + "left over\n" },
        { "dxf-radius", Dxf(Square + Circle(50, 50, 0)) },
        { "dxf-tilted", Dxf(Square + Circle(50, 50, 10) + "210 1 220 0 230 1") },
        { "dxf-mesh", Dxf(Square + "0 POLYLINE 8 0 66 1 70 64 0 VERTEX 10 1 20 1 30 1 0 VERTEX 10 3 20 3 30 1 0 SEQEND") },
        { "dxf-frame-vertex", Dxf("0 POLYLINE 8 0 66 1 70 5 0 VERTEX 10 0 20 0 0 VERTEX 10 900 20 900 70 16 0 VERTEX 10 200 20 0 0 VERTEX 10 200 20 100 0 VERTEX 10 0 20 100 0 SEQEND") },
        { "dxf-no-vertex", Dxf(Square + "0 LWPOLYLINE 8 0 70 1") },
        { "dxf-kind-unread", Dxf(Square + "0 REGION 8 0") },
        { "dxf-left-out", Dxf(Square + Circle(50, 50, 5) + "60 1") },
        { "dxf-left-out", Dxf(Square + Circle(50, 50, 5) + "67 1") },
        { "dxf-block-missing", Dxf(Square + "0 INSERT 2 NONE 10 0 20 0") },
        { "dxf-block-unnamed", Dxf(Square, more: "0 SECTION 2 BLOCKS 0 BLOCK 8 0 0 ENDBLK 0 ENDSEC") },
        { "dxf-block-twice", Dxf(Square, more: "0 SECTION 2 BLOCKS 0 BLOCK 2 A 0 ENDBLK 0 BLOCK 2 A 0 ENDBLK 0 ENDSEC") },
        { "dxf-block-external", Dxf(Square + "0 INSERT 2 A 10 0 20 0", more: "0 SECTION 2 BLOCKS 0 BLOCK 2 A 70 4 0 ENDBLK 0 ENDSEC") },
        { "dxf-spline-knots", Dxf(Line(0, 0, 200, 0) + Line(200, 0, 200, 100) + Line(0, 100, 0, 0) + "0 SPLINE 8 0 71 1 10 200 20 100 10 0 20 100") },
        { "dxf-fit-points", Dxf(Line(0, 0, 200, 0) + Line(200, 0, 200, 100) + Line(0, 100, 0, 0) + "0 SPLINE 8 0 71 3 11 200 21 100 11 120 21 100 11 0 21 100") },
        { "unit-contradiction", Dxf(Square, header: "9 $INSUNITS 70 4 9 $MEASUREMENT 70 0") },
        { "joined-across-layers", Dxf(OpenSquare + Line(0, 100, 0, 0, "SIDE")) },
        { "svg-px", Svg("<rect width='200' height='100'/>", "width='755.9055118110236' height='377.9527559055118' viewBox='0 0 200 100'") },
        { "svg-left-out", Svg("<rect width='200' height='100'/><circle r='9' display='none'/>") },
        { "svg-left-out", Svg("<style>.x{display:none}</style><rect width='200' height='100'/><circle class='x' r='50'/>") },
        { "svg-closed-by-fill", Svg("<path d='M0 0h200v100h-200'/>") },
        { "svg-reference", Svg("<rect width='200' height='100'/><use href='other.svg#a'/>") },
    };

    private static string Commas(string words) =>
        string.Concat(words.Split(' ', StringSplitOptions.RemoveEmptyEntries).Chunk(2).Select(p => $"{p[0]},{p[1]}\n"));

    private static string Svg(string inner, string size = "width='200mm' height='100mm' viewBox='0 0 200 100'") => $"<svg {size}>{inner}</svg>";

    [Theory]
    [MemberData(nameof(Accepted))]
    public void An_odd_drawing_becomes_a_part_with_a_finding(string code, string text)
    {
        var outcome = Part(text);
        Assert.True(outcome.Succeeded, string.Join('\n', outcome.Findings));
        Assert.Contains(outcome.Findings, f => f.Code == code);
        Assert.Empty(outcome.Value.Holes);
        Assert.Equal(20000, outcome.Value.AreaMm2, 4);
        Assert.Equal((0, 0, 200, 100), Rounded(outcome.Value.Outline.Bounds));
    }

    private static (double, double, double, double) Rounded(Box2 box) =>
        (Math.Round(box.MinX, 4), Math.Round(box.MinY, 4), Math.Round(box.MaxX, 4), Math.Round(box.MaxY, 4));

    [Fact]
    public void A_picture_named_dxf_is_refused_as_a_picture()
    {
        byte[] png = [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 0, 0, 0, 0x0D];
        Assert.Equal("file-picture", Read(png).Refusal!.Code);
    }

    [Theory]
    [InlineData("ANSI_1252", 1252, "KONTUR_Ä")]
    [InlineData("ANSI_1251", 1251, "КОНТУР")]
    [InlineData("ANSI_932", 932, "輪郭")]
    [InlineData("dos850", 850, "ÜBER")]
    public void A_layer_name_is_read_by_the_code_page(string name, int codePage, string layer)
    {
        var text = Dxf(Rectangle(0, 0, 200, 100, layer), header: $"9 $ACADVER 1 AC1015 9 $INSUNITS 70 4 9 $DWGCODEPAGE 3 {name}");
        var bytes = CodePagesEncodingProvider.Instance.GetEncoding(codePage)!.GetBytes(text);
        Assert.Equal(layer, Assert.Single(Read(bytes).Value!.Rings).Layer);
    }

    [Fact]
    public void A_binary_drawing_cut_anywhere_is_refused_once()
    {
        var whole = Ezdxf("slot-R2010-binary");
        for (var length = 22; length < whole.Length - 30; length += 997)
        {
            var outcome = Read(whole[..length]);
            Assert.False(outcome.Succeeded);
            Assert.Single(outcome.Findings, f => f.Severity == Severity.Refused);
        }
    }

    [Fact]
    public void A_text_drawing_cut_inside_a_section_is_refused_once()
    {
        var whole = Encoding.ASCII.GetString(Ezdxf("slot-R2018"));
        for (var length = 200; length < whole.Length - 30; length += 997)
        {
            var outcome = Read(whole[..length]);
            // Between two sections a cut shows only by the missing end mark: then the drawing lacks its entities.
            Assert.False(outcome.Succeeded);
            Assert.Single(outcome.Findings, f => f.Severity == Severity.Refused);
        }
    }

    [Fact]
    public void An_override_wins_over_the_drawing_with_a_note()
    {
        var outcome = Part(Dxf(Square), ReadingOptions.Default with { UnitOverride = LengthUnit.Inch });
        Assert.Equal(20000 * 645.16, outcome.Value!.AreaMm2, 3);
        Assert.Contains(outcome.Findings, f => f.Code == "unit-overridden");
    }

    [Fact]
    public void A_part_of_unlikely_size_is_warned_of()
    {
        var outcome = Part(Dxf(Rectangle(0, 0, 17.5, 16.5)));
        Assert.Contains(outcome.Findings, f => f.Code == "size-unlikely" && f.Remedy!.Contains("--units"));
    }

    [Fact]
    public void An_outline_layer_the_drawing_lacks_is_refused_with_the_nearest_names()
    {
        var outcome = Part(Dxf(Rectangle(0, 0, 200, 100, "OUTLINE") + Rectangle(0, 0, 10, 10, "X")), roles: LayerRoles.ByShape with { OutlineLayer = "OUTLINES" });
        Assert.Equal("layer-missing", outcome.Refusal!.Code);
        Assert.Contains("it has: OUTLINE", outcome.Refusal.Message);
    }

    [Fact]
    public void An_outline_layer_leaves_out_what_lies_outside_and_keeps_the_hole()
    {
        var text = Dxf(Rectangle(-50, -50, 400, 400, "FRAME") + Rectangle(0, 0, 200, 100, "CUT") + Circle(50, 50, 10, "BORE"));
        var outcome = Part(text, roles: LayerRoles.ByShape with { OutlineLayer = "cut" });
        Assert.True(outcome.Succeeded, string.Join('\n', outcome.Findings));
        Assert.Equal(20000 - 100 * Math.PI, outcome.Value.AreaMm2, 0.5);
        Assert.Contains(outcome.Findings, f => f.Code == "ring-outside" && f.Message.Contains("FRAME"));
    }

    [Fact]
    public void Defects_may_cross_the_outline_and_ignored_layers_may_be_open()
    {
        var roles = LayerRoles.ByShape with
        {
            ByLayer = ImmutableSortedDictionary<string, LayerRole>.Empty.Add("KNOT*", LayerRole.Defect).Add("DIM", LayerRole.Ignore),
        };
        var outcome = Part(Dxf(Square + Circle(200, 50, 10, "KNOTS_A") + Line(-10, -10, 5, 700, "DIM")), roles: roles);
        Assert.True(outcome.Succeeded, string.Join('\n', outcome.Findings));
        Assert.Single(outcome.Value.Defects);
    }

    [Fact]
    public void Findings_do_not_depend_on_the_culture_of_the_machine()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            var plain = Part(Dxf(OpenSquare)).Refusal!.ToString();
            CultureInfo.CurrentCulture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            CultureInfo.CurrentCulture.NumberFormat.NumberDecimalSeparator = ",";
            Assert.Equal(plain, Part(Dxf(OpenSquare)).Refusal!.ToString());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }
}

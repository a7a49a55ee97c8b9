using PodLayout.Findings;
using static PodLayout.Tests.Reading.Drawings;

namespace PodLayout.Tests.Reading;

/// <summary>
/// What is not seen is no edge of a part. By SVG 1.1 (second edition): 6.4 style sheets, 11.3 fill, 11.4 stroke, 11.5 display and
/// visibility, 14.3 clip paths, 14.4 masks, 14.5 opacity, 5.6 use; SVG 2: 5.5 symbol, 5.9 conditional processing, 13.4 fill.
/// </summary>
public class SeenInSvgTests
{
    private const string Part40 = "<rect x='50' y='50' width='200' height='100'/>";

    private const string Frame = "<rect class='guide small' id='f1' x='1' y='1' width='390' height='290'/>";

    private static string Mm(string inner) =>
        $"<svg xmlns='http://www.w3.org/2000/svg' xmlns:xlink='http://www.w3.org/1999/xlink' width='400mm' height='300mm' viewBox='0 0 400 300'>{inner}</svg>";

    private static string WithStyle(string style) => Mm($"<style>{style}</style>{Frame}{Part40}");

    /// <summary>Each of these shows the rectangle of 200 x 100 only.</summary>
    public static TheoryData<string> Unseen() =>
    [
        Mm("<rect x='1' y='1' width='390' height='290' fill='none'/>" + Part40),
        Mm("<rect x='1' y='1' width='390' height='290' style='fill:none;stroke:none'/>" + Part40),
        Mm("<rect x='1' y='1' width='390' height='290' fill='none' stroke='black' stroke-width='0'/>" + Part40),
        Mm("<rect x='1' y='1' width='390' height='290' fill='transparent'/>" + Part40),
        Mm("<rect x='1' y='1' width='390' height='290' fill='rgba(10,20,30,0)'/>" + Part40),
        Mm("<rect x='1' y='1' width='390' height='290' fill='#ff000000'/>" + Part40),
        Mm("<rect x='1' y='1' width='390' height='290' fill-opacity='0'/>" + Part40),
        Mm("<rect x='1' y='1' width='390' height='290' fill='none' stroke='red' stroke-opacity='0%'/>" + Part40),
        Mm("<rect x='1' y='1' width='390' height='290' opacity='0'/>" + Part40),
        Mm("<g opacity='0'><g opacity='1'><rect x='1' y='1' width='390' height='290'/></g></g>" + Part40),
        Mm("<g fill='none'><rect x='1' y='1' width='390' height='290'/></g>" + Part40),
        Mm("<line x1='0' y1='0' x2='390' y2='0'/>" + Part40),
        WithStyle(".guide{display:none}"),
        WithStyle("#f1 { display : none }"),
        WithStyle("rect.guide.small{visibility:hidden}"),
        WithStyle("svg > .guide { opacity: 0 }"),
        WithStyle("svg rect[id='f1'] { fill: none }"),
        WithStyle("style + rect { fill: none }"),
        WithStyle("/* frame */ @media screen { .guide { display: none } }"),
        WithStyle("@media print { rect { display: none } } @font-face { font-family: x } .guide { fill:none }"),
        WithStyle("<![CDATA[ .guide { fill: none; stroke: none } ]]>"),
        WithStyle("#f1{display:none} .guide{display:inline}"),
        WithStyle(".guide{display:none!important} #f1{display:inline}"),
        WithStyle("rect:first-of-type{font-size:3px} rect:hover{display:none} .guide{display:none}"),
        WithStyle("rect{display:none} rect:not-read{font-size:1px} #p{display:inline}").Replace(Part40, Part40.Replace("<rect", "<rect id='p'", StringComparison.Ordinal), StringComparison.Ordinal),
        Mm("<clipPath id='c'><rect x='300' y='200' width='50' height='50'/></clipPath><rect x='1' y='1' width='90' height='90' clip-path='url(#c)'/>" + Part40),
        Mm("<clipPath id='c'><rect width='400' height='300'/></clipPath><g clip-path='url(#c)'>" + Part40 + "</g>"),
        Mm("<defs><rect id='r' width='400' height='300'/></defs><clipPath id='c'><use xlink:href='#r' overflow='visible'/></clipPath><g style='clip-path:url(\"#c\")'>" + Part40 + "</g>"),
        Mm("<clipPath id='c'><path d='M50 50h200v100h-200z'/></clipPath><g clip-path='url(#c)'>" + Part40 + "</g>"),
        Mm("<g clip-path='url(#nothing)'>" + Part40 + "</g>"),
        Mm("<svg x='10' y='10' width='20' height='20'><rect x='100' y='100' width='90' height='90'/></svg>" + Part40),
        Mm("<switch><foreignObject requiredExtensions='http://example.org/x'/><g>" + Part40 + "</g><rect width='390' height='290'/></switch>"),
        Mm("<defs><rect x='1' y='1' width='390' height='290'/></defs><symbol id='s'><rect width='5' height='5'/></symbol><pattern><rect width='3' height='3'/></pattern>" + Part40),
        Mm("<x:rect xmlns:x='http://example.org/' width='390' height='290'/>" + Part40),
        Mm("<style media='print'>#p{display:none}</style><rect id='p' x='50' y='50' width='200' height='100'/>"),
        Mm("<path d='M50 50h200v100h-200'/>"),
    ];

    [Theory]
    [MemberData(nameof(Unseen))]
    public void What_is_not_seen_is_no_part(string text)
    {
        var shape = Shape(text);
        Assert.Empty(shape.Holes);
        Assert.Equal(20000, shape.AreaMm2, 1e-6);
        Assert.Equal(50, shape.Outline.Bounds.MinX, 1e-9);
    }

    /// <summary>Each of these is seen, and stays.</summary>
    public static TheoryData<string> Seen() =>
    [
        Mm("<rect x='50' y='50' width='200' height='100' fill='none' stroke='black'/>"),
        Mm("<rect x='50' y='50' width='200' height='100' class='a' style='stroke:#000'/><style>.a{fill:none;stroke:none}</style>"),
        Mm("<g visibility='hidden'><rect visibility='visible' x='50' y='50' width='200' height='100'/></g>"),
        Mm("<g fill='none'><rect fill='url(#p) none' x='50' y='50' width='200' height='100'/></g>"),
        Mm("<style>.b{display:none} g > .a{fill:red} .a:hover{display:none}</style><g fill='none'><rect class='a' x='50' y='50' width='200' height='100'/></g>"),
        Mm("<g style='color:transparent'><rect style='color:red;fill:currentColor' x='50' y='50' width='200' height='100'/></g>"),
    ];

    [Theory]
    [MemberData(nameof(Seen))]
    public void What_is_seen_is_read(string text) => Assert.Equal(20000, Shape(text).AreaMm2, 1e-6);

    /// <summary>A drawing whose visible lines are not worked out, and the word that must be named.</summary>
    public static TheoryData<string, string> Unresolved() => new()
    {
        { WithStyle("rect:nth-child(2){display:none}"), "rect:nth-child(2)" },
        { WithStyle("rect[class^='gui']{display:none}"), "[class^" },
        { WithStyle("@import url('hide.css');"), "hide.css" },
        { WithStyle("@supports (display:grid) { .guide { display: none } }"), "@supports" },
        { WithStyle("@media (min-width: 100px) { .guide { display: none } }"), "min-width" },
        { WithStyle(".guide { display: var(--hide) }"), "var(--hide)" },
        { WithStyle(".guide { width: 3px }"), "width: 3px" },
        { WithStyle(".guide { d: path('M0 0') }"), "d: path" },
        { "<?xml-stylesheet href='hide.css' type='text/css'?>" + Mm(Part40), "xml-stylesheet" },
        { Mm("<clipPath id='half'><rect width='100' height='300'/></clipPath><g clip-path='url(#half)'>" + Part40 + "</g>"), "\"half\"" },
        { Mm("<clipPath id='ell'><path d='M0 0h400v300h-100v-200h-300z'/></clipPath><g clip-path='url(#ell)'>" + Part40 + "</g>"), "\"ell\"" },
        { Mm("<clipPath id='box' clipPathUnits='objectBoundingBox'><rect width='0.5' height='1'/></clipPath><g clip-path='url(#box)'>" + Part40 + "</g>"), "\"box\"" },
        { Mm("<g style='clip-path: inset(10px)'>" + Part40 + "</g>"), "inset(10px)" },
        { Mm("<mask id='m'><rect width='100' height='300' fill='white'/></mask><g mask='url(#m)'>" + Part40 + "</g>"), "url(#m)" },
        { Mm("<svg x='50' y='50' width='100' height='100'><rect width='200' height='100'/></svg>"), "nested svg" },
        { Mm("<rect systemLanguage='de' x='50' y='50' width='200' height='100'/>"), "\"de\"" },
        { Mm("<rect transform='rotate(3)' transform-origin='center' x='50' y='50' width='200' height='100'/>"), "center" },
    };

    [Theory]
    [MemberData(nameof(Unresolved))]
    public void What_is_not_resolved_is_refused_by_its_name(string text, string named)
    {
        var outcome = Part(text);
        Assert.False(outcome.Succeeded);
        Assert.Contains(named, outcome.Refusal!.Message);
        Assert.False(string.IsNullOrEmpty(outcome.Refusal.Remedy));
    }

    [Fact]
    public void A_drawing_of_which_nothing_is_seen_says_what_was_left_out()
    {
        var outcome = Part(Mm("<rect width='200' height='100' fill='none'/>"));
        Assert.Equal("drawing-empty", outcome.Refusal!.Code);
        Assert.Contains(outcome.Findings, f => f.Severity == Severity.Note && f.Message.Contains("without fill and stroke"));
    }

    [Fact]
    public void A_use_takes_the_size_it_gives_a_nested_svg() => Assert.Equal(6400, Shape(Mm(
        "<defs><svg id='s' width='10' height='10' viewBox='0 0 10 10'><rect width='10' height='10'/></svg></defs><use href='#s' width='80' height='80'/>")).AreaMm2, 1e-6);

    [Fact]
    public void Percentages_inside_a_nested_svg_are_of_its_own_viewport() => Assert.Equal(5000, Shape(Mm(
        "<svg width='100' height='100'><rect width='100%' height='50%'/></svg>")).AreaMm2, 1e-6);

    [Fact]
    public void A_transform_origin_of_two_lengths_is_kept()
    {
        // A quarter turn about the rectangle's own middle (150, 100) in a picture 300 high.
        var box = Shape(Mm("<rect transform='rotate(90)' transform-origin='150 100' x='50' y='50' width='200' height='100'/>")).Outline.Bounds;
        Assert.Equal((100, 200, 100, 300), (Math.Round(box.MinX, 6), Math.Round(box.MaxX, 6), Math.Round(box.MinY, 6), Math.Round(box.MaxY, 6)));
    }

    [Fact]
    public void Elements_nested_without_end_are_refused() => Assert.Equal(
        "drawing-too-large", Part(Mm(string.Concat(Enumerable.Repeat("<g>", 5000)) + Part40 + string.Concat(Enumerable.Repeat("</g>", 5000)))).Refusal!.Code);
}

using System.Globalization;
using PodLayout.Findings;
using static PodLayout.Tests.Reading.Drawings;

namespace PodLayout.Tests.Reading;

/// <summary>Flaws below a micrometre, and lines out and back on themselves: mended, with their place.</summary>
public class FlawsTests
{
    /// <summary>A part of 200 x 100 mm with one flaw, and where.</summary>
    public static TheoryData<string, double, double> Flawed() => new()
    {
        { Dxf(Closed("0", (0, 0), (200.0002, 0), (200, 0), (200, 100), (0, 100))), 200, 0 },
        { Dxf(Line(0, 0, 100.0002, 0) + Line(100, 0.00001, 200, 0) + Line(200, 0, 200, 100) + Line(200, 100, 0, 100) + Line(0, 100, 0, 0)), 100, 0 },
        { Dxf(Closed("0", (0, 0), (200, 0), (200, 100), (100, 100), (100.0005, 100), (0, 100))), 100, 100 },
        { Dxf(Closed("0", (50, 0), (200, 0), (200, 100), (0, 100), (0, 0), (60, 0))), 50, 0 },
        { Dxf(Closed("0", (0, 0), (200, 0), (200, 40), (230, 40), (200, 40), (200, 100), (0, 100))), 230, 40 },
        { Dxf(Closed("0", (0, 0), (200, 0), (200, 40), (230, 40), (230, 40.0004), (200, 40.0004), (200, 100), (0, 100))), 230, 40 },
        { Dxf(Closed("0", (0, 0), (200, 0), (200, 100), (199.999, 100.001), (200.001, 100.0012), (0, 100))), 200, 100 },
    };

    [Theory]
    [MemberData(nameof(Flawed))]
    public void A_flaw_is_mended_and_told_with_its_place(string text, double x, double y)
    {
        var outcome = Part(text);
        Assert.True(outcome.Succeeded, string.Join('\n', outcome.Findings));
        Assert.Equal(20000, outcome.Value.AreaMm2, 0.3);
        Assert.Equal(200, outcome.Value.Outline.Bounds.Width, 0.002);
        Assert.Contains(outcome.Findings, f => f.Code is "flaw-mended" or "gap-joined" && f.Place is Place.InDrawing p && Math.Abs(p.XMm - x) < 0.01 && Math.Abs(p.YMm - y) < 0.01);
    }

    [Fact]
    public void A_closed_line_without_area_is_no_ring()
    {
        var drawing = Read(Dxf(Rectangle(0, 0, 200, 100) + Closed("0", (10, 10), (50, 10), (90, 10)))).Value!;
        Assert.Single(drawing.Rings);
        Assert.Single(drawing.OpenContours);
    }

    [Fact]
    public void What_encloses_more_than_a_hair_is_not_mended()
    {
        Assert.Equal("ring-crosses-itself", Part(Dxf(Closed("0", (0, 0), (200, 100), (200, 0), (0, 100)))).Refusal!.Code);
        Assert.Equal("ring-crosses-itself", Part(Dxf(Closed("0", (0, 0), (200, 0), (200, 100), (150, 100), (150.2, 101), (150.1, 99), (0, 100)))).Refusal!.Code);
        // The bow-tie's area is zero, and its hole must not become the part.
        Assert.Equal("ring-crosses-itself", Part(Dxf(Closed("0", (0, 0), (200, 100), (200, 0), (0, 100)) + Circle(30, 50, 5))).Refusal!.Code);
    }

    [Fact]
    public void What_is_dropped_in_several_places_is_listed_with_each()
    {
        var lines = Rectangle(0, 0, 200, 100) + Circle(50, 50, 10) + Circle(50, 50, 10) + Circle(150, 50, 10) + Circle(150, 50, 10)
            + Line(5, 5, 5, 5) + Line(7, 6, 7, 6) + string.Concat(Enumerable.Range(0, 13).Select(i => Line(10 * i, 90, 10 * i, 90)));
        var told = Part(Dxf(lines)).Findings;
        Assert.StartsWith("2 lines that are drawn twice were dropped once at (60, 50), (160, 50) mm; the first is CIRCLE on layer 0", Assert.Single(told, f => f.Code == "duplicate").Message);
        var empty = Assert.Single(told, f => f.Code == "zero-length").Message;
        Assert.StartsWith("15 lines of no length were dropped at (5, 5), (7, 6), (0, 90), ", empty);
        Assert.Contains(", (90, 90) mm and at 3 more places; the first is LINE on layer 0", empty);
    }

    [Fact]
    public void Gaps_far_below_the_join_gap_are_noted_once_and_not_warned_of()
    {
        var outcome = Part(Dxf(Line(0, 0, 200, 0.003) + Line(200, 0, 200, 100) + Line(200, 100.002, 0, 100) + Line(0, 100, 0, 0)));
        Assert.Equal(20000, outcome.Value!.AreaMm2, 1.0);
        var told = Assert.Single(outcome.Findings);
        Assert.Equal(("gap-joined", Severity.Note), (told.Code, told.Severity));
        Assert.StartsWith("2 gaps of at most 0.003 mm were closed", told.Message);
    }

    [Theory]
    [InlineData("0 CIRCLE 8 0 10 250 20 250 40 200")]
    [InlineData("0 ARC 8 0 10 250 20 250 40 200 50 0 51 360")]
    [InlineData("0 ARC 8 0 10 250 20 250 40 200 50 0 51 180 0 ARC 8 0 10 250 20 250 40 200 50 180 51 0")]
    [InlineData("0 LWPOLYLINE 8 0 90 2 70 1 10 50 20 250 42 1 10 450 20 250 42 1")]
    [InlineData("0 LWPOLYLINE 8 0 90 3 70 0 10 50 20 250 42 1 10 450 20 250 42 1 10 50 20 250")]
    [InlineData("0 ELLIPSE 8 0 10 250 20 250 11 200 21 0 40 1")]
    public void A_plain_circle_is_no_reason_to_say_anything(string entity)
    {
        var outcome = Part(Dxf(entity));
        Assert.True(outcome.Succeeded);
        Assert.Empty(outcome.Findings);
        Assert.Equal(Math.PI * 40000, outcome.Value.AreaMm2, 9.0);
    }

    [Theory]
    [InlineData("<circle cx='250' cy='250' r='200'/>")]
    [InlineData("<path d='M450 250A200 200 0 1 1 50 250A200 200 0 1 1 450 250Z'/>")]
    [InlineData("<path d='M450 250a200 200 0 1 0-400 0a200 200 0 1 0 400 0z'/>")]
    [InlineData("<path d='M450 250A200 200 0 0 1 250 450 200 200 0 0 1 50 250 200 200 0 0 1 250 50 200 200 0 0 1 450 250z'/>")]
    public void A_plain_circle_of_an_SVG_is_no_reason_to_say_anything(string element)
    {
        var outcome = Part($"<svg xmlns='http://www.w3.org/2000/svg' width='500mm' height='500mm' viewBox='0 0 500 500'>{element}</svg>");
        Assert.True(outcome.Succeeded);
        Assert.Empty(outcome.Findings);
        Assert.Equal(Math.PI * 40000, outcome.Value.AreaMm2, 9.0);
    }

    [Fact]
    public void Mending_keeps_a_finely_drawn_line()
    {
        // A wave of 0.02 mm steps, far above what is mended.
        var points = Enumerable.Range(0, 2000).Select(i => (X: i * 0.02, Y: i % 2 * 0.005)).Append((40, 20)).Append((0, 20)).ToArray();
        var text = Dxf(Closed("0", points));
        Assert.Equal(points.Length, Shape(text).Outline.Points.Length);
        Assert.DoesNotContain(Part(text).Findings, f => f.Code == "flaw-mended");
    }

    [Fact]
    public void Numbers_of_things_are_told_in_the_right_form()
    {
        Assert.Equal(["no lines", "1 line", "2 lines"], new[] { 0, 1, 2 }.Select(n => Counted.Of(n, "line")));
        Assert.DoesNotContain("1 lines", string.Join('\n', Part(Dxf(Rectangle(0, 0, 200, 100) + Line(5, 5, 5, 5))).Findings), StringComparison.Ordinal);
        Assert.Equal("1 open line", Counted.Of(1, "open line").ToString(CultureInfo.InvariantCulture));
    }
}

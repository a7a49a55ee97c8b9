using System.Globalization;
using PodLayout.Findings;
using static PodLayout.Tests.Reading.Drawings;

namespace PodLayout.Tests.Reading;

/// <summary>
/// Arcs and ellipses whose angles are rounded near a whole turn (DXF reference, ENTITIES section: ARC groups 50 and 51, degrees,
/// counter-clockwise; ELLIPSE groups 41 and 42, "0.0 to 2pi for a full ellipse").
/// </summary>
public class WholeTurnsTests
{
    private static string Ellipse(string from, string to) => $" 0 ELLIPSE 8 0 10 250 20 150 11 250 21 0 40 0.6 41 {from} 42 {to} ";

    private static string Arc(string from, string to) => $" 0 ARC 8 0 10 250 20 150 40 150 50 {from} 51 {to} ";

    [Theory]
    [InlineData("0", "6.28318530718")]
    [InlineData("0", "6.283185307179586")]
    [InlineData("0", "6.2831853")]
    [InlineData("0", "6.28319")]
    [InlineData("0.0", "6.283185307179587")]
    [InlineData("3.141592653589793", "9.42477796076938")]
    [InlineData("3.14159265359", "9.42477796077")]
    [InlineData("-3.14159265359", "3.14159265359")]
    [InlineData("6.283185307179586", "0")]
    [InlineData("1", "1")]
    [InlineData("0", "0")]
    [InlineData("0", "12.566370614359172")]
    [InlineData("0.5", "0.4999999999")]
    public void An_oval_top_with_a_hole_stays_the_top_however_its_end_is_rounded(string from, string to)
    {
        var shape = Shape(Dxf(Ellipse(from, to) + Circle(250, 150, 40, "HOLES")));
        Assert.Single(shape.Holes);
        Assert.Equal(Math.PI * (250 * 150 - 1600), shape.AreaMm2, 14.0);
    }

    [Theory]
    [InlineData("0", "360.0000001")]
    [InlineData("0", "360")]
    [InlineData("0", "359.9999999")]
    [InlineData("90", "450.000001")]
    [InlineData("180", "-180")]
    [InlineData("0", "0")]
    [InlineData("45", "45")]
    [InlineData("0", "720")]
    [InlineData("360.0000001", "360")]
    public void An_arc_of_a_whole_turn_is_the_circle_however_its_end_is_rounded(string from, string to)
    {
        var shape = Shape(Dxf(Arc(from, to) + Circle(250, 150, 40, "HOLES")));
        Assert.Single(shape.Holes);
        Assert.Equal(Math.PI * (22500 - 1600), shape.AreaMm2, 14.0);
    }

    [Theory]
    [InlineData("0", "0", Severity.Warning)]
    [InlineData("77", "77", Severity.Warning)]
    [InlineData("0", "359.99", Severity.Mended)]
    public void What_a_doubtful_arc_was_taken_for_is_told_with_its_angles(string from, string to, Severity severity)
    {
        var outcome = Part(Dxf(Arc(from, to)));
        var told = Assert.Single(outcome.Findings, f => f.Code == "dxf-arc-whole");
        Assert.Equal(severity, told.Severity);
        Assert.Contains($"from {from} to {to} degrees", told.Message);
        Assert.Contains("whole circle", told.Message);
    }

    [Theory]
    [InlineData("0", "360.5")]
    [InlineData("10", "370.2")]
    public void A_turn_and_a_little_more_is_refused_since_either_may_be_meant(string from, string to) =>
        Assert.Equal("dxf-angle", Part(Dxf(Arc(from, to) + Circle(250, 150, 40))).Refusal!.Code);

    [Fact]
    public void An_ellipse_of_a_turn_and_a_little_more_is_refused() =>
        Assert.Equal("dxf-angle", Part(Dxf(Ellipse("0", "6.29") + Circle(250, 150, 40))).Refusal!.Code);

    [Fact]
    public void An_arc_without_length_is_never_dropped_where_it_may_have_been_a_circle()
    {
        // 3e-8 degrees of 150 mm are 8e-8 mm: less than any two ends are told apart by.
        var outcome = Part(Dxf(Arc("45", "45.00000003") + Circle(250, 150, 40)));
        Assert.Equal("curve-vanishing", outcome.Refusal!.Code);
        Assert.Contains("radius of 150 mm", outcome.Refusal.Message);
    }

    [Fact]
    public void An_arc_without_length_between_two_lines_is_a_corner_rounded_by_nothing()
    {
        var outcome = Part(Dxf(
            Line(0, 0, 200, 0) + Line(200, 0, 200, 100) + Line(200, 100, 0, 100) + Line(0, 100, 0, 0)
            + "0 ARC 8 0 10 195 20 0 40 5 50 0 51 0.0000001"));
        Assert.True(outcome.Succeeded, string.Join('\n', outcome.Findings));
        Assert.Equal(20000, outcome.Value.AreaMm2, 1e-6);
        Assert.Contains(outcome.Findings, f => f is { Code: "curve-vanishing", Severity: Severity.Mended });
    }

    [Fact]
    public void Arcs_short_of_a_turn_keep_their_span()
    {
        foreach (var span in (double[])[0.01, 1, 90, 270, 355, 359])
        {
            // The arc and its two radii enclose r² span / 2.
            double radians = span * Math.PI / 180, x = 100 * Math.Cos(radians), y = 100 * Math.Sin(radians);
            var text = Dxf(string.Create(CultureInfo.InvariantCulture, $" 0 ARC 8 0 10 0 20 0 40 100 50 0 51 {span} ") + Line(0, 0, 100, 0) + Line(x, y, 0, 0));
            Assert.Equal(5000 * radians, Shape(text).AreaMm2, 5.0 * radians + 1e-6);
        }
    }

    [Fact]
    public void A_bulge_that_is_no_number_is_nothing_on_a_side_without_length_and_refused_elsewhere()
    {
        string With(string x) => Dxf($"0 LWPOLYLINE 8 0 90 5 70 1 10 0 20 0 10 200 20 0 42 nan 10 {x} 20 0 10 200 20 100 10 0 20 100");
        var mended = Part(With("200.0005"));
        Assert.True(mended.Succeeded, string.Join('\n', mended.Findings));
        Assert.Equal(20000, mended.Value.AreaMm2, 0.05);
        Assert.Contains(mended.Findings, f => f is { Code: "dxf-bulge", Severity: Severity.Mended });
        Assert.Equal("dxf-not-finite", Part(With("210")).Refusal!.Code);
    }
}

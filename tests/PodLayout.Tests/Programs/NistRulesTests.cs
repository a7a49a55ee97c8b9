using PodLayout.Programs;

namespace PodLayout.Tests.Programs;

/// <summary>
/// Worked rules of Kramer, Proctor, Messina: The NIST RS274/NGC Interpreter, version 3, NISTIR 6556 (2000); the section stands
/// at each test.
/// </summary>
public class NistRulesTests
{
    [Fact]
    public void Section_3_5_3_2_An_arc_with_its_centre_given_relative_to_its_start()
    {
        // "G17 G2 x10 y16 i3 j4 z9" from (7, 7): centre (10, 11), radius 5, and a helix to Z 9.
        var arc = Posted.From(7, 7, 3, "G17 G2 x10 y16 i3 j4 z9 f100 m3").Stretches.Single();
        Assert.Equal((10, 11, 5, new TipPoint(10, 16, 9)), (arc.CentreA, arc.CentreB, arc.RadiusMm, arc.To));
        // Clockwise from (-3,-4) to (0, 5) about the centre.
        var turn = -(2 * Math.PI - (Math.PI / 2 - Math.Atan2(-4, -3))) % (2 * Math.PI);
        Assert.Equal(turn, arc.TurnRad, 12);
        Assert.Equal(Math.Sqrt(25 * turn * turn + 36), arc.LengthMm, 10);
    }

    [Theory]
    // Section 3.5.3.1: a positive radius turns through 180 degrees or less, a negative one through 180 or more.
    [InlineData("G2 X10 Y0 R10", -60)]
    [InlineData("G3 X10 Y0 R10", 60)]
    [InlineData("G2 X10 Y0 R-10", -300)]
    [InlineData("G3 X10 Y0 R-10", 300)]
    [InlineData("G3 X20 Y0 R10", 180)]
    public void Section_3_5_3_1_The_sign_of_the_radius_says_whether_the_arc_is_more_than_half_a_turn(string line, double degrees)
    {
        var arc = Posted.From(0, 0, 0, "M3 F100 " + line).Stretches.Single();
        Assert.Equal(degrees, arc.TurnRad * 180 / Math.PI, 9);
        Assert.Equal(10, arc.RadiusMm, 9);
        Assert.Equal(10 * Math.Abs(degrees) * Math.PI / 180, arc.LengthMm, 9);
    }

    [Fact]
    public void Section_3_5_16_2_A_drilling_cycle_from_1_2_3()
    {
        var path = Posted.From(1, 2, 3, "G90 G81 G98 X4 Y5 Z1.5 R2.8 F100 M3");
        Assert.Equal([(4, 5, 3), (4, 5, 2.8), (4, 5, 1.5), (4, 5, 3)], path.Ends());
        Assert.Equal(
            [StretchKind.Rapid, StretchKind.Rapid, StretchKind.Line, StretchKind.Rapid], path.Stretches.Select(s => s.Kind));
    }

    [Fact]
    public void Section_3_5_16_2_A_drilling_cycle_in_increments_repeated_three_times()
    {
        var path = Posted.From(1, 2, 3, "G91 G81 G98 X4 Y5 Z-0.6 R1.8 L3 F100 M3");
        Assert.Equal(
            [
                (1, 2, 4.8),
                (5, 7, 4.8), (5, 7, 4.2), (5, 7, 4.8),
                (9, 12, 4.8), (9, 12, 4.2), (9, 12, 4.8),
                (13, 17, 4.8), (13, 17, 4.2), (13, 17, 4.8),
            ],
            path.Ends());
    }

    [Fact]
    public void Section_3_5_16_The_second_return_mode_goes_back_to_r_only() => Assert.Equal(
        [(4, 5, 3), (4, 5, 2.8), (4, 5, 1.5), (4, 5, 2.8)], Posted.From(1, 2, 3, "G81 G99 X4 Y5 Z1.5 R2.8 F100 M3").Ends());

    [Fact]
    public void Section_3_5_16_Words_of_a_cycle_stay_until_it_ends() => Assert.Equal(
        [(1, 1, 9), (1, 1, 2), (1, 1, -3), (1, 1, 2), (5, 1, 2), (5, 1, -3), (5, 1, 2), (6, 1, 2)],
        Posted.From(0, 0, 9, "G99 G81 X1 Y1 Z-3 R2 F100 M3\nX5\nG80\nG0 X6").Ends());

    [Fact]
    public void Section_3_5_16_4_A_peck_cycle_goes_back_to_r_after_each_peck() => Assert.Equal(
        [(1, 1, 5), (1, 1, 2), (1, 1, -1), (1, 1, 2), (1, 1, -0.746), (1, 1, -4), (1, 1, 5)],
        Posted.From(1, 0, 5, "G83 X1 Y1 Z-4 R2 Q3 F100 M3").Ends());

    [Fact]
    public void Section_3_5_16_8_Back_boring_goes_in_beside_the_axis_and_comes_out_there() => Assert.Equal(
        [(6, 1, 5), (6, 1, -8), (5, 1, -8), (5, 1, -6), (5, 1, -8), (6, 1, -8), (6, 1, 5), (5, 1, 5)],
        Posted.From(0, 1, 5, "G87 X5 Y1 Z-8 R2 I1 J0 K-6 F100 M3").Ends());

    [Theory]
    // Section 3.3.2.1: 1 to 5 digits, spaces and case do not matter; table 8: the order of a line does not matter.
    [InlineData("g0x +0. 12 34y 7")]
    [InlineData("N010 G00 X.1234 Y7.")]
    [InlineData("Y7 X0.1234 G0 (a comment) ; another")]
    public void Section_3_3_Case_spaces_and_order_do_not_matter(string line) =>
        Assert.Equal([(0.1234, 7, 1)], Posted.From(0, 0, 1, line).Ends());

    [Fact]
    public void Section_3_5_6_G10_sets_a_work_zero_and_G54_to_G59_3_choose_one() => Assert.Equal(
        [(1, 2, 3), (11, 22, 33), (101, 2, 3)],
        Posted.From(0, 0, 0, "G0 X1 Y2 Z3\nG10 L2 P2 X10 Y20 Z30\nG55 G0 X1 Y2 Z3\nG10 L2 P9 X100\nG59.3 X1 Y2 Z3").Ends());

    [Fact]
    public void Section_3_5_17_G92_gives_the_tip_new_coordinates_and_G92_2_and_3_put_them_aside_and_back() => Assert.Equal(
        [(10, 0, 0), (11, 0, 0), (1, 0, 0), (11, 0, 0), (2, 0, 0)],
        Posted.From(0, 0, 0, "G0 X10\nG92 X0\nX1\nG92.2\nX1\nG92.3\nX1\nG92.1\nX2").Ends());

    [Fact]
    public void G52_shifts_all_work_zeros() => Assert.Equal(
        [(15, 0, 0), (10, 0, 0)], Posted.From(0, 0, 0, "G52 X5\nG0 X10\nG52 X0\nX10").Ends());

    [Theory]
    // ISO 6983-1 had G70 and G71 for inch and metric (from memory of secondary sources; the standard itself was not read).
    [InlineData("G20")]
    [InlineData("G70")]
    public void Section_3_5_7_Inches_are_25_4_mm(string unit) =>
        Assert.Equal([(25.4, 50.8, 0)], Posted.From(0, 0, 0, unit + " G0 X1 Y2").Ends());

    [Fact]
    public void Section_3_5_4_A_dwell_takes_its_seconds() =>
        Assert.Equal(2.5, Posted.From(0, 0, 0, "G4 P2.5\nG0 X1").DwellSeconds);

    [Fact]
    public void Section_3_5_19_In_inverse_time_a_line_takes_one_over_f_minutes()
    {
        var line = Posted.From(0, 0, 0, "M3 G93 G1 X100 F2").Stretches.Single();
        Assert.Equal(0.5, line.LengthMm / line.FeedMmPerMin, 12);
    }

    [Theory]
    // Planes, section 3.5.3: a turn is named as seen from the positive end of the third axis, so that from +X a
    // counter-clockwise arc about Y goes to -Z first, and from +Y one about X goes to +Z.
    [InlineData("G18 G3 X-5 I-5 K0", 5, 0, ArcPlane.Zx, 1, -5)]
    [InlineData("G18 G2 X-5 I-5 K0", 5, 0, ArcPlane.Zx, -1, 5)]
    [InlineData("G19 G3 Y-5 J-5 K0", 0, 5, ArcPlane.Yz, 1, 5)]
    [InlineData("G19 G2 Y-5 J-5 K0", 0, 5, ArcPlane.Yz, -1, -5)]
    public void Section_3_5_3_Arcs_in_the_other_planes(string line, double x, double y, ArcPlane plane, int sense, double heightHalfway)
    {
        var arc = Posted.From(x, y, 0, "M3 F100 " + line).Stretches.Single();
        Assert.Equal(plane, arc.Plane);
        Assert.Equal(sense * Math.PI, arc.TurnRad, 12);
        Assert.Equal(heightHalfway, arc.At(0.5).ZMm, 9);
    }

    [Fact]
    public void Full_circles_and_absolute_centres()
    {
        var circle = Posted.From(10, 0, 0, "M3 F100 G90.1 G2 I4 J0").Stretches.Single();
        Assert.Equal((4, 0, -2 * Math.PI), (circle.CentreA, circle.CentreB, circle.TurnRad));
        Assert.Equal(2 * Math.PI * 6, circle.LengthMm, 10);
    }
}

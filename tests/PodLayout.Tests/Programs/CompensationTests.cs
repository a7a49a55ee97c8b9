using PodLayout.Programs;

namespace PodLayout.Tests.Programs;

public class CompensationTests
{
    private static readonly Tool Ten = new(1, 10, new CutterForm.Flat());

    [Fact]
    public void Outer_corners_are_rounded_about_the_corner_and_the_tool_keeps_its_distance()
    {
        // NISTIR 6556, appendix B: the first move touches the circle about its end; outer corners get an arc.
        var path = Posted.From(-30, -20, 0, "M3 F100 G42 D1\nG1 X0 Y0\nX100\nY50\nX0\nY0\nG40 X-30 Y-20", Ten);
        // A square of 100 x 50 seen from outside, counter-clockwise with the tool on the right: 5 mm outside all along.
        var inside = path.Stretches.Where(s => s.Line is >= 3 and <= 6).ToList();
        foreach (var stretch in inside)
        {
            for (var share = 0.0; share <= 1; share += 0.125)
            {
                var p = stretch.At(share);
                double x = Math.Max(0, Math.Max(-p.XMm, p.XMm - 100)), y = Math.Max(0, Math.Max(-p.YMm, p.YMm - 50));
                Assert.Equal(5, Math.Sqrt(x * x + y * y), 9);
            }
        }

        // Three whole corners of a quarter each, apart from the entry.
        Assert.Equal(3 * 5 * Math.PI / 2, inside.Where(s => s.Kind == StretchKind.Arc).Sum(s => s.LengthMm), 9);
        Continuous(path);
    }

    [Fact]
    public void Inner_corners_are_cut_where_the_two_paths_cross()
    {
        var path = Posted.From(50, 25, 0, "M3 F100 G41 D1\nG1 X50 Y0\nX100\nY50\nX0\nY0\nX50\nG40 Y25", Ten);
        Assert.Equal(
            [(50, 5, 0), (95, 5, 0), (95, 45, 0), (5, 45, 0), (5, 5, 0), (50, 5, 0), (50, 25, 0)], path.Ends());
        Continuous(path);
    }

    [Fact]
    public void Arcs_are_cut_on_the_radius_that_the_side_asks_for()
    {
        // Round a disc of radius 20 from outside, clockwise with the tool on the left; and inside a ring.
        var outside = Posted.From(40, 0, 0, "M3 F100 G41 D1\nG1 X20 Y0\nG2 I-20 J0\nG40 G1 X40 Y0", Ten);
        Assert.Contains(outside.Stretches, s => s.Kind == StretchKind.Arc && Math.Abs(s.RadiusMm - 25) < 1e-9 && Math.Abs(s.TurnRad + 2 * Math.PI) < 1e-9);
        var within = Posted.From(0, 0, 0, "M3 F100 G41 D1\nG1 X20 Y0\nG3 I-20 J0\nG40 G1 X0 Y0", Ten);
        Assert.Contains(within.Stretches, s => s.Kind == StretchKind.Arc && Math.Abs(s.RadiusMm - 15) < 1e-9);
        Continuous(outside);
        Continuous(within);
    }

    [Fact]
    public void A_plunge_stays_at_the_corner_of_the_tools_path()
    {
        var path = Posted.From(50, 25, 5, "M3 F100 G41 D1\nG0 X50 Y0\nG1 Z-3\nX100\nZ-6\nY50\nG40 X50", Ten);
        Assert.Equal([(50, 5, 5), (50, 5, -3), (95, 5, -3), (95, 5, -6), (95, 50, -6), (50, 50, -6)], path.Ends());
    }

    [Theory]
    [InlineData("G41 D1\nG1 X4 Y0\nX50\nG40 X0", "compensation-unclear", 2)]
    [InlineData("G41 D1\nG1 X20 Y0\nG3 X26 Y0 I3 J0\nG40 G1 X40 Y0", "compensation-too-tight", 3)]
    [InlineData("G41 D1\nG1 X20 Y0\nY50\nX18\nY0\nG40 X0", "compensation-too-tight", 4)]
    [InlineData("G41 D7\nG1 X20\nG40 X0", "tool-missing", 1)]
    [InlineData("G41 D1\nG42 D1\nG1 X20", "compensation-unclear", 2)]
    [InlineData("G18 G41 D1\nG1 X20", "compensation-unclear", 1)]
    [InlineData("G41 D1\nG1 X20 Y0\nG81 X5 Z-3 R2", "cycle-under-compensation", 3)]
    [InlineData("G41 D1\nG28 X0", "word-under-compensation", 2)]
    public void What_cannot_be_followed_is_refused_with_its_line(string text, string code, int line)
    {
        var outcome = Posted.Read("M3 F100 " + text + "\nM2", new() { Start = new(0, 0, 0), Tools = Posted.Tools(Ten) });
        Assert.Equal((code, $"part.nc:{line}"), (outcome.Refusal!.Code, outcome.Refusal.Place?.ToString()));
    }

    private static void Continuous(ToolPath path)
    {
        for (var i = 1; i < path.Stretches.Length; i++)
        {
            Assert.Equal(0, path.Stretches[i - 1].To.DistanceTo(path.Stretches[i].From), 6);
        }
    }
}

using PodLayout.Cli;
using PodLayout.Findings;
using PodLayout.Tests.Cli;

namespace PodLayout.Tests.Programs;

/// <summary>What real posts write and the letter of the standard does not have, read as what it means.</summary>
public class ForeignHeadersTests
{
    private const string Start = "G21 G90 G17\nT1 M6\nS18000 M3\nG0 X0 Y0\nG0 Z5\n";

    [Theory]
    [InlineData("G0 G17 G40 G49 G80 G90")]
    [InlineData("G80 G17 G0 G90")]
    [InlineData("G0 G17 G0 G90")]
    public void A_header_that_ends_cycles_and_names_a_motion_leaves_the_motion_in_force(string header)
    {
        var read = Posted.Read(Start + "G81 X3 Y3 Z-2 R1 F500\n" + header + "\nX10 Y20\nM2\n");
        Assert.True(read.Succeeded, read.Refusal?.ToString());
        Assert.Equal((10, 20, 5), read.Value!.Ends()[^1]);
        Assert.Equal(PodLayout.Programs.StretchKind.Rapid, read.Value.Stretches[^1].Kind);
        Assert.DoesNotContain(read.Findings, f => f.Severity == Severity.Warning);
    }

    [Fact]
    public void A_cycle_that_is_ended_on_its_own_line_is_refused() =>
        Assert.Equal("modal-group-twice", Posted.Read(Start + "G81 G80 X3 Y3 Z-2 R1 F500\nM2\n").Refusal?.Code);

    [Fact]
    public void A_cycle_after_the_end_of_another_is_begun()
    {
        var read = Posted.Read(Start + "G80 G81 X3 Y4 Z-2 R1 F500\nM2\n");
        Assert.Contains((3, 4, -2), read.Value!.Ends());
    }

    [Fact]
    public void A_rapid_way_to_the_reference_point_is_read()
    {
        var read = Posted.Read(Start + "G0 G91 G28 Z0\nG90 G0 X7\nZ9\nM2\n");
        Assert.Equal((7, 0, 9), read.Value!.Ends()[^1]);
    }

    // From radius 5 about (5, 0) at (0, 0) to radius 5.013 at (10.013, 0).
    [Fact]
    public void A_spiral_arc_is_followed_to_its_end_and_told_once()
    {
        var read = Posted.Read(Start + "G1 Z-1 F500\nG2 X10.013 Y0 I5 J0\nG2 X0 Y0 I-5.0065 J0\nM2\n");
        Assert.True(read.Succeeded, read.Refusal?.ToString());
        Assert.Single(read.Findings, f => f is { Code: "arc-spiral", Severity: Severity.Warning });
        var spiral = read.Value.Stretches[^2];
        Assert.Equal(10.013, spiral.To.XMm);
        // A quarter turn before its end the radius has grown by half of what it differs.
        Assert.Equal(5.0065, Math.Abs(spiral.At(0.5).YMm), 6);
    }

    [Theory]
    [InlineData("G2 X10.06 Y0 I5 J0")]
    [InlineData("G2 X0.415 Y0 I0.2 J0")]
    [InlineData("G2 X10.2 Y0 R5")]
    public void An_arc_about_a_wrong_centre_is_refused(string arc) =>
        Assert.Equal("arc-radius", Posted.Read(Start + "G1 Z-1 F500\n" + arc + "\nM2\n").Refusal?.Code);

    [Fact]
    public void A_bare_G92_sets_nothing()
    {
        var read = Posted.Read(Start + "G92\nG92 S12000\nG0 X10\nM2\n");
        Assert.True(read.Succeeded, read.Refusal?.ToString());
        Assert.Equal((10, 0, 5), read.Value!.Ends()[^1]);
        Assert.Single(read.Findings, f => f is { Code: "word-incomplete", Severity: Severity.Warning });
        Assert.Equal("word-incomplete", Posted.Read(Start + "G92 X3\nG92\nG0 X10\nM2\n").Refusal?.Code);
    }

    [Theory]
    [InlineData("(", ")")]
    [InlineData(";", "")]
    public void Comments_of_any_length_are_skipped(string opening, string closing)
    {
        var read = Posted.Read(Start + "G0 X10 " + opening + new string('c', 100_000) + closing + "\nM2\n");
        Assert.True(read.Succeeded, read.Refusal?.ToString());
        Assert.Equal((10, 0, 5), read.Value!.Ends()[^1]);
    }

    [Theory]
    [InlineData("part.mpf")]
    [InlineData("part.gc")]
    [InlineData("part.g")]
    [InlineData("part.PRG")]
    [InlineData("part.txt")]
    public void Inspect_takes_names_that_posts_give(string name)
    {
        using Scratch scratch = new();
        var ran = Ran.Of("inspect", scratch.Put(name, Start + "G1 Z-1 F500\nX10\nM2\n"));
        Assert.Equal((ExitCodes.LayoutFound, ""), (ran.Code, ran.Error));
        Assert.Contains("3 moves", ran.Out, StringComparison.Ordinal);
    }
}

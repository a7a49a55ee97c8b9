using PodLayout.Cli;

namespace PodLayout.Tests.Cli;

public class InspectTests
{
    private static readonly string Slot = Repository.Path("tests", "PodLayout.Tests", "Reading", "ezdxf", "slot-R2010.dxf");

    [Fact]
    public void Rings_layers_and_the_unit_are_printed()
    {
        var ran = Ran.Of("inspect", Slot);
        Assert.Equal((0, ""), (ran.Code, ran.Error));
        Assert.Contains("Unit: millimetre", ran.Out, StringComparison.Ordinal);
        Assert.Contains("Closed rings: ", ran.Out, StringComparison.Ordinal);
        Assert.Contains("Open contours: 0", ran.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_unit_given_as_an_option_goes_before_the_drawing() =>
        Assert.Contains("1 drawing unit = 25.4 mm", Ran.Of("inspect", Slot, "--units", "in").Out, StringComparison.Ordinal);

    [Theory]
    [InlineData("--units", "inches")]
    [InlineData("--join-gap", "-1")]
    [InlineData("--join-gap", "0,1")]
    public void A_wrong_option_is_a_wrong_command_line(string option, string value)
    {
        var ran = Ran.Of("inspect", Slot, option, value);
        Assert.Matches($"^podlayout: error: {option}: found (the text )?\"?{System.Text.RegularExpressions.Regex.Escape(value)}\"?", ran.OnlyError());
        Assert.Equal(ExitCodes.BadCommandLine, ran.Code);
    }

    [Fact]
    public void What_is_no_drawing_is_a_bad_drawing()
    {
        using Scratch scratch = new();
        var ran = Ran.Of("inspect", scratch.Put("part.dxf", [0x89, (byte)'P', (byte)'N', (byte)'G', 13, 10, 26, 10]));
        ran.OnlyError();
        Assert.Equal(ExitCodes.BadDrawing, ran.Code);
    }

    [Fact]
    public void Tools_extents_depths_and_times_of_a_program_are_printed()
    {
        var ran = Ran.Of("inspect", Repository.Path("samples", "tray", "part.nc"));
        Assert.Equal((0, ""), (ran.Code, ran.Error));
        Assert.Contains("Tools: 3, changed 4 times", ran.Out, StringComparison.Ordinal);
        Assert.Contains("lowest Z -29 ", ran.Out, StringComparison.Ordinal);
        // The tool's centre runs 6 mm outside a tray of 700 x 440.
        Assert.Contains("712 x 452", ran.Out, StringComparison.Ordinal);
        Assert.Contains("Cutting time: ", ran.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_damaged_program_is_refused_with_its_line()
    {
        using Scratch scratch = new();
        var ran = Ran.Of("inspect", scratch.Put("part.nc", "G21\nG1 X#5 F100\n"));
        Assert.Contains("part.nc:2: found \"#\"", ran.OnlyError(), StringComparison.Ordinal);
        Assert.Equal(ExitCodes.BadDrawing, ran.Code);
    }

    [Theory]
    [InlineData("3")]
    [InlineData("3=0")]
    [InlineData("x=12")]
    public void A_wrong_tool_option_is_a_wrong_command_line(string value) => Assert.Equal(
        ExitCodes.BadCommandLine, Ran.Of("inspect", Repository.Path("samples", "tray", "part.nc"), "--tool", value).Code);
}

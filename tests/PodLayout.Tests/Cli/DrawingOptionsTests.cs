using System.Text.Json.Nodes;
using PodLayout.Cli;
using static PodLayout.Tests.Reading.Drawings;

namespace PodLayout.Tests.Cli;

/// <summary><c>inspect</c> says what <c>plan</c> does, and both take what their messages advise.</summary>
public class DrawingOptionsTests
{
    private static readonly string Two = Dxf(Rectangle(0, 0, 400, 200) + Circle(100, 100, 20) + Rectangle(500, 0, 300, 150, "B"));

    private static readonly string BowTie = Dxf(Closed("0", (0, 0), (200, 100), (200, 0), (0, 100)));

    private static readonly string Gap = Dxf(
        Line(0, 0, 400, 0) + Line(400, 0, 400, 200) + Line(400, 200, 0, 200) + Line(0, 200, 0, 0.16));

    private static readonly string Framed = Dxf(Rectangle(-50, -50, 700, 500, "A") + Rectangle(0, 0, 400, 200, "B"));

    public static TheoryData<string, string, string> Refused() => new()
    {
        { "bow-tie", BowTie, "ring-crosses-itself" },
        { "two parts", Two, "parts-several" },
        { "gap", Gap, "ring-open" },
        { "frame", Framed, "outline-doubtful" },
        { "no unit", Dxf(Rectangle(0, 0, 400, 200), header: ""), "unit-missing" },
        { "hole on an open outline", Dxf(Line(0, 0, 400, 0) + Line(400, 0, 400, 200) + Line(400, 200, 0, 200) + Circle(100, 100, 30)), "ring-open" },
    };

    [Theory]
    [MemberData(nameof(Refused))]
    public void Inspect_ends_with_the_refusal_of_plan(string name, string text, string code)
    {
        using Scratch scratch = new();
        var file = scratch.Put("part.dxf", text);
        var planned = Ran.Of("plan", file, "--thickness", "20");
        Assert.Equal(ExitCodes.BadDrawing, planned.Code);
        Assert.Contains($"[{code}]", planned.OnlyError(), StringComparison.Ordinal);
        var inspected = Ran.Of("inspect", file);
        Assert.Equal(planned.Code, inspected.Code);
        var refusal = planned.Error.Split(" (and ")[0].TrimEnd('\n');
        Assert.Contains(refusal, inspected.Error, StringComparison.Ordinal);
        Assert.StartsWith("podlayout: error: ", inspected.Error.TrimEnd('\n').Split('\n')[^1], StringComparison.Ordinal);
        var json = JsonNode.Parse(Ran.Of("inspect", file, "--json").Out)!;
        Assert.False((bool)json["isPlanned"]!, name);
        Assert.Contains(json["findings"]!.AsArray(), f => (string)f!["code"]! == code && (string)f["severity"]! == "refused");
    }

    [Theory]
    [InlineData("--part", "1", "area 78743.4 mm2, 1 hole")]
    [InlineData("--part", "2", "area 45000.0 mm2, no holes")]
    [InlineData("--outline-layer", "B", "area 45000.0 mm2, no holes")]
    [InlineData("--layer", "B=ignore", "area 78743.4 mm2, 1 hole")]
    public void The_part_that_would_be_planned_is_shown(string option, string value, string words)
    {
        using Scratch scratch = new();
        var ran = Ran.Of("inspect", scratch.Put("part.dxf", Two), option, value);
        Assert.Equal(0, ran.Code);
        // 400 x 200 less a circle of radius 20, on the true curve: 80000 - 1256.64.
        Assert.Contains(words, ran.Out, StringComparison.Ordinal);
        Assert.Contains(": outline: area ", ran.Out.Replace("  ", " ", StringComparison.Ordinal).Replace(" outline", ": outline", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void Parts_to_choose_from_are_listed_with_number_place_and_size()
    {
        using Scratch scratch = new();
        var ran = Ran.Of("inspect", scratch.Put("part.dxf", Two));
        Assert.Contains("Parts to choose from with --part: 2\n    1  from (0, 0) to (400, 200) mm: 400 x 200 mm, layer 0, 1 hole\n    2  from (500, 0) to (800, 150) mm: 300 x 150 mm, layer B, no holes\n", ran.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Plan_takes_the_part_the_join_gap_and_the_outline_layer_that_its_messages_name()
    {
        using Scratch scratch = new();
        var (two, gap, framed) = (scratch.Put("two.dxf", Two), scratch.Put("gap.dxf", Gap), scratch.Put("framed.dxf", Framed));
        AssertPlanned("plan", two, "--thickness", "20", "--part", "2");
        Assert.Contains("--join-gap 0.17", Ran.Of("plan", gap, "--thickness", "20").Error, StringComparison.Ordinal);
        AssertPlanned("plan", gap, "--thickness", "20", "--join-gap", "0.17");
        AssertPlanned("plan", framed, "--thickness", "20", "--outline-layer", "B");
    }

    // Whether so small a part holds against the cuts that are assumed is another question: there is a layout.
    private static void AssertPlanned(params string[] arguments) =>
        Assert.Contains(Ran.Of(arguments).Code, new[] { ExitCodes.LayoutFound, ExitCodes.DoesNotHold });

    [Fact]
    public void A_drawing_in_inches_is_told_in_inches()
    {
        using Scratch scratch = new();
        var ran = Ran.Of("inspect", scratch.Put("part.dxf", Dxf(Rectangle(0, 0, 17.5, 16) + Line(3, 3, 5, 5), header: "9 $INSUNITS 70 1")));
        Assert.Contains("from (0, 0) to (17.5, 16) in: 17.5 x 16 in", ran.Out, StringComparison.Ordinal);
        Assert.Contains("area 280.0 sq in", ran.Out, StringComparison.Ordinal);
        Assert.Contains("at (3, 3) in: 1 open line on layer 0", ran.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(500, 300, "--units mm, or", "millimetres are likelier")]
    [InlineData(20, 12, "--units in, or", "inches are likelier")]
    [InlineData(130, 90, "--units mm, or", "either may be meant")]
    public void Without_a_unit_the_size_in_both_is_told_and_the_likelier_one(double width, double height, string remedy, string words)
    {
        var refusal = Part(Dxf(Rectangle(0, 0, width, height), header: "")).Refusal!;
        Assert.Contains(words, refusal.Message);
        Assert.Contains(remedy, refusal.Remedy);
        Assert.Contains(FormattableString.Invariant($"{width} x {height} mm in millimetres or {width * 25.4:0.#} x {height * 25.4:0.#} mm in inches"), refusal.Message);
        var svg = Part($"<svg viewBox='0 0 900 900'><rect width='{width}' height='{height}'/></svg>").Refusal!;
        Assert.Contains(words, svg.Message);
    }

    [Fact]
    public void The_header_decides_which_unit_is_likelier_where_the_size_does_not() => Assert.Contains(
        "inches are likelier", Part(Dxf(Rectangle(0, 0, 130, 90), header: "9 $MEASUREMENT 70 0")).Refusal!.Message);

    [Theory]
    [InlineData(0.4)]
    [InlineData(1.5)]
    [InlineData(5)]
    public void A_hole_is_measured_on_its_true_curve(double radius)
    {
        using Scratch scratch = new();
        var json = JsonNode.Parse(Ran.Of("inspect", scratch.Put("part.dxf", Dxf(Rectangle(0, 0, 200, 100) + Circle(50, 50, radius))), "--json").Out)!;
        var hole = json["rings"]!.AsArray()[1]!;
        Assert.Equal("hole", (string)hole["meaning"]!);
        Assert.Equal(Math.PI * radius * radius, (double)hole["areaMm2"]!, 1e-6);
        Assert.Equal(Math.Tau * radius, (double)hole["perimeterMm"]!, 1e-4);
    }

    [Theory]
    [InlineData("--part", "0")]
    [InlineData("--part", "1.5")]
    [InlineData("--part", "two")]
    [InlineData("--join-gap", "11")]
    [InlineData("--layer", "B")]
    [InlineData("--layer", "B=frame")]
    public void A_wrong_option_is_a_wrong_command_line_in_both_commands(string option, string value)
    {
        using Scratch scratch = new();
        var file = scratch.Put("part.dxf", Two);
        foreach (var ran in new[] { Ran.Of("inspect", file, option, value), Ran.Of("plan", file, "--thickness", "20", option, value) })
        {
            Assert.Equal(ExitCodes.BadCommandLine, ran.Code);
            Assert.Contains(option, ran.OnlyError(), StringComparison.Ordinal);
        }
    }
}

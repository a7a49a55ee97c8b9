using System.Text.Json.Nodes;
using PodLayout.Cli;
using static PodLayout.Tests.Reading.Drawings;

namespace PodLayout.Tests.Cli;

/// <summary>
/// The part that was meant is planned, or the drawing is refused: whole commands on drawings of which another ring could be taken for the
/// part. Areas are by formula, less what chords of a circle or an ellipse miss.
/// </summary>
public class WrongPartTests
{
    private const string Rect = "<rect x='50' y='50' width='300' height='200'/>";

    private static string Svg(string inner) =>
        $"<svg xmlns='http://www.w3.org/2000/svg' width='600mm' height='400mm' viewBox='0 0 600 400'>{inner}</svg>";

    private static string Ellipse(string from, string to) => $" 0 ELLIPSE 8 0 10 250 20 150 11 250 21 0 40 0.6 41 {from} 42 {to} ";

    private static string Open(string layer, params (double X, double Y)[] points) =>
        Closed(layer, points).Replace(" 70 1 ", " 70 0 ", StringComparison.Ordinal);

    private const double Oval = Math.PI * (250 * 150 - 1600);

    /// <summary>Drawing, its options, and the area of the part in mm².</summary>
    public static TheoryData<string, string, double> Meant() => new()
    {
        { Dxf(Ellipse("0", "6.28318530718") + Circle(250, 150, 40)), "", Oval },
        { Dxf(Ellipse("3.14159265359", "9.42477796077") + Circle(250, 150, 40, "HOLES")), "", Oval },
        { Dxf(" 0 ARC 8 0 10 250 20 150 40 150 50 0 51 360.0000001 " + Circle(250, 150, 40)), "", Math.PI * (22500 - 1600) },
        { Svg("<rect width='600' height='400' fill='none'/>" + Rect), "", 60000 },
        { Svg("<style>.guide{display:none}</style><rect class='guide' x='1' y='1' width='590' height='390'/>" + Rect), "", 60000 },
        { Svg("<clipPath id='c'><rect x='560' y='360' width='9' height='9'/></clipPath><rect width='300' height='300' clip-path='url(#c)'/>" + Rect), "", 60000 },
        { Dxf(Rectangle(-100, -50, 594, 420, "FRAME") + Rectangle(0, 0, 300, 200, "PART")), "", 60000 },
        { Dxf(Rectangle(-100, -50, 580, 410, "A") + Rectangle(0, 0, 300, 200, "B")), "--outline-layer B", 60000 },
        { Dxf(Rectangle(0, 0, 300, 200) + Line(20, 20, 280, 180) + Line(-20, 100, 320, 100)), "", 60000 },
        { Dxf(Rectangle(0, 0, 400, 300) + Rectangle(500, 0, 300, 200)), "--part 2", 60000 },
        { Dxf(Closed("0", (0, 0), (300.0002, 0), (300, 0), (300, 200), (0, 200))), "", 60000 },
    };

    [Theory]
    [MemberData(nameof(Meant))]
    public void The_part_that_was_meant_is_planned(string text, string options, double area)
    {
        using Scratch scratch = new();
        var ran = Plan(scratch, text, options);
        // Whether so small a part can be supported and holds at this place is another question.
        Assert.True(ran.Code is ExitCodes.LayoutFound or ExitCodes.DoesNotHold or ExitCodes.NoLayout, ran.Error);
        var layout = JsonNode.Parse(File.ReadAllText(scratch.Path("out/layout.json")))!;
        Assert.Equal(area, (double)layout["part"]!["areaMm2"]!, 20.0);
    }

    /// <summary>Drawing, its options, and a word of the refusal.</summary>
    public static TheoryData<string, string, string> Doubtful() => new()
    {
        { Dxf(Ellipse("0", "6.29") + Circle(250, 150, 40)), "", "dxf-angle" },
        { Dxf(" 0 ARC 8 0 10 250 20 150 40 150 50 45 51 45.00000003 " + Circle(250, 150, 40)), "", "curve-vanishing" },
        { Svg("<style>rect:nth-child(2){display:none}</style>" + Rect + Rect), "", "nth-child" },
        { Svg("<mask id='m'><rect width='100' height='300'/></mask><g mask='url(#m)'>" + Rect + "</g>"), "", "url(#m)" },
        { Dxf(Rectangle(-100, -50, 580, 410, "A") + Rectangle(0, 0, 300, 200, "B")), "", "--outline-layer \"B\"" },
        { Dxf(Closed("0", (0, 0), (400, 200), (400, 0), (0, 200)) + Circle(60, 100, 20)), "", "ring-crosses-itself" },
        { Dxf(Open("0", (0, 0), (400, 0), (400, 200), (0, 200), (0, 0.5)) + Circle(200, 100, 60)), "", "--join-gap 0.51" },
        { Dxf(Open("0", (0, 0), (400, 0), (400, 200), (0, 200)) + Circle(200, 100, 60)), "", "ring-open" },
        { Dxf(Rectangle(0, 0, 400, 300) + Rectangle(500, 0, 300, 200)), "", "--part NUMBER" },
        { Dxf(Rectangle(0, 0, 400, 300), header: ""), "", "--units mm" },
    };

    [Theory]
    [MemberData(nameof(Doubtful))]
    public void Where_it_cannot_be_told_nothing_is_planned(string text, string options, string words)
    {
        using Scratch scratch = new();
        var ran = Plan(scratch, text, options);
        Assert.Equal(ExitCodes.BadDrawing, ran.Code);
        Assert.Contains(words, ran.OnlyError(), StringComparison.Ordinal);
        Assert.False(File.Exists(scratch.Path("out/layout.json")));
    }

    private static Ran Plan(Scratch scratch, string text, string options) => Ran.Of(
    [
        "plan", scratch.Put(text.StartsWith('<') ? "part.svg" : "part.dxf", text), "--thickness", "20", "--at", "400,300", "--out", scratch.Path("out"),
        .. options.Split(' ', StringSplitOptions.RemoveEmptyEntries),
    ]);
}

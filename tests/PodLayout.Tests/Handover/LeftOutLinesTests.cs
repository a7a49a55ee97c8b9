using System.Collections.Immutable;
using System.Text;
using System.Text.Json.Nodes;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Handover;
using PodLayout.Handover.Picture;
using PodLayout.Handover.Setup;
using PodLayout.Layouts;
using PodLayout.Tests.Cli;
using PodLayout.Tests.Independent;
using static PodLayout.Tests.Reading.Drawings;

namespace PodLayout.Tests.Handover;

/// <summary>Open lines that reading left out are handed over and shown: a person sees whether one of them was an edge.</summary>
public class LeftOutLinesTests
{
    private const string LegendWords = "line of the drawing that was left out";

    // The part's zero of this layout lies at (30, 30), not turned, on a board of 300 x 300 mm.
    private static PlanResult Ell(params ImmutableArray<Point2>[] lines)
    {
        var ell = HandMade.Ell();
        return ell with { Job = ell.Job with { Part = ell.Job.Part with { Shape = ell.Job.Part.Shape with { LeftOutLines = [.. lines] } } } };
    }

    private static Point2 P(double x, double y) => new(x, y);

    private static List<ImmutableArray<Point2>> Drawn(Sheet sheet) =>
        [.. sheet.Layers.Single(l => l.Name == "left-out").Primitives.Cast<Primitive.Line>().Select(l => l.Points)];

    private static string Words(Sheet sheet) => string.Join(' ', sheet.Layers.SelectMany(l => l.Primitives).OfType<Primitive.Text>().Select(t => t.Words));

    [Fact]
    public void The_part_of_a_drawing_keeps_the_lines_that_were_left_out_and_no_others()
    {
        var shape = Shape(Dxf(Rectangle(0, 0, 200, 100) + Line(20, 20, 180, 80, "TEXT") + Line(-10, 50, 210, 50)));
        Assert.Equal([P(-10, 50), P(20, 20), P(180, 80), P(210, 50)], shape.LeftOutLines.SelectMany(l => l).OrderBy(p => p.X));
        Assert.Equal(2, shape.LeftOutLines.Length);
        var ignored = Shape(Dxf(Rectangle(0, 0, 200, 100) + Line(20, 20, 180, 80, "TEXT")), roles: new(null, ImmutableSortedDictionary<string, PodLayout.Parts.LayerRole>.Empty.Add("TEXT", PodLayout.Parts.LayerRole.Ignore)));
        Assert.Empty(ignored.LeftOutLines);
    }

    [Fact]
    public void Of_very_many_lines_the_longest_are_kept()
    {
        // 3000 letters of 0.5 mm, and last a line of 150 mm.
        var letters = string.Concat(Enumerable.Range(0, 3000).Select(i => Line(5 + 3 * (i % 60), 5 + 1.5 * (i / 60), 5.5 + 3 * (i % 60), 5 + 1.5 * (i / 60))));
        var shape = Shape(Dxf(Rectangle(0, 0, 200, 100) + letters + Line(20, 90, 170, 90)));
        Assert.Equal(500, shape.LeftOutLines.Length);
        Assert.Contains(shape.LeftOutLines, l => (l[^1] - l[0]).Length > 149.9);
    }

    [Fact]
    public void A_line_of_very_many_points_becomes_coarser_and_stays_where_it_was()
    {
        // A spiral of 40000 chords of 0.005 to 0.05 mm.
        var spiral = Enumerable.Range(0, 40000).Select(i => (A: i * 1e-3, R: 5 + i * 1e-3)).Select(s => (100 + s.R * Math.Cos(s.A), 50 + s.R * Math.Sin(s.A))).ToArray();
        var open = Closed("0", spiral).Replace(" 70 1 ", " 70 0 ", StringComparison.Ordinal);
        var line = Assert.Single(Shape(Dxf(Rectangle(0, 0, 200, 100) + open)).LeftOutLines);
        Assert.InRange(line.Length, 1000, 4000);
        Assert.Equal(spiral[0], (line[0].X, line[0].Y));
        Assert.Equal(spiral[^1], (line[^1].X, line[^1].Y));
        // Each is a point of the spiral, whose radius follows from its angle but for whole turns.
        Assert.All(line, p =>
        {
            var (r, angle) = ((p - new Point2(100, 50)).Length, Math.Atan2(p.Y - 50, p.X - 100));
            Assert.Equal(0, Math.IEEERemainder(r - 5 - angle, Math.Tau), 1e-6);
        });
    }

    [Fact]
    public void They_are_filed_as_drawn_and_as_they_lie_and_an_older_file_is_read_as_one_without()
    {
        var json = JsonNode.Parse(LayoutJson.Write(Ell([P(20, 20), P(60.1234, 20)])))!;
        double[][] Line(string shape) => [.. json["part"]![shape]!["leftOutLinesMm"]![0]!.AsArray().Select(p => new[] { (double)p![0]!, (double)p[1]! })];
        Assert.Equal([[20, 20], [60.123, 20]], Line("inDrawing"));
        Assert.Equal([[50, 50], [90.123, 50]], Line("onBoard"));
        var read = LayoutJson.ToPlan(LayoutJson.Read("layout.json", json.ToJsonString()).Value!);
        Assert.Equal([P(20, 20), P(60.123, 20)], Assert.Single(read.Job.Part.Shape.LeftOutLines));
        Assert.Equal(LayoutJson.Write(read), LayoutJson.Write(Ell([P(20, 20), P(60.1234, 20)])));
        foreach (var shape in new[] { "inDrawing", "onBoard" })
        {
            json["part"]![shape]!.AsObject().Remove("leftOutLinesMm");
        }

        var old = LayoutJson.Read("layout.json", json.ToJsonString());
        Assert.True(old.Succeeded, old.Refusal?.ToString());
        Assert.Empty(LayoutJson.ToPlan(old.Value).Job.Part.Shape.LeftOutLines);
    }

    [Theory]
    [InlineData("[[1, 2]]", "$.part.inDrawing.leftOutLinesMm[0]")]
    [InlineData("[[1, 2], [1e10, 2]]", "$.part.inDrawing.leftOutLinesMm[0][1]")]
    public void A_line_of_one_point_or_far_away_is_refused_with_its_path(string line, string path)
    {
        var json = JsonNode.Parse(LayoutJson.Write(Ell([P(20, 20), P(60, 20)])))!;
        json["part"]!["inDrawing"]!["leftOutLinesMm"]![0] = JsonNode.Parse(line);
        Assert.Equal(path, Assert.IsType<Place.InJson>(EditedLayout.Read("layout.json", Encoding.UTF8.GetBytes(json.ToJsonString())).Refusal!.Place).Path);
    }

    [Fact]
    public void Picture_and_card_draw_them_where_they_lie_and_explain_them()
    {
        var plan = Ell([P(20, 20), P(60, 20)]);
        var paper = SetupPicture.OnPaper(plan, Laying.Of(plan, plan.Layout!), ("x", ["y"]), 1, PaperSize.A4)[0];
        var screen = SetupPicture.OnScreen(plan, Laying.Of(plan, plan.Layout!));
        foreach (var (sheet, legend) in new[] { (LayoutPicture.Draw(plan), LayoutPicture.Draw(plan)), (paper, paper), (screen.Picture, screen.Signs) })
        {
            Assert.Equal([P(50, 50), P(90, 50)], Assert.Single(Drawn(sheet)));
            Assert.Contains(LegendWords, Words(legend), StringComparison.Ordinal);
        }

        var style = PictureStyles.Of("left-out");
        Assert.NotEmpty(style.DashMm);
        Assert.True(style.WidthMm < PictureStyles.Of("part-edge").WidthMm / 2);
    }

    [Fact]
    public void What_lies_off_the_board_is_cut_off_so_that_it_runs_over_no_words_of_the_page()
    {
        // On the board from (-70, 130) up to the middle and out again; and one that is nowhere near.
        var sheet = LayoutPicture.Draw(Ell([P(-100, 100), P(120, 100), P(120, 400)], [P(-100, -100), P(-100, 400)]));
        Assert.Equal([P(0, 130), P(150, 130), P(150, 300)], Assert.Single(Drawn(sheet)));
    }

    [Fact]
    public void A_line_that_leaves_the_board_and_comes_back_is_two()
    {
        var sheet = LayoutPicture.Draw(Ell([P(20, 20), P(400, 20), P(400, 60), P(20, 60)]));
        Assert.Equal([[P(50, 50), P(300, 50)], [P(300, 90), P(50, 90)]], Drawn(sheet));
    }

    [Fact]
    public void Where_none_is_in_the_picture_the_legend_has_none()
    {
        foreach (var plan in new[] { Ell(), Ell([P(-100, -100), P(-100, 400)]) })
        {
            Assert.DoesNotContain(LegendWords, Words(LayoutPicture.Draw(plan)), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_planned_drawing_with_an_engraving_shows_it_in_layout_json_picture_and_card()
    {
        using Scratch scratch = new();
        var drawing = scratch.Put("part.dxf", Dxf(Rectangle(0, 0, 500, 300) + Line(230, 140, 270, 160)));
        var ran = Ran.Of("plan", drawing, "--thickness", "30", "--at", "405,315", "--out", scratch.Path("out"), "--card");
        Assert.Contains("open line", ran.Error + ran.Out, StringComparison.Ordinal);
        var line = JsonNode.Parse(File.ReadAllText(scratch.Path("out/layout.json")))!["part"]!["inDrawing"]!["leftOutLinesMm"]![0]!;
        Assert.Equal("[[230,140],[270,160]]", line.ToJsonString());
        Assert.Contains("left-out", File.ReadAllText(scratch.Path("out/layout.svg")), StringComparison.Ordinal);
        Assert.Contains("left-out", File.ReadAllText(scratch.Path("out/card.html")), StringComparison.Ordinal);
    }
}

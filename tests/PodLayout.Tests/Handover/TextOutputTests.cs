using System.Globalization;
using System.Xml.Linq;
using PodLayout.Geometry;
using PodLayout.Handover;
using PodLayout.Handover.Picture;
using PodLayout.Layouts;
using PodLayout.Tests.Independent;

namespace PodLayout.Tests.Handover;

public class TextOutputTests
{
    private static readonly PlanResult Oval = HandMade.Oval();

    // A comma and eight digits.
    private const int MarkCell = 9;

    [Fact]
    public void Pods_are_listed_with_grooves_counted_from_one()
    {
        var lines = PodsCsv.Write(Oval).Split("\r\n");
        Assert.Equal("pod,type,turn_deg,x_mm,y_mm,column,row,ports,holds,plan", lines[0]);
        Assert.Equal("P1,120x120,0,585,195,18,5,5-2,part", lines[1][..^MarkCell]);
        Assert.Equal("P4,120x60,90,675,255,22,7,6-3,part", lines[4][..^MarkCell]);
        Assert.Equal(7 + 2, lines.Length);
    }

    [Fact]
    public void Each_row_of_the_ports_says_that_the_others_stay_plugged()
    {
        var lines = PortsCsv.Write(Oval).Split("\r\n");
        Assert.Equal("open_port,x_mm,y_mm,column,row,pod,all_other_ports,plan", lines[0]);

        // (420 - 15) / 30 = 13.5: between the 14th and the 15th groove.
        Assert.Equal("4-2,420,180,14,6,P2,stay plugged; these cannot be: 9-2", lines[1][..^MarkCell]);
        Assert.Equal(7 + 2, lines.Length);
    }

    [Theory]
    [InlineData("=1+1", "'=1+1")]
    [InlineData("+a", "'+a")]
    [InlineData("-a", "'-a")]
    [InlineData("@a", "'@a")]
    [InlineData("\ta", "'\ta")]
    [InlineData("\r=1", "\"'\r'=1\"")]
    [InlineData("a;=1", "a;'=1")]
    [InlineData("a\t@x", "a\t'@x")]
    [InlineData("\u00a0+1", "'\u00a0+1")]
    [InlineData("\ufeff=1", "<U+FEFF>=1")]
    [InlineData("\u200b=1", "'\u200b=1")]
    [InlineData("\uff1d1", "'\uff1d1")]
    [InlineData("\"=1", "\"'\"\"=1\"")]
    [InlineData("5-3", "5-3")]
    [InlineData("oak; 3-4", "oak; 3-4")]
    [InlineData(" =1", "' =1")]
    [InlineData("a, \"b\"", "\"a, \"\"b\"\"\"")]
    [InlineData("plain", "plain")]
    public void A_text_cell_is_quoted_and_cannot_start_a_formula(string text, string cell) =>
        Assert.Equal(cell, CsvText.Text(text));

    [Fact]
    public void Without_a_layout_the_tables_are_empty()
    {
        Assert.Single(PodsCsv.Write(HandMade.NoLayout()).Split("\r\n", StringSplitOptions.RemoveEmptyEntries));
        Assert.Single(PortsCsv.Write(HandMade.NoLayout()).Split("\r\n", StringSplitOptions.RemoveEmptyEntries));
    }

    [Fact]
    public void The_summary_names_every_pod_and_port()
    {
        var text = Summary.Write(Oval);
        Assert.Contains("7 pods, 7 ports to open", text, StringComparison.Ordinal);
        Assert.Contains("column 18  row 5", text, StringComparison.Ordinal);
        Assert.Contains("all others stay plugged", text, StringComparison.Ordinal);
        Assert.DoesNotContain("safe", text, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Without_a_layout_the_summary_says_what_would_do()
    {
        var text = Summary.Write(HandMade.NoLayout());
        Assert.Contains("1. 135 mm of edge", text, StringComparison.Ordinal);
        Assert.Contains("162.4 mm across the grain would do for this stretch (the limit is 100 mm)", text, StringComparison.Ordinal);
        Assert.Contains("No pod could stand anywhere near", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_name_cannot_send_commands_to_the_terminal_or_break_a_line()
    {
        var text = Summary.Write(Renamed("a\u001b[2Jb\r\nc"));
        Assert.DoesNotContain('\u001b', text);
        Assert.DoesNotContain('\r', text);
    }

    [Theory]
    [InlineData("<b> & \"quotes\" ]]>")]
    [InlineData("\u05e9\u05d5\u05dc\u05d7\u05df \ud83e\ude91")]
    [InlineData("\u0001\ufffe\ud800")]
    public void Any_name_leaves_the_picture_well_formed(string name)
    {
        var svg = LayoutPicture.Svg(Renamed(name + new string('w', 200)));
        var root = XDocument.Parse(svg).Root!;
        Assert.Equal("img", root.Attribute("role")!.Value);
        Assert.DoesNotContain(root.Descendants(), e => e.Name.LocalName == "b");
    }

    [Fact]
    public void The_picture_draws_each_pod_where_the_table_says()
    {
        var sheet = LayoutPicture.Draw(Oval);
        var boxes = sheet.Layers.Single(l => l.Name == "pods").Primitives.OfType<Primitive.Area>()
            .Select(a => a.Rings[0].Bounds.Centre);
        Assert.Equal(Oval.Layout!.Pods.Select(p => p.Centre), boxes);
        var open = sheet.Layers.Single(l => l.Name == "open-ports").Primitives.OfType<Primitive.Disc>()
            .Where(d => d.Style == "port-open").Select(d => d.Centre);
        Assert.Equal(Oval.Layout.Pods.SelectMany(p => p.OpenPorts).Select(p => p.Centre), open);
    }

    [Theory]
    [InlineData(300, 300, 30)]
    [InlineData(3600, 1500, 30)]
    [InlineData(1200, 600, 10)]
    [InlineData(600, 1800, 50)]
    public void Groove_numbers_do_not_touch_each_other(double width, double length, double pitch)
    {
        var ell = HandMade.Ell();
        var board = HandMade.Board(width, length) with { PitchMm = pitch };
        var sheet = LayoutPicture.Draw(ell with { Layout = null, Job = ell.Job with { Shop = HandMade.Shop(board) } });
        var numbers = sheet.Layers.Single(l => l.Name == "groove-numbers").Primitives.OfType<Primitive.Text>()
            .Where(t => int.TryParse(t.Words, NumberStyles.None, CultureInfo.InvariantCulture, out _)).Select(Around).ToList();
        Assert.NotEmpty(numbers);
        for (var i = 0; i < numbers.Count; i++)
        {
            Assert.DoesNotContain(numbers.Skip(i + 1), n => n.Touches(numbers[i]));
        }
    }

    [Fact]
    public void Words_in_the_drawing_do_not_touch_each_other_on_sixty_pods()
    {
        var sheet = LayoutPicture.Draw(HandMade.Door());
        var words = sheet.Layers.Single(l => l.Name == "labels").Primitives.OfType<Primitive.Text>().Select(Around).ToList();
        Assert.True(words.Count >= 120, "ids and types of sixty pods");
        for (var i = 0; i < words.Count; i++)
        {
            Assert.DoesNotContain(words.Skip(i + 1), w => w.Touches(words[i]));
        }
    }

    [Fact]
    public void The_picture_is_one_A4_page_and_the_panel_lies_on_it()
    {
        foreach (var result in new[] { Oval, HandMade.Ell(), HandMade.Door(), HandMade.NoLayout(), Renamed(new string('x', 500)) })
        {
            var sheet = LayoutPicture.Draw(result);
            var sides = new[] { sheet.Extent.Width / sheet.Scale, sheet.Extent.Height / sheet.Scale }.Order().ToList();
            Assert.Equal(210, sides[0], 1e-6);
            Assert.Equal(297, sides[1], 1e-6);
            foreach (var text in sheet.Layers.SelectMany(l => l.Primitives).OfType<Primitive.Text>())
            {
                Assert.True(sheet.Extent.Contains(Around(text)), text.Words);
            }
        }
    }

    [Fact]
    public void Hatch_strokes_stop_at_holes()
    {
        var hatch = new Primitive.Hatch(
            "grain", [HandMade.Rectangle(0, 0, 100, 100), HandMade.Rectangle(40, 15, 60, 85)], 0, 10);
        var ends = HatchLines.Of(hatch);

        // At Y 20, 30, ... 80 the hole leaves 40 mm on either side; above and below a stroke is 100 mm long.
        var lengths = Enumerable.Range(0, ends.Length / 2)
            .ToLookup(i => ends[2 * i].Y is > 15 and < 85, i => Math.Round(ends[2 * i + 1].X - ends[2 * i].X, 6));
        Assert.Equal(Enumerable.Repeat(40.0, 14), lengths[true]);
        Assert.All(lengths[false], length => Assert.Equal(100, length));
    }

    private static PlanResult Renamed(string name) =>
        Oval with { Job = Oval.Job with { Name = name, Part = Oval.Job.Part with { Name = name } } };

    // Digits of the usual types are at most 0.64 em wide; in running text a character takes about half an em.
    private static Box2 Around(Primitive.Text text)
    {
        double width = text.Words.Length * (text.Words.Length > 8 ? 0.5 : 0.62) * text.SizeMm, height = 0.75 * text.SizeMm;
        (width, height) = text.AngleDeg == 90 ? (height, width) : (width, height);
        var left = text.Anchor switch { TextAnchor.Start => 0, TextAnchor.Middle => width / 2, _ => width };
        return new(text.At.X - left, text.At.Y - height / 2, text.At.X - left + width, text.At.Y + height / 2);
    }
}

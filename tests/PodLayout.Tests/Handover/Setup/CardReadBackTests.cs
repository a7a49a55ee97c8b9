using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using PodLayout.Handover;
using PodLayout.Handover.Setup;
using PodLayout.Layouts;
using PodLayout.Shops;
using PodLayout.Tests.Independent;

namespace PodLayout.Tests.Handover.Setup;

/// <summary>From the card alone another program rebuilds the same pods and ports, and all outputs say the same places.</summary>
public class CardReadBackTests
{
    public static TheoryData<string> Plans() => [.. Cards.Names.Where(n => n is not ("hostile" or "inches"))];

    [Theory]
    [MemberData(nameof(Plans))]
    public void The_page_alone_gives_the_pods_and_ports_back(string name)
    {
        var plan = Cards.Plan(name);
        var page = Cards.Text(plan, "card.html");
        var pods = PageTables.Rows(page, "Pods in placing order");
        Assert.Equal(Expected(plan), pods.Select(r => (
            r["Pod"], r["Type"], r["Turn"] == "turned", Whole(r["Column"]), Whole(r["Row"]), PaperText.Number(r["X mm"]), PaperText.Number(r["Y mm"]), r["Ports"])));
        var ports = PageTables.Rows(page, "Ports to open");
        Assert.Equal(ExpectedPorts(plan), ports.Select(r => (r["Port"], PaperText.Number(r["X mm"]), PaperText.Number(r["Y mm"]), r["Under pod"])));
        var open = ports.Select(r => r["Port"]).ToHashSet();
        var others = plan.Job.Shop.Board.Ports.Count(p => !open.Contains(p.Name) && p.State != PodLayout.Shops.PortState.StuckOpen);
        Assert.Contains(others == 0 ? "The board has no other ports." : $"All other {others} ports stay plugged.", page, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Plans))]
    public void The_printed_text_alone_gives_the_pods_and_ports_back(string name)
    {
        var plan = Cards.Plan(name);
        var lines = PaperText.Lines(Cards.File(plan, "card.pdf"));
        List<(string, string, bool, int, int, double, double, string)> pods = [];
        List<(string, double, double, string)> ports = [];
        foreach (var line in lines)
        {
            if (line.Count >= 8 && Regex.IsMatch(line[0], "^P[0-9]+$") && Regex.IsMatch(line[3], "^[0-9]+$"))
            {
                pods.Add((line[0], line[1], line[2] == "turned", Whole(line[3]), Whole(line[4]), PaperText.Number(line[5]), PaperText.Number(line[6]), line[7]));
            }
            else if (line.Count >= 6 && Regex.IsMatch(line[5], "^P[0-9]+$") && Regex.IsMatch(line[0], "^[0-9]+-[0-9]+$") && Regex.IsMatch(line[1], "^[0-9]+$"))
            {
                ports.Add((line[0], PaperText.Number(line[3]), PaperText.Number(line[4]), line[5]));
            }
        }

        Assert.Equal(Expected(plan), pods);
        Assert.Equal(ExpectedPorts(plan), ports);
    }

    [Fact]
    public void Page_print_drawing_tables_and_layout_file_say_the_same_places()
    {
        var plan = Cards.Plan("standing");
        var json = JsonNode.Parse(LayoutJson.Write(plan))!;
        var centres = json["pods"]!.AsArray().Select(p => (X: (double)p!["centreMm"]![0]!, Y: (double)p["centreMm"]![1]!)).ToList();
        var rows = PageTables.Rows(Cards.Text(plan, "card.html"), "Pods in placing order");
        Assert.Equal(centres, rows.Select(r => (PaperText.Number(r["X mm"]), PaperText.Number(r["Y mm"]))));
        var table = Cards.Text(plan, "pods.csv").Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Skip(1).Select(l => l.Split(','));
        Assert.Equal(centres, table.Select(c => (PaperText.Number(c[3]), PaperText.Number(c[4]))));
        var drawn = Ezdxf.Read(Cards.Text(plan, "layout.dxf"), "Handover", "Setup", "layout_back.py")["layers"]!["PODLAYOUT-PODS"]!["rings"]!.AsArray()
            .Select(r => ((r!.AsArray().Min(p => (double)p![0]!) + r.AsArray().Max(p => (double)p![0]!)) / 2, (r.AsArray().Min(p => (double)p![1]!) + r.AsArray().Max(p => (double)p![1]!)) / 2));
        Assert.Equal(centres, drawn);

        // The picture on the page, too.
        var page = Cards.Text(plan, "card.html");
        foreach (var (begin, layer) in new[] { ("class=\"view\"", "pic-pods"), ("class=\"sheet\"", "sheet-pods") })
        {
            var picture = XDocument.Parse(Regex.Match(page, begin + ".*?(<svg.*?</svg>)", RegexOptions.Singleline).Groups[1].Value).Root!;
            var bodies = picture.Elements().Single(e => e.Attribute("id")?.Value == layer).Elements().Where(e => e.Attribute("class")?.Value == "pl-pod")
                .Select(e => Regex.Matches(e.Attribute("d")!.Value, "-?[0-9.]+").Select(m => PaperText.Number(m.Value)).Chunk(2).ToList());
            Assert.Equal(centres, bodies.Select(b => ((b.Min(p => p[0]) + b.Max(p => p[0])) / 2, -(b.Min(p => p[1]) + b.Max(p => p[1])) / 2)));
        }
    }

    [Theory]
    [MemberData(nameof(Plans))]
    public void The_drawing_passes_the_audit_and_lies_where_the_layout_file_says(string name)
    {
        var plan = Cards.Plan(name);
        var json = JsonNode.Parse(LayoutJson.Write(plan))!;
        var read = Ezdxf.Read(Cards.Text(plan, "layout.dxf"), "Handover", "Setup", "layout_back.py");
        Assert.Equal((0, 0, "AC1015", 4), ((int)read["errors"]!, (int)read["fixes"]!, (string)read["version"]!, (int)read["units"]!));
        var layers = read["layers"]!;
        var open = json["openPorts"]!.AsArray().Select(p => (string)p!).ToHashSet();
        var ports = json["shop"]!["board"]!["ports"]!.AsArray().Where(p => open.Contains((string)p!["name"]!))
            .Select(p => ((double)p!["centreMm"]![0]!, (double)p["centreMm"]![1]!)).ToHashSet();
        Assert.Equal(ports, layers["PODLAYOUT-OPEN-PORTS"]!["circles"]!.AsArray().Select(c => ((double)c![0]!, (double)c[1]!)).ToHashSet());
        var outline = json["part"]!["onBoard"]!["outlineMm"]!.AsArray().Select(p => ((double)p![0]!, (double)p[1]!)).ToList();
        Assert.Equal(outline, layers["PODLAYOUT-PART"]!["rings"]![0]!.AsArray().Select(p => ((double)p![0]!, (double)p[1]!)));
        var blank = json["part"]!["onBoard"]!["blankMm"]?.AsArray().Select(r => r!.AsArray().Select(p => ((double)p![0]!, (double)p[1]!)).ToList()).ToList() ?? [];
        Assert.Equal(blank, layers["PODLAYOUT-BLANK"]?["rings"]!.AsArray().Select(r => r!.AsArray().Select(p => ((double)p![0]!, (double)p[1]!)).ToList()).ToList() ?? []);
        Assert.Equal(plan.Job.Shop.Board.Ports.Length, layers["PODLAYOUT-PORTS"]!["circles"]!.AsArray().Count);
        Assert.Equal(plan.Layout!.Pods.Length, layers["PODLAYOUT-SEALS"]!["rings"]!.AsArray().Count + layers["PODLAYOUT-SEALS"]!["circles"]!.AsArray().Count);
        Assert.Equal(plan.Layout.Pods.Select((_, i) => $"P{i + 1}"), layers["PODLAYOUT-LABELS"]!["texts"]!.AsArray().Select(t => (string)t!));
    }

    [Fact]
    public void In_inches_the_figures_are_the_same_lengths()
    {
        var plan = Cards.Plan("inches");
        var rows = PageTables.Rows(Cards.Text(plan, "card.html"), "Pods in placing order");

        // The first pod's middle lies at 585, 195 mm: 585 / 25.4 = 23.03149..., 195 / 25.4 = 7.67716...
        Assert.Equal(("23.031", "7.677"), (rows[0]["X in"], rows[0]["Y in"]));

        // The table beside the card says the same in columns of their own, after those that it always has.
        var head = "pod,type,turn_deg,x_mm,y_mm,column,row,ports,holds";
        var table = Cards.Text(plan, "pods.csv").Split("\r\n");
        Assert.Equal(head + ",x_in,y_in,plan", table[0]);
        Assert.Equal(["585", "195"], table[1].Split(',')[3..5]);
        Assert.Equal(rows.Select(r => (r["X in"], r["Y in"])), table[1..^1].Select(l => (l.Split(',')[9], l.Split(',')[10])));
        Assert.EndsWith(",x_in,y_in,plan", Cards.Text(plan, "ports.csv").Split("\r\n")[0], StringComparison.Ordinal);
        Assert.Equal(head + ",plan", Cards.Text(Cards.Plan("oval"), "pods.csv").Split("\r\n")[0]);
        Assert.Contains("columns x_in and y_in", Cards.Text(plan, "card.html"), StringComparison.Ordinal);

        // Types are named as the shop names them, here in millimetres: 120 / 25.4 = 4.724...
        Assert.Contains("type 120x120 is 4.72 x 4.72 in", Cards.Text(plan, "card.html"), StringComparison.Ordinal);
        Assert.Contains("X in", Encoding.UTF8.GetString(Cards.File(Cards.Plan("oval"), "card.html", Cards.Options with { InInches = true })), StringComparison.Ordinal);
        Assert.DoesNotContain("X in<", Cards.Text(plan, "card.html", Cards.Options with { InInches = false }), StringComparison.Ordinal);
    }

    [Fact]
    public void A_type_whose_name_says_its_size_is_not_told_it_twice()
    {
        // 152.4 x 76.2 mm are 6 x 3 in: 25.4 mm to the inch by definition.
        PodType type = new("6 x 3 in", new PodFootprint.Rectangle(152.4, 76.2), 5, 6, 60, false, 20, 1);
        var plan = Cards.Grid(1500, 900, 3, type);
        plan = plan with { Job = plan.Job with { Shop = plan.Job.Shop with { Pods = [type] } } };
        var card = Cards.Text(plan, "card.html", Cards.Options with { InInches = true });
        Assert.DoesNotContain("6 x 3 in (6 x 3 in)", card, StringComparison.Ordinal);
        Assert.DoesNotContain("is 6 x 3 in", card, StringComparison.Ordinal);
        Assert.Contains("type 6 x 3 in is 152.4 x 76.2 mm", Cards.Text(plan, "card.html"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_corner_that_turns_into_the_wood_is_called_an_inner_one()
    {
        // Most of a disc of 300 mm, cut in from the right to 20 mm from its middle: two corners jut out and one does not.
        var oval = HandMade.Oval();
        PodLayout.Geometry.Ring disc = new([
            .. Enumerable.Range(8, 57).Select(i => PodLayout.Geometry.Turn.FromDegrees(5 * i).Apply(new(150, 0))), new(20, 0)]);
        var plan = oval with { Job = oval.Job with { Part = oval.Job.Part with { Shape = new(disc, [], []) } } };
        var marks = Laying.Of(plan, plan.Layout!).Marks;
        var inner = Assert.Single(marks, m => m.What.EndsWith("inner corner", StringComparison.Ordinal));
        Assert.Equal(new PodLayout.Geometry.Point2(20, 0) + plan.Layout!.Placement.ZeroOnBoard, inner.At);
        Assert.Equal(2, marks.Count(m => m.What is "near right corner" or "far right corner"));
    }

    [Fact]
    public void How_to_count_grooves_is_shown_on_the_cards_own_figures_in_its_own_unit()
    {
        // The oval reaches from X 300; grooves every 30 mm from 15: the tenth lies at 285, and 15 mm are 0.5906 in.
        var plan = Cards.Plan("oval");
        Assert.Contains("&quot;10 + 15&quot; is 15 mm past groove 10,", Cards.Text(plan, "card.html"), StringComparison.Ordinal);
        Assert.Contains("&quot;10 + 0.591&quot; is 0.591 in past groove 10,", Cards.Text(Cards.Plan("inches"), "card.html"), StringComparison.Ordinal);

        // The scale bar beside the picture too.
        var print = PaperText.All(Cards.File(Cards.Plan("inches"), "card.pdf"));
        Assert.Matches("[0-9] in", print);
        Assert.DoesNotContain("200 mm", print, StringComparison.Ordinal);

        // The placing tolerance of half a millimetre is 0.01968 in: rounded down.
        Assert.Contains("within 0.019 in of", Cards.Text(Cards.Plan("inches"), "card.html"), StringComparison.Ordinal);
    }

    [Fact]
    public void Marks_in_inches_are_given_to_a_thousandth_and_a_groove_and_the_rest_lead_to_the_same_place()
    {
        // 25.4 mm to the inch by definition; grooves of the oval's board every 30 mm from 15.
        var marks = PageTables.Rows(Cards.Text(Cards.Plan("inches"), "card.html"), "Marks on the part's edge");
        var (inMm, found) = (PageTables.Rows(Cards.Text(Cards.Plan("oval"), "card.html"), "Marks on the part's edge"), 0);
        foreach (var (mark, mm) in marks.Zip(inMm))
        {
            foreach (var (axis, grooves) in new[] { ("X", "Column"), ("Y", "Row") }.Where(a => mm[$"{a.Item1} mm"] != "-"))
            {
                var at = PaperText.Number(mark[$"{axis} in"]);

                // A thousandth of an inch, and the tenth of a millimetre that the other card gives.
                Assert.Equal(PaperText.Number(mm[$"{axis} mm"]), at * 25.4, 0.0005 * 25.4 + 0.05);
                var count = mark[$"{grooves}\u00a0+\u00a0in"].Split(" + ");
                Assert.Equal(at, (15 + 30 * (PaperText.Number(count[0]) - 1)) / 25.4 + PaperText.Number(count[1]), 0.0011);
                found++;
            }
        }

        Assert.True(found >= 4);
        Assert.Contains(marks, m => m.Values.Any(v => System.Text.RegularExpressions.Regex.IsMatch(v, @"\.[0-9]{3}$")));
    }

    [Fact]
    public void Made_from_the_file_or_with_the_plan_the_card_is_the_same()
    {
        var plan = Cards.Plan("oval");
        var read = LayoutJson.ToPlan(LayoutJson.Read("layout.json", LayoutJson.Write(plan)).Value!);
        foreach (var (name, content) in CardFiles.Of(plan, Cards.Options, PodLayout.Handover.Setup.LayoutDoubts.None))
        {
            Assert.Equal(content, Cards.File(read, name));
        }
    }

    private static IEnumerable<(string, string, bool, int, int, double, double, string)> Expected(PlanResult plan) => plan.Layout!.Pods.Select((p, i) => (
        "P" + (i + 1).ToString(CultureInfo.InvariantCulture), p.Type.Name, p.Turned, p.Column + 1, p.Row + 1, p.Centre.X, p.Centre.Y,
        string.Join(' ', p.OpenPorts.Select(o => o.Name))));

    private static IEnumerable<(string, double, double, string)> ExpectedPorts(PlanResult plan) => plan.Layout!.Pods
        .SelectMany((p, i) => p.OpenPorts.Select(o => (o.Name, o.Centre.X, o.Centre.Y, Pod: "P" + (i + 1).ToString(CultureInfo.InvariantCulture))))
        .OrderBy(p => p.Y).ThenBy(p => p.X);

    private static int Whole(string text) => int.Parse(text, NumberStyles.None, CultureInfo.InvariantCulture);
}

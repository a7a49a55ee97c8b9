using System.Text;
using System.Text.Json.Nodes;
using System.Xml.Linq;
using PodLayout.Cli;
using PodLayout.Handover;
using PodLayout.Tests.Handover.Setup;
using PodLayout.Tests.Independent;

namespace PodLayout.Tests.Cli;

public class CardTests
{
    private static readonly string Yoke = Repository.Path("samples", "u-yoke", "job.json");

    [Fact]
    public void Card_writes_all_its_files_and_plan_writes_the_same_ones()
    {
        using Scratch scratch = new();
        var planned = Ran.Of("plan", Yoke, "--out", scratch.Path("a"), "--card", "--date", "1 May", "--revision", "2", "--face", "down", "--threads", "1");
        Assert.Equal((0, ""), (planned.Code, planned.Error));
        var made = Ran.Of("card", scratch.Path("a/layout.json"), "--out", scratch.Path("b"), "--date", "1 May", "--revision", "2", "--face", "DOWN");
        Assert.Equal((0, ""), (made.Code, made.Error));
        Assert.EndsWith("card.html, card.pdf, layout.dxf, pods.csv, ports.csv\n", made.Out.ReplaceLineEndings("\n"), StringComparison.Ordinal);
        foreach (var name in new[] { "card.html", "card.pdf", "layout.dxf", "pods.csv", "ports.csv" })
        {
            Assert.Equal(File.ReadAllBytes(scratch.Path("a/" + name)), File.ReadAllBytes(scratch.Path("b/" + name)));
        }
    }

    [Theory]
    [InlineData(1.3)]
    [InlineData(2.9)]
    [InlineData(3.7)]
    [InlineData(5)]
    public void A_layout_that_holds_weakly_is_not_taken_for_a_changed_one(double gaugeKPa)
    {
        // A factor of a tenth, written to a thousandth, is off by more than what a change makes.
        using Scratch scratch = new();
        var shop = JsonNode.Parse(File.ReadAllText(Repository.Path("samples", "shop.json")))!;
        shop["vacuum"] = new JsonObject { ["gaugeKPa"] = gaugeKPa };
        var drawing = Repository.Path("samples", "u-yoke", "part.dxf");
        var planned = Ran.Of("plan", drawing, "--thickness", "30", "--overhang", "120", "--shop", scratch.Put("shop.json", shop.ToJsonString()), "--out", scratch.Path("a"), "--card", "--threads", "1");
        Assert.Equal(ExitCodes.DoesNotHold, planned.Code);
        Assert.StartsWith("DOES NOT HOLD", planned.Out, StringComparison.Ordinal);
        Assert.Equal(ExitCodes.RuleBroken, Ran.Of("card", scratch.Path("a/layout.json"), "--out", scratch.Path("b")).Code);
        Assert.Contains("DO NOT START", File.ReadAllText(scratch.Path("a/card.html")), StringComparison.Ordinal);
        foreach (var name in new[] { "card.html", "card.pdf" })
        {
            Assert.Equal(File.ReadAllBytes(scratch.Path("a/" + name)), File.ReadAllBytes(scratch.Path("b/" + name)));
        }
    }

    [Fact]
    public void A_layout_that_breaks_a_rule_is_marked_as_such()
    {
        using Scratch scratch = new();
        var json = JsonNode.Parse(LayoutJson.Write(HandMade.Oval()))!;
        json["pods"]![0]!["columnFromDatum"] = 15;
        json["pods"]![0]!["centreMm"]![0] = 495;
        var ran = Ran.Of("card", scratch.Put("layout.json", json.ToJsonString()), "--out", scratch.Path("out"));
        Assert.Equal(8, ran.Code);
        var page = File.ReadAllText(scratch.Path("out/card.html"));
        Assert.Contains("<p><bdi>Breach: P1", page, StringComparison.Ordinal);

        // The pod that was moved two grooves to the left stands in the way of P2 now, and P2 of it; both are marked, the others are not.
        var picture = XDocument.Parse(System.Text.RegularExpressions.Regex.Match(page, "class=\"view\".*?(<svg.*?</svg>)", System.Text.RegularExpressions.RegexOptions.Singleline).Groups[1].Value);
        Assert.Equal(2, picture.Descendants().Count(e => e.Attribute("class")?.Value is "pl-fault-frame" or "pl-fault-frame-small"));
        Assert.Contains(picture.Descendants(), e => e.Attribute("class")?.Value == "pl-type pl-fault-words" && e.Value == "breaks a rule");
    }

    [Theory]
    [InlineData("a layout.json without a layout", 3)]
    [InlineData("no such file", 5)]
    [InlineData("not JSON", 3)]
    public void What_holds_no_layout_makes_no_card(string what, int code)
    {
        using Scratch scratch = new();
        var path = what switch
        {
            "no such file" => scratch.Path("none.json"),
            "not JSON" => scratch.Put("layout.json", "P1 at 3, 4"),
            _ => scratch.Put("layout.json", LayoutJson.Write(HandMade.NoLayout())),
        };
        var ran = Ran.Of("card", path, "--out", scratch.Path("out"));
        Assert.Equal(code, ran.Code);
        ran.OnlyError();
        Assert.False(Directory.Exists(scratch.Path("out")));
    }

    [Theory]
    [InlineData("--paper", "A3", "expected a4 or letter")]
    [InlineData("--face", "left", "expected up or down")]
    [InlineData("--lengths", "cm", "expected mm or in")]
    public void A_word_that_an_option_does_not_know_is_refused(string option, string word, string expected)
    {
        using Scratch scratch = new();
        var ran = Ran.Of("card", scratch.Put("layout.json", LayoutJson.Write(HandMade.Ell())), "--out", scratch.Path("out"), option, word);
        Assert.Equal(2, ran.Code);
        Assert.Contains(expected, ran.OnlyError(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--card", "given without --out")]
    [InlineData("--date=today", "given without --card")]
    public void A_card_needs_a_folder_and_words_for_it_need_the_card(string option, string expected)
    {
        var ran = Ran.Of("plan", Yoke, option);
        Assert.Equal(2, ran.Code);
        Assert.Contains(expected, ran.OnlyError(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_shop_in_inches_makes_a_card_in_inches_and_its_zones_become_valves()
    {
        using Scratch scratch = new();
        var shop = JsonNode.Parse(File.ReadAllText(Repository.Path("samples", "boards", "two-zones-metric", "shop.json")))!;
        shop["board"]!["widthIn"] = (double)shop["board"]!["widthMm"]! / 25.4;
        ((JsonObject)shop["board"]!).Remove("widthMm");
        var file = scratch.Put("shop.json", shop.ToJsonString());
        var drawing = Repository.Path("samples", "u-yoke", "part.dxf");
        var ran = Ran.Of("plan", drawing, "--thickness", "30", "--overhang", "120", "--shop", file, "--out", scratch.Path("out"), "--card", "--threads", "1");
        Assert.True(ran.Code == 0, ran.Error + ran.Out);
        var page = File.ReadAllText(scratch.Path("out/card.html"));
        Assert.Contains("X in", page, StringComparison.Ordinal);
        var zones = shop["making"]!["table"]!["zones"]!.AsArray().Select(z => (string)z!["name"]!);
        Assert.Equal(zones, PageTables.Rows(page, "Valves of the table's zones").Select(r => r["Zone"]));
    }

    [Fact]
    public void Board_draws_the_empty_board_at_full_size_with_every_column_and_row_numbered()
    {
        var shop = Repository.Path("samples", "shop.json");
        var ran = Ran.Of("board", shop, "--svg");
        Assert.Equal((0, ""), (ran.Code, ran.Error));
        var svg = XDocument.Parse(ran.Out).Root!;
        var box = svg.Attribute("viewBox")!.Value.Split(' ').Select(PaperText.Number).ToArray();
        Assert.Equal((box[2] + "mm", box[3] + "mm"), (svg.Attribute("width")!.Value, svg.Attribute("height")!.Value));
        var numbers = svg.Descendants().Where(e => e.Name.LocalName == "text" && e.Parent!.Attribute("id")!.Value == "podlayout-groove-numbers")
            .Select(e => (Words: e.Value, X: PaperText.Number(e.Attribute("x")!.Value), Y: PaperText.Number(e.Attribute("y")!.Value))).ToList();

        // 1500 x 1050 mm, grooves every 30 mm from 15: 50 columns and 35 rows, each numbered at both ends; column 7 at 15 + 6 * 30.
        var board = JsonNode.Parse(File.ReadAllText(shop))!["board"]!;
        Assert.Equal((1500, 1050, 30), ((double)board["widthMm"]!, (double)board["lengthMm"]!, (double)board["pitchMm"]!));
        var columns = numbers.Where(n => n.Y > 0 || n.Y < -1050).Select(n => n.Words).ToList();
        Assert.Equal(4, numbers.Count(n => n.Words == "7"));
        Assert.Equal(2, columns.Count(w => w == "50"));
        using Scratch scratch = new();
        Assert.Equal(0, Ran.Of("board", shop, "--svg", "--out", scratch.Path("b")).Code);
        Assert.Equal(ran.Out, Encoding.UTF8.GetString(File.ReadAllBytes(scratch.Path("b/board.svg"))));
    }

    [Fact]
    public void A_pod_moved_off_its_port_still_gets_a_card_and_a_layout_without_pods_gets_none()
    {
        using var scratch = new Scratch();
        var file = System.Text.Json.Nodes.JsonNode.Parse(PodLayout.Handover.LayoutJson.Write(HandMade.Oval()))!.AsObject();
        var pod = file["pods"]![0]!;
        pod["columnFromDatum"] = pod["columnFromDatum"]!.GetValue<int>() + 6;
        pod["centreMm"]![0] = pod["centreMm"]![0]!.GetValue<double>() + 180;
        var moved = Ran.Of("card", scratch.Put("moved.json", file.ToJsonString()), "--out", scratch.Path("card"));
        Assert.Equal(ExitCodes.RuleBroken, moved.Code);
        Assert.True(File.Exists(scratch.Path("card/card.pdf")));
        file["pods"]!.AsArray().Clear();
        file["openPorts"]!.AsArray().Clear();
        var line = Ran.Of("card", scratch.Put("bare.json", file.ToJsonString()), "--out", scratch.Path("none")).OnlyError();
        Assert.Contains("$.pods", line, StringComparison.Ordinal);
    }
}

using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using PodLayout.Cli;
using PodLayout.Tests.Handover.Setup;

namespace PodLayout.Tests.Cli;

/// <summary>Layouts that were changed by hand, through check and card.</summary>
public class ChangedLayoutTests
{
    private static readonly Lazy<string> Tray = new(() =>
    {
        using Scratch scratch = new();
        Assert.Equal(ExitCodes.LayoutFound, Ran.Of("plan", Repository.Path("samples", "tray", "job.json"), "--out", scratch.Path("out")).Code);
        return File.ReadAllText(scratch.Path("out/layout.json"));
    });

    [Fact]
    public void The_card_of_a_layout_as_planned_stops_nobody()
    {
        using Scratch scratch = new();
        Assert.Equal(ExitCodes.LayoutFound, Ran.Of("card", scratch.Put("layout.json", Tray.Value), "--out", scratch.Path("card")).Code);
        Assert.DoesNotContain("DO NOT START", File.ReadAllText(scratch.Path("card/card.html")), StringComparison.Ordinal);
        Assert.DoesNotContain("DO NOT START", string.Join('\n', Lines(scratch.Path("card/card.pdf"))), StringComparison.Ordinal);
    }

    [Fact]
    public void A_card_below_the_target_says_on_every_place_that_is_looked_at_first_not_to_start()
    {
        // Without P2 the tray is held between the least factor of 1.5 and the target of 2: no rule of holding is broken.
        using Scratch scratch = new();
        var path = Changed(scratch, file =>
        {
            var pods = file["pods"]!.AsArray();
            var port = (string)pods[1]!["openPorts"]![0]!;
            pods.RemoveAt(1);
            file["openPorts"] = new JsonArray([.. file["openPorts"]!.AsArray().Select(p => (string)p!).Where(p => p != port).Select(p => (JsonNode)p)]);
            file["rules"]!["overhangAlongGrainMm"] = 400;
            file["rules"]!["overhangAcrossGrainMm"] = 400;
            file["rules"]!["interiorSpanMm"] = null;
        });
        var check = Ran.Of("check", path);
        Assert.Equal(ExitCodes.LayoutFound, check.Code);
        Assert.Matches("warning: .*below the target of 2\\.", check.Error);
        Assert.Equal(ExitCodes.LayoutFound, Ran.Of("card", path, "--out", scratch.Path("card")).Code);
        var page = File.ReadAllText(scratch.Path("card/card.html"));
        var head = page[page.IndexOf("<header>", StringComparison.Ordinal)..page.IndexOf("</header>", StringComparison.Ordinal)];
        Assert.Contains("DO NOT START THE SPINDLE until whoever programs this job has cleared it: this layout was changed after it was planned.", head, StringComparison.Ordinal);
        Assert.Matches("The part is held at a factor of 1\\.[5-9][0-9]*: below the target of 2\\.", head);
        Assert.True(head.IndexOf("DO NOT START", StringComparison.Ordinal) < head.IndexOf("<dt>Wood", StringComparison.Ordinal));
        var holding = page[page.IndexOf("id=\"holding\"", StringComparison.Ordinal)..page.IndexOf("id=\"offcuts\"", StringComparison.Ordinal)];
        Assert.True(holding.IndexOf("DO NOT START", StringComparison.Ordinal) is > 0 and var stop && stop < holding.IndexOf("<dl", StringComparison.Ordinal));
        Assert.Contains("has signed below", page, StringComparison.Ordinal);
        Assert.Contains("Cleared by", page, StringComparison.Ordinal);

        // On paper beside the picture, at the head of the text, and in the step.
        // ... and above every page of text.
        var pages = PaperText.Pages(File.ReadAllBytes(scratch.Path("card/card.pdf")));
        var stops = Lines(scratch.Path("card/card.pdf")).Where(l => l.Contains("DO NOT START", StringComparison.Ordinal)).ToList();
        Assert.Equal(pages - 1, stops.Count(l => l.Contains("Revision", StringComparison.Ordinal)));
        Assert.Equal(3, stops.Count(l => !l.Contains("Revision", StringComparison.Ordinal)));
        Assert.DoesNotMatch("(?i)\\b(un)?safe", page[page.IndexOf("<body", StringComparison.Ordinal)..page.IndexOf("<script>", StringComparison.Ordinal)]);
    }

    [Fact]
    public void A_card_names_the_rules_that_are_broken_with_their_pods_and_the_pods_that_hold_nothing()
    {
        using Scratch scratch = new();
        var path = Changed(scratch, MoveP1Away);
        Assert.Equal(ExitCodes.RuleBroken, Ran.Of("card", path, "--out", scratch.Path("card")).Code);
        var page = File.ReadAllText(scratch.Path("card/card.html"));
        Assert.Matches("breaks [0-9]+ rules: upper seal in sound wood \\(P1\\); body clear of cuts \\(P1\\);", page);
        Assert.Contains("Pods that hold nothing: P1 (its upper seal does not lie wholly under sound wood).", page, StringComparison.Ordinal);

        // In the rows of the pod and of its port, and in the table beside the card.
        Assert.Equal(["does not hold: see section 7"], PageTables.Rows(page, "Pods in placing order").Where(r => r["Pod"] == "P1").Select(r => r["Fault"]));
        Assert.All(PageTables.Rows(page, "Ports to open").Where(r => r["Under pod"] == "P1"), r => Assert.Equal("does not hold: see section 7", r["Fault"]));
        Assert.Contains(", layout not cleared (target", page, StringComparison.Ordinal);
        var rows = File.ReadAllLines(scratch.Path("card/pods.csv"));
        Assert.Equal(["nothing"], rows.Where(r => r.StartsWith("P1,", StringComparison.Ordinal)).Select(r => r.Split(',')[8]));
        Assert.DoesNotContain(rows.Where(r => !r.StartsWith("P1,", StringComparison.Ordinal)), r => r.EndsWith("nothing", StringComparison.Ordinal));

        // What the plan said of a lost seal was said of other pods.
        var told = File.ReadAllText(scratch.Path("card/card.html"));
        Assert.Matches("Warning [0-9]+: if P[2-6] lost its seal", told);
    }

    [Fact]
    public void Check_names_file_and_member_tells_a_pod_over_an_edge_once_and_repeats_the_plans_warnings()
    {
        using Scratch scratch = new();
        var path = Changed(scratch, MoveP1Away);
        var lines = Ran.Of("check", path).Error.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        var own = Assert.Single(lines, l => l.Contains("P1: its seal", StringComparison.Ordinal));
        Assert.StartsWith($"podlayout: error: {path} $.pods[0]: P1: its seal ", own, StringComparison.Ordinal);
        Assert.Contains(" Its body passes ", own, StringComparison.Ordinal);
        Assert.DoesNotContain(lines, l => l.Contains("P1: its body", StringComparison.Ordinal));
        Assert.All(lines.Where(l => l.Contains("error:", StringComparison.Ordinal)), l => Assert.Contains(path, l, StringComparison.Ordinal));
        Assert.Contains(lines, l => l.StartsWith("podlayout: warning:", StringComparison.Ordinal) && l.Contains("offcut 1 comes loose", StringComparison.Ordinal));
        Assert.Contains(lines, l => l.StartsWith($"podlayout: warning: {path}: if P", StringComparison.Ordinal) && l.Contains("lost its seal", StringComparison.Ordinal));
    }

    [Fact]
    public void A_misspelt_pod_type_is_answered_with_the_nearest_one()
    {
        using Scratch scratch = new();
        var near = Ran.Of("check", Changed(scratch, file => file["pods"]![0]!["type"] = "120x60")).OnlyError();
        Assert.Contains("no pod type \"120x60\"; the nearest is \"120 x 60\".", near, StringComparison.Ordinal);
        var far = Ran.Of("check", Changed(scratch, file => file["pods"]![0]!["type"] = "small ones")).OnlyError();
        Assert.Contains("no pod type \"small ones\"; it has \"120 x 120\"", far, StringComparison.Ordinal);
    }

    [Fact]
    public void Loose_pieces_are_told_where_they_are_found_on_the_board_and_forces_where_they_come_from()
    {
        using Scratch scratch = new();
        var json = JsonNode.Parse(Tray.Value)!;
        Ran.Of("card", scratch.Put("layout.json", Tray.Value), "--out", scratch.Path("card"));
        var page = File.ReadAllText(scratch.Path("card/card.html"));
        var pieces = PageTables.Rows(page, "Pieces that come loose");

        // The second piece is cut out of the left handle hole, whose middle is (70, 220) in the drawing; grooves every 30 mm from 15.
        var zero = json["placement"]!["zeroOnBoardMm"]!;
        var (x, y) = (Math.Round((double)zero[0]! + 70, 3), Math.Round((double)zero[1]! + 220, 3));
        Assert.Equal((x, y), (PaperText.Number(pieces[1]["X mm"]), PaperText.Number(pieces[1]["Y mm"])));
        Assert.Equal(
            (Math.Round((x - 15) / 30) + 1, Math.Round((y - 15) / 30) + 1), (PaperText.Number(pieces[1]["Column"]), PaperText.Number(pieces[1]["Row"])));
        Assert.StartsWith("inside the part, ", pieces[1]["Where"], StringComparison.Ordinal);
        Assert.Equal("all round the part, outside its edge", pieces[0]["Where"]);
        Assert.DoesNotContain("of the drawing", page[page.IndexOf("id=\"offcuts\"", StringComparison.Ordinal)..], StringComparison.Ordinal);
        var forces = PageTables.Rows(page, "Where the cutter's force comes from");
        Assert.Equal(["tool 1", "tool 2", "tool 3"], forces.Select(f => f["Cut"]));
        Assert.All(forces, f => Assert.Matches("part\\.nc lines [0-9]+ to [0-9]+(, [0-9]+ to [0-9]+)*: [0-9]+ mm cutter", f["From"]));

        // Each range of lines lies where the program has that tool in the spindle.
        var inSpindle = new List<string> { "" };
        foreach (var line in File.ReadAllLines(Repository.Path("samples", "tray", "part.nc")))
        {
            var change = Regex.Match(line, "\\bT([0-9]+)\\b.*M0?6\\b");
            inSpindle.Add(change.Success ? "tool " + change.Groups[1].Value : inSpindle[^1]);
        }

        foreach (var force in forces)
        {
            foreach (Match range in Regex.Matches(force["From"], "([0-9]+) to ([0-9]+)"))
            {
                int first = int.Parse(range.Groups[1].Value, CultureInfo.InvariantCulture), last = int.Parse(range.Groups[2].Value, CultureInfo.InvariantCulture);
                Assert.All(inSpindle[first..(last + 1)], tool => Assert.Equal(force["Cut"], tool));
            }
        }

        // What is laid is the blank, 25 mm larger than the part of 700 x 440 mm all round (samples/tray).
        var marks = PageTables.Rows(page, "Marks on the blank's edge").ToDictionary(r => r["Mark"]);
        Assert.Equal(750, PaperText.Number(marks["E3"]["X mm"]) - PaperText.Number(marks["E1"]["X mm"]), 6);
        Assert.Equal(490, PaperText.Number(marks["E4"]["Y mm"]) - PaperText.Number(marks["E2"]["Y mm"]), 6);
        Assert.Contains("The blank lies at its marks", page, StringComparison.Ordinal);

        // The tools of the program with the least Z of its lines under each (samples/tray/part.nc has no arcs that dip).
        var (deepest, spindle) = (new SortedDictionary<string, double>(StringComparer.Ordinal), "");
        foreach (var line in File.ReadAllLines(Repository.Path("samples", "tray", "part.nc")))
        {
            var change = Regex.Match(line, "\\bT([0-9]+)\\b.*M0?6\\b");
            spindle = change.Success ? "tool " + change.Groups[1].Value : spindle;
            if (spindle.Length > 0 && Regex.Match(line, "Z(-?[0-9.]+)") is { Success: true } z)
            {
                var depth = PaperText.Number(z.Groups[1].Value);
                deepest[spindle] = Math.Min(deepest.GetValueOrDefault(spindle, double.PositiveInfinity), depth);
            }
        }

        Assert.Equal(
            deepest.Select(d => (d.Key, d.Value)), PageTables.Rows(page, "Tools of the program").Select(r => (r["Tool"], PaperText.Number(r["Deepest Z mm"]))));

        // The program is in millimetres, which the control shows, also where the card is in inches: 27 mm of part are 1.063 in.
        Assert.Equal(ExitCodes.LayoutFound, Ran.Of("card", scratch.Put("same.json", json.ToJsonString()), "--lengths", "in", "--out", scratch.Path("inches")).Code);
        var inches = File.ReadAllText(scratch.Path("inches/card.html"));
        Assert.Equal(
            deepest.Select(d => (d.Value, Math.Round(d.Value / 25.4, 3))),
            PageTables.Rows(inches, "Tools of the program").Select(r => (PaperText.Number(r["Deepest Z mm"]), PaperText.Number(r["Deepest Z in"]))));
        Assert.Contains("-27 mm (-1.063 in)", inches, StringComparison.Ordinal);
        Assert.Contains("part.nc, in millimetres", inches, StringComparison.Ordinal);

        // A file of before these were kept is read, and tells them as it did.
        json.AsObject().Remove("offcuts");
        Assert.Equal(ExitCodes.LayoutFound, Ran.Of("card", scratch.Put("old.json", json.ToJsonString()), "--out", scratch.Path("old")).Code);
        Assert.Contains("Offcut 2 comes loose at (70, 220) mm of the drawing", File.ReadAllText(scratch.Path("old/card.html")), StringComparison.Ordinal);
    }

    [Fact]
    public void In_inches_sentences_of_the_plan_give_their_lengths_in_inches_first()
    {
        // 25 / 25.4 = 0.984...; 12 / 25.4 = 0.472...
        using Scratch scratch = new();
        Ran.Of("card", scratch.Put("layout.json", Tray.Value), "--out", scratch.Path("card"), "--lengths", "in");
        var page = File.ReadAllText(scratch.Path("card/card.html"));
        Assert.DoesNotContain("so much farther out", page, StringComparison.Ordinal);
        Assert.Contains("The 0.47 in (12 mm) cutter", page, StringComparison.Ordinal);

        // 319 N are 71.7 lbf (NIST Special Publication 811, appendix B.8: 1 lbf = 4.448222 N).
        Assert.Matches("[0-9]+ lbf \\([0-9]+ N\\)", page);
        // 705 / 25.4 = 27.755..., 636 / 25.4 = 25.039...
        Assert.Equal("by 0.16 in (4 mm) at X 27.76, Y 25.04 in; it", new PodLayout.Handover.Setup.CardUnit(InInches: true).Words("by 4 mm at X 705, Y 636; it"));
        Assert.Equal("72 lbf (319 N)", new PodLayout.Handover.Setup.CardUnit(InInches: true).Force(319));
    }

    // Three grooves nearer: over the edge.
    private static void MoveP1Away(JsonObject file)
    {
        var pod = file["pods"]![0]!;
        var row = (int)pod["rowFromDatum"]!;
        pod["rowFromDatum"] = row - 3;
        pod["centreMm"]![1] = (double)pod["centreMm"]![1]! - 90;
    }

    private static string Changed(Scratch scratch, Action<JsonObject> change)
    {
        var file = JsonNode.Parse(Tray.Value)!.AsObject();
        change(file);
        return scratch.Put("layout.json", file.ToJsonString());
    }

    private static List<string> Lines(string pdf) => [.. PaperText.Lines(File.ReadAllBytes(pdf)).Select(l => string.Join(' ', l))];
}

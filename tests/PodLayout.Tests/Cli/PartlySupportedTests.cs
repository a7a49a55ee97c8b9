using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using PodLayout.Cli;

namespace PodLayout.Tests.Cli;

/// <summary>Parts of which some edge stays beyond every pod, through whole commands.</summary>
public class PartlySupportedTests
{
    [Fact]
    public void A_layout_that_leaves_a_tip_is_handed_over_with_its_own_exit_code_and_check_and_card_know_it()
    {
        using var scratch = Tipped(out var job);
        var ran = Ran.Of("plan", job, "--out", scratch.Path("out"), "--card");
        Assert.Equal(ExitCodes.PartUnsupported, ran.Code);
        Assert.Matches("UNSUPPORTED: [0-9]+ mm of edge stay beyond the limits of every pod", ran.Out);
        Assert.Contains("[part-unsupported]", ran.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("safe", ran.Out, StringComparison.OrdinalIgnoreCase);

        var file = JsonNode.Parse(File.ReadAllText(scratch.Path("out/layout.json")))!;
        var left = file["proof"]!["unsupportedMm"]!.GetValue<double>();
        Assert.InRange(left, 1, 600);
        Assert.InRange(file["proof"]!["leastUnsupportedMm"]!.GetValue<double>(), 0, left);
        Assert.Equal(left, file["unsupported"]!.AsArray().Sum(s => s!["lengthMm"]!.GetValue<double>()), 0.1);
        Assert.All(file["support"]!["points"]!.AsArray(), p => Assert.InRange(p!["shareOfLimit"]!.GetValue<double>(), 0, 1));
        Assert.Contains(",unsupported_mm,", File.ReadAllText(scratch.Path("out/pods.csv")), StringComparison.Ordinal);
        var card = File.ReadAllText(scratch.Path("out/card.html"));
        Assert.Contains("PARTLY UNSUPPORTED", card, StringComparison.Ordinal);
        Assert.Matches("data-key=\"S10\"", card);
        Assert.Contains("pl-unsupported\"", card, StringComparison.Ordinal);
        Assert.Contains(">U1<", card, StringComparison.Ordinal);

        var check = Ran.Of("check", scratch.Path("out/layout.json"));
        Assert.Equal(ExitCodes.PartUnsupported, check.Code);
        Assert.Contains("but part of the wood stays unsupported, as the plan says", check.Out, StringComparison.Ordinal);
        Assert.Equal(ExitCodes.PartUnsupported, Ran.Of("card", scratch.Path("out/layout.json"), "--out", scratch.Path("out")).Code);

        // A pod taken away with its ports leaves more than the plan left: that is a breach of this very rule, on the card too.
        var gone = file["pods"]![0]!;
        var ports = gone["openPorts"]!.AsArray().Select(p => p!.GetValue<string>()).ToHashSet(StringComparer.Ordinal);
        file["pods"]!.AsArray().RemoveAt(0);
        file["openPorts"] = new JsonArray([.. file["openPorts"]!.AsArray().Select(p => p!.GetValue<string>()).Where(p => !ports.Contains(p)).Select(p => (JsonNode)p)]);
        var changed = Ran.Of("check", scratch.Put("changed.json", file.ToJsonString()));
        Assert.Equal(ExitCodes.RuleBroken, changed.Code);
        Assert.Matches("(?m)^BROKEN +edge within overhang", changed.Out);
        Assert.DoesNotMatch("(?m)^BROKEN +ports", changed.Out);

        // Stretches that are struck out of the file are no longer passed over.
        file = JsonNode.Parse(File.ReadAllText(scratch.Path("out/layout.json")))!;
        file["unsupported"] = new JsonArray();
        Assert.Matches("(?m)^BROKEN +edge within overhang", Ran.Of("check", scratch.Put("struck.json", file.ToJsonString())).Out);
    }

    [Fact]
    public void With_all_or_nothing_there_is_no_layout()
    {
        using var scratch = Tipped(out var job);
        var text = JsonNode.Parse(File.ReadAllText(job))!;
        text["mustSupportAll"] = true;
        var ran = Ran.Of("plan", scratch.Put("all.json", text.ToJsonString()));
        Assert.Equal(ExitCodes.NoLayout, ran.Code);

        // One line a stretch, and none twice.
        var lines = ran.Out.Split('\n');
        Assert.True(lines.Length < 25, ran.Out);
        Assert.Equal(lines.Length, lines.Distinct().Count() + lines.Count(l => l.Length == 0) - 1);
    }

    [Fact]
    public void Each_way_out_does_what_it_says_when_it_is_taken()
    {
        using var scratch = Tipped(out var job);
        var tried = Ran.Of("plan", job, "--try", "--out", scratch.Path("out"));
        Assert.Equal(ExitCodes.PartUnsupported, tried.Code);
        var ways = JsonNode.Parse(File.ReadAllText(scratch.Path("out/layout.json")))!["waysOut"]!.AsArray();
        Assert.InRange(ways.Count, 2, 6);
        var least = double.PositiveInfinity;
        foreach (var (way, i) in ways.Select((w, i) => (w!, i)))
        {
            var number = (i + 1).ToString(CultureInfo.InvariantCulture);
            Assert.Contains($"  {number}. {way["words"]!.GetValue<string>()}: ", tried.Out, StringComparison.Ordinal);
            if (i > 0 && i < ways.Count - 1)
            {
                // Each takes a dozen plans: the first and the last stand for those between.
                continue;
            }

            var taken = Ran.Of("plan", job, "--take", number, "--out", scratch.Path("way" + number));
            var left = way["unsupportedMm"]!.GetValue<double>();
            Assert.Equal(left == 0 ? ExitCodes.LayoutFound : ExitCodes.PartUnsupported, taken.Code);
            Assert.Contains("[way-out-taken]", taken.Out, StringComparison.Ordinal);
            var file = JsonNode.Parse(File.ReadAllText(scratch.Path($"way{number}/layout.json")))!;
            Assert.Equal(way["pods"]!.GetValue<int>(), file["pods"]!.AsArray().Count);
            Assert.Equal(left, file["proof"]!["unsupportedMm"]?.GetValue<double>() ?? 0, 0.01);
            Assert.InRange(file["holding"]!["factor"]!.GetValue<double>(), 1.498, 1e6);
            Assert.Contains(Ran.Of("check", scratch.Path($"way{number}/layout.json")).Code, new[] { ExitCodes.LayoutFound, ExitCodes.PartUnsupported });
            least = Math.Min(least, left);
        }

        // The limit that is told is written into the job as it is said, and then all is supported.
        Assert.Equal(0, least);
        var overhang = ways.Select(w => Regex.Match(w!["words"]!.GetValue<string>(), "allow an overhang of ([0-9]+) mm$")).First(m => m.Success).Groups[1].Value;
        Assert.Equal(ExitCodes.LayoutFound, Ran.Of("plan", job, "--overhang", overhang).Code);
    }

    [Theory]
    [InlineData("0")]
    [InlineData("x")]
    [InlineData("42")]
    public void A_way_out_that_there_is_not_is_refused_with_those_that_there_are(string number)
    {
        using var scratch = Tipped(out var job);
        var ran = Ran.Of("plan", job, "--take", number, "--out", scratch.Path("out"));
        Assert.Equal(ExitCodes.BadCommandLine, ran.Code);
        Assert.Contains("--take", ran.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(scratch.Path("out")) && Directory.GetFiles(scratch.Path("out")).Length > 0);
    }

    // A panel of 420 x 260 mm with a tip of 90 mm that is too narrow for any pod; light passes along its edge.
    private static Scratch Tipped(out string job)
    {
        Scratch scratch = new();
        scratch.Put("part.dxf", Dxf([(0, 0), (420, 0), (420, 100), (510, 120), (510, 140), (420, 160), (420, 260), (0, 260)]));
        job = scratch.Put("job.json", $$"""
            {
              "version": 1, "name": "Panel with a tip", "drawing": "part.dxf", "thicknessMm": 25, "species": "hard maple", "grainDeg": 0, "overhangMm": 60,
              "cuts": [{
                "operation": "throughProfile", "name": "edge", "along": "outline", "side": "outside", "toolDiameterMm": 10, "depthBelowUndersideMm": 0.5,
                "cutter": { "flutes": 2, "helix": "downCut", "helixDeg": 25, "spindleRpm": 18000, "feedMmPerMin": 4000, "passDepthMm": 2, "widthMm": 1, "milling": "climb" }
              }],
              "shop": "{{Repository.Path("samples", "shop.json").Replace('\\', '/')}}",
              "placement": "search"
            }
            """);
        return scratch;
    }

    private static string Dxf((double X, double Y)[] corners) => string.Join('\n',
        [
            "0", "SECTION", "2", "HEADER", "9", "$INSUNITS", "70", "4", "0", "ENDSEC", "0", "SECTION", "2", "ENTITIES",
            "0", "LWPOLYLINE", "8", "0", "90", corners.Length.ToString(CultureInfo.InvariantCulture), "70", "1",
            .. corners.SelectMany(c => new[] { "10", c.X.ToString(CultureInfo.InvariantCulture), "20", c.Y.ToString(CultureInfo.InvariantCulture) }),
            "0", "ENDSEC", "0", "EOF", "",
        ]);
}

using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using PodLayout.Cli;
using PodLayout.Tests.Cli;

namespace PodLayout.Tests.Ordinary;

/// <summary>Parts as any shop has them: each gets a layout, or one line that says why no pod can stand at all.</summary>
public class OrdinaryPartsTests
{
    [Theory]
    [InlineData("arm-rest", true)]
    [InlineData("wreath", true)]
    [InlineData("bracket", true)]
    [InlineData("arched-door", true)]
    [InlineData("juice-board", false)]
    [InlineData("headboard", false)]
    [InlineData("round-top", false)]
    [InlineData("wedge", true)]
    public void A_layout_comes_and_says_the_truth_about_itself(string part, bool leaves)
    {
        using var scratch = new Scratch();
        var job = Job(part);
        var ran = Ran.Of("plan", job, "--out", scratch.Path("out"), "--card");
        var file = JsonNode.Parse(File.ReadAllText(scratch.Path("out/layout.json")))!;
        Assert.NotEmpty(file["pods"]!.AsArray());
        var factor = file["holding"]!["factor"]!.GetValue<double>();
        Assert.Equal(leaves, file["unsupported"]!.AsArray().Count > 0);
        Assert.Equal(factor < 1.498 ? ExitCodes.DoesNotHold : leaves ? ExitCodes.PartUnsupported : ExitCodes.LayoutFound, ran.Code);
        Assert.Equal(factor < 1.498, ran.Out.StartsWith("DOES NOT HOLD", StringComparison.Ordinal));
        Assert.Equal(
            factor < 1.498 ? ExitCodes.RuleBroken : leaves ? ExitCodes.PartUnsupported : ExitCodes.LayoutFound, Ran.Of("check", scratch.Path("out/layout.json")).Code);

        // Followed: with the depth of passes that the summary names the part holds. The bracket's holes are drilled, which has no passes.
        if (factor < 1.998 && part != "bracket" && Regex.Match(ran.Out, "outline in passes of at most ([0-9.]+) mm") is { Success: true } passes)
        {
            var light = JsonNode.Parse(File.ReadAllText(job))!;
            light["drawing"] = Path.ChangeExtension(job, ".dxf");
            light["shop"] = Repository.Path("samples", "shop.json");
            foreach (var cut in light["cuts"]!.AsArray().Where(c => c!["cutter"] is not null))
            {
                cut!["cutter"]!["passDepthMm"] = double.Parse(passes.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture);
            }

            var again = Ran.Of("plan", scratch.Put("light.json", light.ToJsonString()));
            Assert.Equal(leaves ? ExitCodes.PartUnsupported : ExitCodes.LayoutFound, again.Code);
        }
    }

    [Fact]
    public void Where_no_pod_can_stand_at_all_one_line_says_why()
    {
        var ran = Ran.Of("plan", Job("fretwork"));
        Assert.Equal(ExitCodes.NoLayout, ran.Code);
        var why = Assert.Single(ran.Out.Split('\n'), l => l.Contains("too narrow", StringComparison.Ordinal));
        Assert.Contains("Everywhere (22 stretches): no pod of the shop, nor any of whole pitches, fits anywhere under the part", why, StringComparison.Ordinal);
        Assert.True(ran.Out.Length < 2000, ran.Out);
    }

    private static string Job(string part) => Repository.Path("tests", "PodLayout.Tests", "Ordinary", part + ".json");
}

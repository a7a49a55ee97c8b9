using System.Text.Json.Nodes;
using PodLayout.Cli;

namespace PodLayout.Tests.Cli;

/// <summary>Holding through whole commands.</summary>
public class HoldingTests
{
    [Fact]
    public void The_crest_rail_needs_more_pods_to_hold_than_to_support_and_check_finds_the_same_factor()
    {
        using var scratch = new Scratch();
        var sample = Repository.Path("samples", "crest-rail", "job.json");
        var ran = Ran.Of("plan", sample, "--out", scratch.Path("out"), "--explain");
        Assert.Equal(ExitCodes.LayoutFound, ran.Code);
        Assert.Contains("Holding factor ", ran.Out, StringComparison.Ordinal);
        Assert.Contains("Assumed: ", ran.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("safe", ran.Out, StringComparison.OrdinalIgnoreCase);
        var file = JsonNode.Parse(File.ReadAllText(scratch.Path("out/layout.json")))!;
        var pods = file["pods"]!.AsArray().Count;
        Assert.True(file["holding"]!["factor"]!.GetValue<double>() >= 1.998);
        Assert.Equal(pods, file["proof"]!["fewestPodsPossible"]!.GetValue<int>());

        // The same rail without a word of its cut: supported by fewer, which do not hold it against the passes that are assumed then.
        var job = JsonNode.Parse(File.ReadAllText(sample))!.AsObject();
        job.Remove("cuts");
        job["drawing"] = Repository.Path("samples", "crest-rail", "part.dxf");
        job["shop"] = Repository.Path("samples", "shop.json");
        Assert.Equal(ExitCodes.DoesNotHold, Ran.Of("plan", scratch.Put("bare.json", job.ToJsonString()), "--out", scratch.Path("bare")).Code);
        var bare = JsonNode.Parse(File.ReadAllText(scratch.Path("bare/layout.json")))!;
        Assert.True(bare["pods"]!.AsArray().Count < pods);

        var check = Ran.Of("check", scratch.Path("out/layout.json"));
        Assert.Equal(ExitCodes.LayoutFound, check.Code);

        // What the plan warned of still stands, and nothing else.
        Assert.Contains("[lost-seal-moves-part]", ran.Out, StringComparison.Ordinal);
        Assert.Contains("[lost-seal-moves-part]", Assert.Single(check.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        Assert.Matches(@"held against the cutter +2(\.\d+)? +at least 1\.5", check.Out);
    }

    [Fact]
    public void A_loose_piece_is_held_against_the_cuts_along_it_and_one_pod_off_its_middle_does_not_do()
    {
        using var scratch = new Scratch();
        var ran = Ran.Of("plan", Repository.Path("samples", "wash-stand", "job.json"), "--out", scratch.Path("out"), "--card");
        Assert.Equal(ExitCodes.LayoutFound, ran.Code);
        Assert.Contains("Offcut 1 is held at a factor of ", ran.Out, StringComparison.Ordinal);
        Assert.Contains("Offcut 1", File.ReadAllText(scratch.Path("out/card.html")), StringComparison.Ordinal);
        var file = JsonNode.Parse(File.ReadAllText(scratch.Path("out/layout.json")))!.AsObject();
        var piece = Assert.Single(file["holding"]!["pieces"]!.AsArray())!;
        Assert.Equal("offcut 1", piece["name"]!.GetValue<string>());
        // The target, as far as factors are told apart.
        Assert.True(piece["factor"]!.GetValue<double>() >= 1.998);

        // With one pod less under it, by hand.
        var pods = file["pods"]!.AsArray();
        var under = pods.Where(p => p!["holds"]?.GetValue<string>() == "offcut 1").ToList();
        Assert.True(under.Count >= 2, $"{under.Count} pods under it.");
        var ports = under[0]!["openPorts"]!.AsArray().Select(p => p!.GetValue<string>()).ToList();
        pods.Remove(under[0]);
        file["openPorts"] = new JsonArray([.. file["openPorts"]!.AsArray().Select(p => p!.GetValue<string>()).Except(ports).Select(p => (JsonNode)p)]);
        var check = Ran.Of("check", scratch.Put("edited.json", file.ToJsonString()));
        Assert.Equal(ExitCodes.RuleBroken, check.Code);
        Assert.Contains("Offcut 1 is held at a factor of ", check.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_layout_below_the_least_factor_is_shown_as_one_that_does_not_hold_in_every_output()
    {
        using var scratch = new Scratch();
        var shop = JsonNode.Parse(File.ReadAllText(Repository.Path("samples", "shop.json")))!;
        shop["vacuum"] = new JsonObject { ["gaugeKPa"] = 8 };
        var ran = Ran.Of(
            "plan", Repository.Path("samples", "chair-seat", "part.dxf"), "--thickness", "30", "--overhang", "90", "--shop", scratch.Put("shop.json", shop.ToJsonString()),
            "--out", scratch.Path("out"), "--card");
        Assert.Equal(ExitCodes.DoesNotHold, ran.Code);
        Assert.StartsWith("DOES NOT HOLD", ran.Out, StringComparison.Ordinal);
        foreach (var name in new[] { "layout.svg", "card.html" })
        {
            Assert.Contains("DOES NOT HOLD", File.ReadAllText(scratch.Path("out/" + name)), StringComparison.Ordinal);
        }

        Assert.Contains("DO NOT START", File.ReadAllText(scratch.Path("out/card.html")), StringComparison.Ordinal);
        foreach (var name in new[] { "pods.csv", "ports.csv" })
        {
            Assert.All(
                File.ReadAllLines(scratch.Path("out/" + name)).Skip(1), line => Assert.Contains(",does not hold,", line, StringComparison.Ordinal));
        }

        var file = JsonNode.Parse(File.ReadAllText(scratch.Path("out/layout.json")))!;
        Assert.True(file["holding"]!["doesNotHold"]!.GetValue<bool>());
        Assert.Equal(ExitCodes.RuleBroken, Ran.Of("check", scratch.Path("out/layout.json")).Code);
    }

    [Theory]
    [InlineData("job.json")]
    [InlineData("job-by-operations.json")]
    public void The_tray_is_held_by_six_pods_by_both_figures_and_by_no_fewer(string sample)
    {
        // Most choices of six that hold by pulls fall short by springs.
        using var scratch = new Scratch();
        var ran = Ran.Of("plan", Repository.Path("samples", "tray", sample), "--out", scratch.Path("out"));
        Assert.Equal(ExitCodes.LayoutFound, ran.Code);
        var file = JsonNode.Parse(File.ReadAllText(scratch.Path("out/layout.json")))!;
        Assert.Equal(6, file["pods"]!.AsArray().Count);
        Assert.Equal(6, file["proof"]!["fewestPodsPossible"]!.GetValue<int>());
        Assert.True(file["holding"]!["factor"]!.GetValue<double>() >= 1.998);
        Assert.Equal(ExitCodes.LayoutFound, Ran.Of("check", scratch.Path("out/layout.json")).Code);
    }

    [Fact]
    public void When_time_runs_out_before_a_layout_is_found_that_holds_one_that_supports_is_shown_as_not_holding()
    {
        using var scratch = new Scratch();
        var shop = JsonNode.Parse(File.ReadAllText(Repository.Path("samples", "shop.json")))!;
        shop["vacuum"] = new JsonObject { ["gaugeKPa"] = 8 };
        var ran = Ran.Of(
            "plan", Repository.Path("samples", "chair-seat", "part.dxf"), "--thickness", "30", "--overhang", "90", "--shop", scratch.Put("shop.json", shop.ToJsonString()),
            "--out", scratch.Path("out"), "--time-limit", "0.001");
        Assert.Equal(ExitCodes.DoesNotHold, ran.Code);
        Assert.StartsWith("DOES NOT HOLD", ran.Out, StringComparison.Ordinal);
        Assert.Contains("the search was not finished", ran.Out, StringComparison.Ordinal);
        Assert.NotEmpty(JsonNode.Parse(File.ReadAllText(scratch.Path("out/layout.json")))!["pods"]!.AsArray());
    }

    [Fact]
    public void A_pod_taken_out_by_hand_is_found_to_hold_too_weakly()
    {
        using var scratch = new Scratch();
        var ran = Ran.Of("plan", Repository.Path("samples", "crest-rail", "job.json"), "--out", scratch.Path("out"));
        Assert.Equal(ExitCodes.LayoutFound, ran.Code);
        var file = JsonNode.Parse(File.ReadAllText(scratch.Path("out/layout.json")))!.AsObject();
        var pods = file["pods"]!.AsArray();

        // The one whose loss of seal the plan warns of.
        var named = System.Text.RegularExpressions.Regex.Match(ran.Out, "if P([0-9]+) lost its seal").Groups[1].Value;
        var needed = pods[int.Parse(named, System.Globalization.CultureInfo.InvariantCulture) - 1]!;
        var ports = needed["openPorts"]!.AsArray().Select(p => p!.GetValue<string>()).ToList();
        pods.Remove(needed);
        file["openPorts"] = new JsonArray([.. file["openPorts"]!.AsArray().Select(p => p!.GetValue<string>()).Except(ports).Select(p => (JsonNode)p)]);
        var check = Ran.Of("check", scratch.Put("edited.json", file.ToJsonString()));
        Assert.Equal(ExitCodes.RuleBroken, check.Code);
        Assert.Matches("held-too-weakly|part-tips-off", check.Error);
    }

    [Theory]
    [InlineData("$.holding.given.vacuum", "gaugeKPa", "200")]
    [InlineData("$.holding.given.vacuum", "gaugeKPa", "-5")]
    [InlineData("$.holding.given", "friction", "0")]
    [InlineData("$.holding.given", "densityKgPerM3", "-1")]
    [InlineData("$.holding.given.forcesOnPart", "0", "[1, 2, 3]")]
    [InlineData("$.holding.given.forcesOnPart", "0", "[1, 2, 3, 4, 5, 6, 99]")]
    public void Figures_of_holding_that_cannot_be_are_refused_at_their_place(string path, string member, string value)
    {
        using var scratch = new Scratch();
        Assert.Equal(ExitCodes.LayoutFound, Ran.Of("plan", Repository.Path("samples", "crest-rail", "job.json"), "--out", scratch.Path("out")).Code);
        var file = JsonNode.Parse(File.ReadAllText(scratch.Path("out/layout.json")))!.AsObject();
        var at = path.Split('.').Skip(1).Aggregate((JsonNode)file, (node, name) => node[name]!);
        if (at is JsonArray list)
        {
            list[int.Parse(member, System.Globalization.CultureInfo.InvariantCulture)] = JsonNode.Parse(value);
        }
        else
        {
            at[member] = JsonNode.Parse(value);
        }

        var line = Ran.Of("check", scratch.Put("edited.json", file.ToJsonString())).OnlyError();
        Assert.Contains(path, line, StringComparison.Ordinal);
    }

    [Fact]
    public void A_pod_beside_the_wood_holds_nothing_and_check_says_so()
    {
        // Moved to the far corner of the board, or taken out: the same factor.
        var away = Changed(pods =>
        {
            pods[0]!["columnFromDatum"] = 1;
            pods[0]!["rowFromDatum"] = 1;
            pods[0]!["centreMm"] = JsonNode.Parse("[75, 75]");
        });
        var without = Changed(pods => pods.RemoveAt(0));
        Assert.Equal(Factor(without.Out), Factor(away.Out), 0.02 * Factor(without.Out));
        Assert.Contains("not counted: P1 (its upper seal does not lie wholly under sound wood)", away.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void Pods_in_the_same_place_hold_once_and_check_says_so()
    {
        var before = Changed(_ => { });
        var twice = Changed(pods =>
        {
            pods.Add(pods[0]!.DeepClone());
            pods.Add(pods[0]!.DeepClone());
        });
        Assert.Equal(Factor(before.Out), Factor(twice.Out), 0.02 * Factor(before.Out));
        Assert.Contains("(it stands where P1 stands), ", twice.Out, StringComparison.Ordinal);
        Assert.Equal(ExitCodes.RuleBroken, twice.Code);
    }

    [Fact]
    public void Where_no_pod_is_under_the_wood_nothing_holds()
    {
        var none = Changed(pods =>
        {
            foreach (var pod in pods)
            {
                pod!["centreMm"] = JsonNode.Parse("[75, 75]");
            }
        });
        Assert.Equal(ExitCodes.RuleBroken, none.Code);
        Assert.Contains("No pod holds the part; not counted: P1 (", none.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Check_warns_of_a_factor_below_the_target_that_breaks_no_rule()
    {
        var ran = Changed(_ => { }, file => file["holding"]!["targetFactor"] = 50);
        Assert.Equal(ExitCodes.LayoutFound, ran.Code);
        Assert.Matches(@"podlayout: warning: \S+edited\.json: The part is held at a factor of \d+(\.\d+)?, below the target of 50\.", ran.Error);
    }

    private static readonly Lazy<string> CrestRail = new(() =>
    {
        using var scratch = new Scratch();
        Assert.Equal(ExitCodes.LayoutFound, Ran.Of("plan", Repository.Path("samples", "crest-rail", "job.json"), "--out", scratch.Path("out")).Code);
        return File.ReadAllText(scratch.Path("out/layout.json"));
    });

    private static Ran Changed(Action<JsonArray> pods, Action<JsonObject>? file = null)
    {
        using var scratch = new Scratch();
        var layout = JsonNode.Parse(CrestRail.Value)!.AsObject();
        pods(layout["pods"]!.AsArray());
        file?.Invoke(layout);
        return Ran.Of("check", scratch.Put("edited.json", layout.ToJsonString()));
    }

    private static double Factor(string text) => double.Parse(
        System.Text.RegularExpressions.Regex.Match(text, @"held against the cutter +(\d+(\.\d+)?)").Groups[1].Value,
        System.Globalization.CultureInfo.InvariantCulture);
}

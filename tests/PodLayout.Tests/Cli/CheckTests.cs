using System.Text.Json.Nodes;
using PodLayout.Cli;
using PodLayout.Handover;
using PodLayout.Tests.Independent;

namespace PodLayout.Tests.Cli;

public class CheckTests
{
    private static readonly string Text = LayoutJson.Write(HandMade.Oval());

    [Fact]
    public void A_layout_as_written_keeps_its_rules()
    {
        var ran = Check(_ => { });
        Assert.Equal((ExitCodes.LayoutFound, ""), (ran.Code, ran.Error));
        Assert.Contains("All 23 rules hold", ran.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("safe", ran.Out, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void A_pod_moved_by_hand_is_named_with_what_is_wrong()
    {
        // Two pitches down: its body would pass the edge.
        var ran = Check(file =>
        {
            var pod = file["pods"]![0]!;
            pod["rowFromDatum"] = pod["rowFromDatum"]!.GetValue<int>() - 2;
            pod["centreMm"]![1] = pod["centreMm"]![1]!.GetValue<double>() - 60;
        });
        Assert.Equal(ExitCodes.RuleBroken, ran.Code);
        Assert.Contains("BROKEN  upper seal in sound wood", ran.Out, StringComparison.Ordinal);
        Assert.Contains("rules are broken: this layout is not to be used as it is.", ran.Out, StringComparison.Ordinal);
        Assert.All(ran.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries), line => Assert.StartsWith("podlayout: error: ", line, StringComparison.Ordinal));
        Assert.Contains("layout.json $.pods[0]: P1: its seal passes the outline by ", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Grooves_changed_without_the_centre_are_answered_with_the_centre_to_write()
    {
        // Column 18 counted from 1 stands at 15 + 17 * 30; the pod is 120 mm wide. One further: 15 + 18 * 30 + 60.
        var ran = Check(file => file["pods"]![0]!["columnFromDatum"] = 19);
        Assert.Equal(ExitCodes.RuleBroken, ran.Code);
        Assert.Contains("30 mm off column 19", ran.Error, StringComparison.Ordinal);
        Assert.Contains("Set centreMm to [615, ", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_pod_taken_out_leaves_a_file_that_can_be_checked()
    {
        var ran = Check(file =>
        {
            ((JsonArray)file["pods"]!).RemoveAt(2);
        });
        Assert.Equal(ExitCodes.RuleBroken, ran.Code);
        Assert.Contains("\"P4\" is P3, and so on", ran.Error, StringComparison.Ordinal);
        Assert.Contains("no pod is fed by it", ran.Error, StringComparison.Ordinal);
        Assert.Contains("edge-beyond-limit", ran.Error, StringComparison.Ordinal);
    }

    public static TheoryData<string, string, string> Bad() => new()
    {
        { "part.inDrawing.outlineMm[0]", "[1e9, 0]", "$.part.inDrawing.outlineMm[0]" },
        { "rules.edgeStepMm", "0", "$.rules.edgeStepMm" },
        { "rules.overhangAcrossGrainMm", "-1", "$.rules.overhangAcrossGrainMm" },
        { "part.inDrawing.outlineMm", "[[0,0],[400,0],[0,200],[300,300]]", "lines cross or touch at (133.333, 133.333)" },
        { "part.inDrawing.outlineMm", "[[0,0],[400,0],[200,0]]", "$.part.inDrawing" },
        { "part.inDrawing.outlineMm", "[[-1e6,-1e6],[1e6,-1e6],[1e6,1e6],[-1e6,1e6]]", "more than 1000000 points" },
        { "pods[1].type", "\"none\"", "$.pods[1].type" },
        { "pods[1].openPorts", "[\"99-99\"]", "$.pods[1].openPorts[0]" },
        { "pods[1].columnFromDatum", "2147483647", "$.pods[1].columnFromDatum" },
        { "placement", "null", "" },
        { "version", "9", "$.version" },
        { "shop.board.pitchMm", "0", "$.shop.board.pitchMm" },
    };

    [Theory]
    [MemberData(nameof(Bad))]
    public void A_file_that_cannot_be_checked_gives_one_clear_line(string member, string json, string says)
    {
        var ran = Check(file =>
        {
            var parts = member.Replace("[", ".[", StringComparison.Ordinal).Split('.');
            var node = (JsonNode)file;
            foreach (var part in parts[..^1])
            {
                node = part[0] == '[' ? node[int.Parse(part[1..^1], System.Globalization.CultureInfo.InvariantCulture)]! : node[part]!;
            }

            var last = parts[^1];
            if (last[0] == '[')
            {
                node[int.Parse(last[1..^1], System.Globalization.CultureInfo.InvariantCulture)] = JsonNode.Parse(json);
            }
            else
            {
                node[last] = JsonNode.Parse(json);
            }
        });
        Assert.Contains(says, ran.OnlyError(), StringComparison.Ordinal);
        Assert.Equal(ExitCodes.BadRequest, ran.Code);
    }

    [Fact]
    public void A_picture_an_empty_file_and_a_file_without_layout_give_one_clear_line()
    {
        using Scratch scratch = new();
        foreach (var content in new byte[][] { [0x89, (byte)'P', (byte)'N', (byte)'G', 13, 10, 26, 10], [], [.. System.Text.Encoding.UTF8.GetBytes(LayoutJson.Write(HandMade.NoLayout()))] })
        {
            var ran = Ran.Of("check", scratch.Put("layout.json", content));
            Assert.NotEmpty(ran.OnlyError());
            Assert.Equal(ExitCodes.BadRequest, ran.Code);
        }

        Assert.Equal(ExitCodes.BadFile, Ran.Of("check", scratch.Path("none.json")).Code);
    }

    [Fact]
    public void Any_member_changed_to_anything_ends_in_a_verdict_or_a_refusal()
    {
        using Scratch scratch = new();
        var root = JsonNode.Parse(LayoutJson.Write(HandMade.Ell()))!;
        var seen = new SortedSet<int>();
        Visit(root);
        Assert.Equal([ExitCodes.LayoutFound, ExitCodes.BadRequest, ExitCodes.RuleBroken], seen);

        void Try(Action<JsonNode?> set, JsonNode? old)
        {
            foreach (var value in new[] { "null", "\"x\"", "[]", "-1", "0", "1e7", "2147483647", "[1e7, 0]", "true" })
            {
                set(JsonNode.Parse(value));
                var ran = Ran.Of("check", scratch.Put("layout.json", root.ToJsonString()));
                Assert.True(ran.Code is ExitCodes.LayoutFound or ExitCodes.BadRequest or ExitCodes.RuleBroken, $"{ran.Code}: {ran.Error}");
                seen.Add(ran.Code);
            }

            set(old?.DeepClone());
        }

        void Visit(JsonNode node)
        {
            if (node is JsonObject members)
            {
                foreach (var name in members.Select(m => m.Key).ToList())
                {
                    Try(value => members[name] = value, members[name]);
                    if (members[name] is { } child && name is not ("support" or "findings" or "work"))
                    {
                        Visit(child);
                    }
                }
            }
            else if (node is JsonArray { Count: > 0 } list)
            {
                Try(value => list[0] = value, list[0]);
                Visit(list[0]!);
            }
        }
    }

    private static Ran Check(Action<JsonObject> change)
    {
        using Scratch scratch = new();
        var file = (JsonObject)JsonNode.Parse(Text)!;
        change(file);
        return Ran.Of("check", scratch.Put("layout.json", file.ToJsonString()));
    }
}

using System.Text.Json.Nodes;
using PodLayout.Findings;
using PodLayout.Handover;
using PodLayout.Tests.Independent;

namespace PodLayout.Tests.Handover;

public class LayoutJsonTests
{
    private static readonly string Text = LayoutJson.Write(HandMade.Oval());

    [Fact]
    public void What_is_written_is_read_back_and_written_alike()
    {
        foreach (var result in new[] { HandMade.Oval(), HandMade.Ell(), HandMade.NoLayout() })
        {
            var text = LayoutJson.Write(result);
            var read = LayoutJson.Read("layout.json", text);
            Assert.True(read.Succeeded, read.Refusal?.ToString());
            Assert.Equal(text, LayoutJson.Write(read.Value));
            Assert.Equal(text, LayoutJson.Write(LayoutJson.ToPlan(read.Value)));
        }
    }

    [Fact]
    public void A_layout_searched_over_an_interval_of_angles_is_read_back()
    {
        var oval = HandMade.Oval();
        var wish = new PodLayout.Jobs.PlacementWish.SearchInterval(-5, 90);
        var read = LayoutJson.Read("layout.json", LayoutJson.Write(oval with { Job = oval.Job with { Placement = wish } }));
        Assert.True(read.Succeeded, read.Refusal?.ToString());
        Assert.Equal(wish, LayoutJson.ToPlan(read.Value).Job.Placement);
    }

    [Fact]
    public void Pods_to_keep_and_areas_to_avoid_are_read_back()
    {
        var oval = HandMade.Oval();
        var kept = new PodLayout.Jobs.KeptPod(HandMade.Narrow, true, 21, 6);
        var spot = new PodLayout.Parts.AvoidedSpot("inlay", HandMade.Circle(200, 0, 12));
        var obstacle = new PodLayout.Shops.Obstacle(
            "vice", PodLayout.Shops.ObstacleKind.Avoided, new PodLayout.Shops.ObstacleShape.Disc(new(50, 50), 30), 0);
        var job = oval.Job with
        {
            Keep = [kept],
            Part = oval.Job.Part with { Shape = oval.Job.Part.Shape with { Avoided = [spot] } },
            Shop = oval.Job.Shop with { Board = oval.Job.Shop.Board with { Obstacles = [obstacle] } },
        };
        var text = LayoutJson.Write(oval with { Job = job });
        var read = LayoutJson.ToPlan(LayoutJson.Read("layout.json", text).Value!);
        Assert.Equal(text, LayoutJson.Write(read));
        Assert.Equal(kept, Assert.Single(read.Job.Keep));
        Assert.Equal("inlay", Assert.Single(read.Job.Part.Shape.Avoided).Name);
        Assert.Equal(obstacle, Assert.Single(read.Job.Shop.Board.Obstacles));
        Assert.Contains("To be kept, as asked: 120x60, turned, at column 22, row 7.", Summary.Write(read), StringComparison.Ordinal);
        Assert.Contains("No pods on the board, as asked: vice.", Summary.Write(read), StringComparison.Ordinal);
        Assert.Contains("pod-kept", LayoutPicture.Svg(read), StringComparison.Ordinal);
    }

    [Fact]
    public void A_layout_read_back_passes_the_independent_checker()
    {
        var plan = LayoutJson.ToPlan(LayoutJson.Read("layout.json", Text).Value!);
        Assert.Empty(LayoutChecker.Check(plan).Violations);
    }

    [Fact]
    public void Columns_and_rows_are_counted_from_one()
    {
        var pod = JsonNode.Parse(Text)!["pods"]![0]!;
        Assert.Equal("P1", pod["id"]!.GetValue<string>());

        // Placed in column 17, row 4 counted from 0; the groove at its left edge is at 15 + 17 * 30 mm.
        Assert.Equal(18, pod["columnFromDatum"]!.GetValue<int>());
        Assert.Equal(5, pod["rowFromDatum"]!.GetValue<int>());
        Assert.Equal(525, pod["body"]!["minXMm"]!.GetValue<double>());
    }

    [Fact]
    public void The_text_is_plain_and_the_same_each_time()
    {
        Assert.Equal(Text, LayoutJson.Write(HandMade.Oval()));
        Assert.DoesNotContain('\r', Text);
        Assert.DoesNotMatch(@"-0[,\]\s]", Text);
        Assert.DoesNotMatch(@"\d[eE][-+]?\d", Text);
        Assert.EndsWith("}\n", Text, StringComparison.Ordinal);
        Assert.StartsWith("{\n  \"schema\": \"podlayout-layout\",\n  \"version\": 1,\n", Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"pods\": [", "\"podz\": [", "layout-unknown-member", "$.podz")]
    [InlineData("\"version\": 1", "\"version\": 2", "layout-other-version", "$.version")]
    [InlineData("podlayout-layout", "something", "layout-other-format", "$.schema")]
    [InlineData("\"turned\": false", "\"turned\": \"no\"", "layout-wrong-type", "$.pods[0].turned")]
    [InlineData("\"thicknessMm\": 32,", "", "layout-member-missing", "$.part.thicknessMm")]
    [InlineData("\"scope\": \"this-placement\"", "\"scope\": \"everywhere\"", "layout-wrong-type", "$.proof.scope")]
    [InlineData("\"id\": \"P2\"", "\"id\": \"P9\"", "layout-contradicts-itself", "$.pods[1].id")]
    [InlineData("\"interrupted\": false", "\"interrupted\": false, \"interrupted\": true", "layout-member-twice", "$.interrupted")]
    [InlineData("\"thicknessMm\": 32,", "\"thicknessMm\": 1e400,", "layout-wrong-type", "$.part.thicknessMm")]
    [InlineData("\"thicknessMm\": 32,", "\"thicknessMm\": null,", "layout-wrong-type", "$.part.thicknessMm")]
    public void What_is_wrong_is_named_with_its_path(string old, string changed, string code, string path)
    {
        var at = Text.IndexOf(old, StringComparison.Ordinal);
        var refusal = LayoutJson.Read("layout.json", Text[..at] + changed + Text[(at + old.Length)..]).Refusal!;
        Assert.Equal(code, refusal.Code);
        Assert.Equal(path, Assert.IsType<Place.InJson>(refusal.Place).Path);
    }

    [Fact]
    public void The_blank_is_filed_as_drawn_and_as_it_lies_and_a_file_of_before_it_was_is_read_as_one_without()
    {
        // The crest rail's blank is 540 x 160 mm, 20 mm beyond the part all round; the part's zero lies at (600, 240), not turned.
        var plan = Setup.Cards.Plan("crest");
        var json = JsonNode.Parse(LayoutJson.Write(plan))!;
        double[][] Ring(string shape) => [.. json["part"]![shape]!["blankMm"]![0]!.AsArray().Select(p => new[] { (double)p![0]!, (double)p[1]! })];
        Assert.Equal([[-20, -20], [520, -20], [520, 140], [-20, 140]], Ring("inDrawing"));
        Assert.Equal([[580, 220], [1120, 220], [1120, 380], [580, 380]], Ring("onBoard"));
        var read = LayoutJson.ToPlan(LayoutJson.Read("layout.json", json.ToJsonString()).Value!);
        Assert.Equal(plan.Job.Part.Shape.Blank[0].Points, read.Job.Part.Shape.Blank[0].Points);
        foreach (var shape in new[] { "inDrawing", "onBoard" })
        {
            json["part"]![shape]!.AsObject().Remove("blankMm");
        }

        var old = LayoutJson.Read("layout.json", json.ToJsonString());
        Assert.True(old.Succeeded, old.Refusal?.ToString());
        Assert.Empty(LayoutJson.ToPlan(old.Value).Job.Part.Shape.Blank);
    }

    [Fact]
    public void A_text_cut_short_anywhere_is_refused()
    {
        for (var length = 0; length < Text.Length - 2; length += 997)
        {
            Assert.Equal("layout-not-json", LayoutJson.Read("layout.json", Text[..length]).Refusal!.Code);
        }
    }

    [Fact]
    public void Any_member_left_out_or_made_null_never_ends_in_an_exception()
    {
        void Visit(JsonNode node, JsonNode root)
        {
            if (node is JsonObject members)
            {
                foreach (var (name, value) in members.ToList())
                {
                    var saved = value?.DeepClone();
                    foreach (var replacement in new JsonNode?[] { null, JsonValue.Create("x"), new JsonArray(), JsonValue.Create(-1) })
                    {
                        members[name] = replacement;
                        var read = LayoutJson.Read("layout.json", root.ToJsonString());
                        if (read.Succeeded)
                        {
                            LayoutJson.ToPlan(read.Value);
                        }
                    }

                    members.Remove(name);
                    // Files of before these were filed have no such member.
                    var isNew = name is "offcuts" or "blankMm" or "isBlankStated" or "weakFloors" or "leftOutLinesMm" or "mark"
                        or "mustSupportAll" or "unsupportedMm" or "leastUnsupportedMm" or "overhangNowMm" or "pointsMm" or "waysOut";
                    Assert.True(isNew == LayoutJson.Read("layout.json", root.ToJsonString()).Succeeded, name);
                    members[name] = saved;
                    if (saved is not null)
                    {
                        Visit(saved, root);
                    }
                }
            }
            else if (node is JsonArray { Count: > 0 } list && list[0] is { } first)
            {
                Visit(first, root);
            }
        }

        var small = JsonNode.Parse(LayoutJson.Write(HandMade.Ell()))!;
        Visit(small, small);
    }
}

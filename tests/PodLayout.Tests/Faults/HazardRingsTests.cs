using System.Text.Json.Nodes;
using PodLayout.Cli;
using PodLayout.Tests.Cli;

namespace PodLayout.Tests.Faults;

/// <summary>Areas of a layout whose rings were changed by hand until they bound nothing.</summary>
public class HazardRingsTests
{
    private static readonly Lazy<string> Tray = new(() =>
    {
        using Scratch scratch = new();
        Assert.Equal(ExitCodes.LayoutFound, Ran.Of("plan", Repository.Path("samples", "tray", "job.json"), "--out", scratch.Path("out")).Code);
        return File.ReadAllText(scratch.Path("out/layout.json"));
    });

    // Each ring as its corners; counter-clockwise is an outer one.
    public static TheoryData<string, string, bool> Rings => new()
    {
        { "a hole within its outer ring", "[[[0,0],[90,0],[90,90],[0,90]],[[10,10],[10,20],[20,20],[20,10]]]", true },
        { "two outer rings", "[[[0,0],[9,0],[9,9],[0,9]],[[20,20],[30,20],[30,30],[20,30]]]", true },
        { "a hole outside its outer ring", "[[[0,0],[9,0],[9,9],[0,9]],[[20,20],[20,30],[30,30],[30,20]]]", false },
        { "a hole that crosses its outer ring", "[[[0,0],[25,0],[25,25],[0,25]],[[20,20],[20,30],[30,30],[30,20]]]", false },
        { "a hole without an outer ring", "[[[20,20],[20,30],[30,30],[30,20]]]", false },
        { "outer rings that overlap", "[[[0,0],[25,0],[25,25],[0,25]],[[20,20],[30,20],[30,30],[20,30]]]", false },
        { "holes that overlap", "[[[0,0],[90,0],[90,90],[0,90]],[[10,10],[10,20],[20,20],[20,10]],[[15,15],[15,25],[25,25],[25,15]]]", false },
        { "a bow-tie with a hole", "[[[0,0],[90,0],[0,90],[100,90]],[[10,10],[10,20],[20,20],[20,10]]]", false },
    };

    [Theory]
    [MemberData(nameof(Rings))]
    public void Rings_that_bound_no_area_are_refused(string what, string rings, bool isArea)
    {
        Assert.NotEmpty(what);
        using Scratch scratch = new();
        var json = JsonNode.Parse(Tray.Value)!;
        json["part"]!["inDrawing"]!["hazards"]![0]!["ringsMm"] = JsonNode.Parse(rings);
        foreach (var command in new[] { "check", "card" })
        {
            var ran = Ran.Of([command, scratch.Put("layout.json", json.ToJsonString()), .. command == "card" ? ["--out", scratch.Path("card")] : Array.Empty<string>()]);
            if (isArea)
            {
                Assert.Contains(ran.Code, new[] { ExitCodes.LayoutFound, ExitCodes.RuleBroken });
                continue;
            }

            Assert.Equal(ExitCodes.BadRequest, ran.Code);
            Assert.Contains("$.part.inDrawing.hazards[0].ringsMm: These rings bound no area", ran.OnlyError(), StringComparison.Ordinal);
        }
    }
}

using System.Text;
using PodLayout.Findings;
using PodLayout.Jobs;
using PodLayout.Jobs.Written;
using PodLayout.Parts;
using PodLayout.Programs;

namespace PodLayout.Tests.Jobs;

public class CutReadingTests
{
    [Fact]
    public void Cuts_program_and_blank_are_read()
    {
        var request = Read("""
            "cuts": [
              { "operation": "throughProfile", "layer": "A", "side": "inside", "toolDiameterMm": 12, "skinMm": 0.5, "tabs": 3 },
              { "operation": "edgeProfile", "along": "outline", "toolDiameterMm": 20, "depthBelowUndersideMm": 2, "reachMm": 8 },
              { "operation": "pocketFromFace", "layer": "P*", "floorLeftMm": 9 },
              { "operation": "defect", "layer": "KNOT" }
            ],
            "program": { "file": "a.nc", "zZero": "boardFace", "offsetMm": [3, -4], "arcToleranceMm": 0.01,
              "tools": [ { "number": 7, "diameterMm": 12, "cornerForm": "bull", "cornerRadiusMm": 2 } ] },
            "lowestTipMm": -0.2, "boardClearanceMm": 5, "blank": { "grownByMm": 10 }
            """).Value!;
        var cuts = request.Cuts;
        Assert.Equal([0.5, -2.0, 9.0, 0.0], cuts.Operations.Select(o => o.LowestTipMm));
        Assert.Equal((CutSide.Inside, 12.0, 3), (cuts.Operations[0].Side, cuts.Operations[0].ToolDiameterMm, cuts.Operations[0].Tabs));
        Assert.Equal(new CutLines.Outline(), cuts.Operations[1].Lines);
        Assert.Equal(new Tool(7, 12, new CutterForm.Bull(2)), cuts.Program!.Tools[7]);
        Assert.Equal((ZZero.BoardFace, 3.0, 0.01, -0.2, 5.0, (double?)null), (cuts.Program.ZZero, cuts.Program.Offset.X, cuts.Program.ArcToleranceMm, cuts.LowestTipMm, cuts.BoardClearanceMm, cuts.Blank!.DensityKgPerM3));
        // A through cut may follow the part's own edges; the other layers are none.
        Assert.Equal((null, LayerRole.Cut, LayerRole.Cut), (request.Layers.RoleOf("A"), request.Layers.RoleOf("P1"), request.Layers.RoleOf("KNOT")));
    }

    [Fact]
    public void Without_a_word_of_cuts_nothing_is_asked() =>
        Assert.Equal((0, null, null), (Read("").Value!.Cuts.Operations.Length, Read("").Value!.Cuts.Program, Read("").Value!.Cuts.Blank));

    [Theory]
    [InlineData("""{ "operation": "throughProfile", "side": "on", "toolDiameterMm": 6 }""", "$.cuts[0]")]
    [InlineData("""{ "operation": "throughProfile", "layer": "A", "along": "holes", "side": "on", "toolDiameterMm": 6 }""", "$.cuts[0]")]
    [InlineData("""{ "operation": "throughProfile", "layer": "A", "toolDiameterMm": 6 }""", "$.cuts[0].side")]
    [InlineData("""{ "operation": "throughProfile", "layer": "A", "side": "on" }""", "$.cuts[0].toolDiameterMm")]
    [InlineData("""{ "operation": "pocketFromFace", "layer": "A" }""", "$.cuts[0].floorLeftMm")]
    [InlineData("""{ "operation": "defect", "layer": "A", "reachMm": 4 }""", "$.cuts[0].reachMm")]
    [InlineData("""{ "operation": "pocketFromFace", "layer": "A", "floorLeftMm": 32 }""", "$.cuts[0].floorLeftMm")]
    [InlineData("""{ "operation": "throughProfile", "layer": "A", "side": "on", "toolDiameterMm": 6, "skinMm": 40 }""", "$.cuts[0].skinMm")]
    [InlineData("""{ "operation": "drill", "layer": "A", "skinMm": 1, "depthBelowUndersideMm": 1 }""", "$.cuts[0]")]
    public void An_unclear_operation_is_refused_at_its_member(string cut, string path)
    {
        var refusal = Read($"\"cuts\": [{cut}]").Refusal!;
        Assert.Equal(("cut-unclear", $"job.json {path}"), (refusal.Code, refusal.Place?.ToString()));
    }

    [Theory]
    [InlineData("""{ "number": 1, "diameterMm": 6, "cornerForm": "vee" }""", "tool-unclear")]
    [InlineData("""{ "number": 1, "diameterMm": 6, "cornerForm": "bull" }""", "tool-unclear")]
    [InlineData("""{ "number": 1, "diameterMm": 6, "cornerForm": "bull", "cornerRadiusMm": 4 }""", "tool-unclear")]
    [InlineData("""{ "number": 1, "diameterMm": 6, "angleDeg": 90 }""", "tool-unclear")]
    [InlineData("""{ "number": 1, "diameterMm": 6 }, { "number": 1, "diameterMm": 8 }""", "tool-twice")]
    public void An_unclear_tool_is_refused(string tools, string code) =>
        Assert.Equal(code, Read($"\"program\": {{ \"file\": \"a.nc\", \"zZero\": \"partFace\", \"tools\": [{tools}] }}").Refusal?.Code);

    [Theory]
    [InlineData("{}")]
    [InlineData("""{ "layer": "B", "grownByMm": 4 }""")]
    public void An_unclear_blank_is_refused(string blank) =>
        Assert.Equal("blank-unclear", Read($"\"blank\": {blank}").Refusal?.Code);

    private static Outcome<JobRequest> Read(string members)
    {
        var text = "{ \"version\": 1, \"drawing\": \"part.dxf\", \"thicknessMm\": 30" + (members.Length > 0 ? ", " + members : "") + " }";
        return JobReading.Read("job.json", Encoding.UTF8.GetBytes(text), []);
    }
}

using System.Text;
using System.Text.Json;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Jobs.Written;
using PodLayout.JsonFiles;
using PodLayout.Parts;
using PodLayout.Tests.Shops;

namespace PodLayout.Tests.Jobs;

public class JobReadingTests
{
    private const string Name = "job.json";
    private const string Least = """{"version":1,"drawing":"parts/seat.dxf","thicknessMm":32}""";

    [Fact]
    public void What_is_not_said_has_the_stated_defaults()
    {
        var job = Read(Least).Value!;
        Assert.Equal("seat", job.Name);
        Assert.Equal(new Margins(3, 3), job.Margins);
        Assert.Equal(new SupportRules(60, 60, 200, 10, 30), job.Support);
        Assert.Equal([0.0], Assert.IsType<PlacementWish.Search>(job.Placement).AnglesDeg);
        Assert.Null(job.ShopPath);
        Assert.Null(job.Reading.UnitOverride);
    }

    [Fact]
    public void Everything_may_be_said()
    {
        var job = Read("""
            {"$schema":"x","version":1,"name":"Seat","note":"n","drawing":"seat.dxf","units":"in","outlineLayer":"CUT",
             "layers":{"CUT":"outline","KNOTS":"defect","0":"ignore"},"joinGapMm":0.1,"chordToleranceMm":0.02,"thicknessMm":45,
             "species":"ash","grainDeg":-30,"sealMarginMm":4,"cutClearanceMm":5,"overhangMm":{"alongGrainMm":90,"acrossGrainMm":50},
             "interiorSpanMm":null,"edgeStepMm":5,"interiorStepMm":20,"shop":"s.json",
             "placement":{"zeroOnBoardMm":[100,-20],"angleDeg":15}}
            """).Value!;
        Assert.Equal(new SupportRules(90, 50, null, 5, 20), job.Support);
        Assert.Equal(new PlacementWish.Given(new Point2(100, -20), 15), job.Placement);
        Assert.Equal(25.4, job.Reading.UnitOverride!.MmPerUnit);
        Assert.Equal(LayerRole.Defect, job.Layers.RoleOf("knots"));
        Assert.Equal(-30, job.GrainDeg);
    }

    [Fact]
    public void An_angle_that_stands_twice_is_tried_once_and_said()
    {
        var outcome = Read(Put("placement", """{"searchAnglesDeg":[0, 90, 360]}"""));
        Assert.Equal([0.0, 90.0], Assert.IsType<PlacementWish.Search>(outcome.Value!.Placement).AnglesDeg);
        Assert.Equal(Severity.Mended, Assert.Single(outcome.Findings).Severity);
    }

    public static TheoryData<string, string, string, string> Damages() => new()
    {
        { "thicknesMm", "32", "json-unknown-member", "$.thicknesMm" },
        { "thicknessMm", "", "json-missing-member", "$.thicknessMm" },
        { "thicknessMm", "0", "json-out-of-range", "$.thicknessMm" },
        { "thicknessMm", "\"32 mm\"", "json-wrong-type", "$.thicknessMm" },
        { "thicknessMm", "null", "json-wrong-type", "$.thicknessMm" },
        { "drawing", "\"\"", "json-bad-text", "$.drawing" },
        { "drawing", "7", "json-wrong-type", "$.drawing" },
        { "units", "\"inch\"", "json-wrong-type", "$.units" },
        { "layers", "{\"my cut\":\"hoel\"}", "json-wrong-type", "$.layers['my cut']" },
        { "layers", "{\"A\":\"hole\",\"A\":\"hole\"}", "json-duplicate-member", "$.layers.A" },
        { "layers", "[\"A\"]", "json-wrong-type", "$.layers" },
        { "overhangMm", "-1", "json-out-of-range", "$.overhangMm" },
        { "overhangMm", "\"60\"", "json-wrong-type", "$.overhangMm" },
        { "overhangMm", "[60,60]", "json-wrong-type", "$.overhangMm" },
        { "overhangMm", "{\"alongGrainMm\":60}", "json-missing-member", "$.overhangMm.acrossGrainMm" },
        { "overhangMm", "{\"alongGrainMm\":60,\"acrossGrainMm\":0}", "json-out-of-range", "$.overhangMm.acrossGrainMm" },
        { "edgeStepMm", "0", "json-out-of-range", "$.edgeStepMm" },
        { "keep", "[{\"pod\":\"a\",\"column\":1}]", "json-missing-member", "$.keep[0].row" },
        { "keep", "[{\"pod\":\"a\",\"column\":0,\"row\":1}]", "json-out-of-range", "$.keep[0].column" },
        { "keep", "[{\"pod\":\"a\",\"column\":1,\"row\":1.5}]", "json-wrong-type", "$.keep[0].row" },
        { "keep", "[{\"type\":\"a\",\"column\":1,\"row\":1}]", "json-unknown-member", "$.keep[0].type" },
        { "avoid", "[{\"name\":\"a\"}]", "obstacle-shape", "$.avoid[0]" },
        { "avoid", "[{\"name\":\"a\",\"centreMm\":[1,2]}]", "obstacle-shape", "$.avoid[0]" },
        { "avoid", "[{\"name\":\"a\",\"centreMm\":[1,2],\"diameterMm\":0}]", "json-out-of-range", "$.avoid[0].diameterMm" },
        { "avoid", "[{\"name\":\"a\",\"area\":{\"minXMm\":5,\"minYMm\":0,\"maxXMm\":5,\"maxYMm\":9}}]", "area-empty", "$.avoid[0].area" },
        { "avoid", "[{\"area\":{\"minXMm\":0,\"minYMm\":0,\"maxXMm\":5,\"maxYMm\":9}}]", "json-missing-member", "$.avoid[0].name" },
        { "avoidOnPart", "[{\"name\":\"a\",\"area\":{\"minXMm\":0,\"minYMm\":9,\"maxXMm\":5,\"maxYMm\":0}}]", "area-empty", "$.avoidOnPart[0].area" },
        { "placement", "\"serach\"", "json-wrong-type", "$.placement" },
        { "placement", "{}", "placement-unclear", "$.placement" },
        { "placement", "{\"angleDeg\":5}", "placement-unclear", "$.placement" },
        { "placement", "{\"zeroOnBoardMm\":[0,0],\"searchAnglesDeg\":[0]}", "placement-unclear", "$.placement" },
        { "placement", "{\"searchAnglesDeg\":[]}", "json-too-few", "$.placement.searchAnglesDeg" },
        { "placement", "{\"searchAnglesDeg\":[0,\"a\"]}", "json-wrong-type", "$.placement.searchAnglesDeg[1]" },
        { "placement", "{\"zeroOnBoardMm\":[0,0,0]}", "json-wrong-type", "$.placement.zeroOnBoardMm" },
    };

    [Theory]
    [MemberData(nameof(Damages))]
    public void A_damaged_job_is_refused_at_its_path(string member, string json, string code, string path)
    {
        var refusal = Assert.Single(Read(Put(member, json)).Findings);
        Assert.Equal(code, refusal.Code);
        Assert.Equal(new Place.InJson(Name, path), refusal.Place);
        Assert.DoesNotContain('\n', refusal.ToString());
        Assert.False(string.IsNullOrWhiteSpace(refusal.Remedy));
    }

    [Fact]
    public void An_option_goes_before_the_member_and_is_named_when_it_is_wrong()
    {
        Assert.Equal(18, Read(Least, new MemberOverride("--thickness", "thicknessMm", null, Json("18"))).Value!.ThicknessMm);
        var refusal = Read(Least, new MemberOverride("--thickness", "thicknessMm", null, Json("-18"))).Refusal!;
        Assert.Equal(new Place.InOption("--thickness"), refusal.Place);
    }

    [Fact]
    public void A_layer_given_as_an_option_joins_those_of_the_file()
    {
        var job = Read(
            Put("layers", """{"A":"hole","B":"hole"}"""),
            new("--layer", "layers", "B", Json("\"ignore\"")),
            new("--layer", "layers", "C", Json("\"defect\""))).Value!;
        Assert.Equal(["A Hole", "B Ignore", "C Defect"], job.Layers.ByLayer.Select(l => $"{l.Key} {l.Value}"));
        var fresh = Read(Least, new MemberOverride("--layer", "layers", "C", Json("\"nonsense\""))).Refusal!;
        Assert.Equal(new Place.InOption("--layer"), fresh.Place);
    }

    [Fact]
    public void Options_alone_make_a_job() => Assert.Equal("top", JobReading.FromOptions([
        new("DRAWING", "drawing", null, Json("\"a/top.dxf\"")), new("--thickness", "thicknessMm", null, Json("32"))]).Value!.Name);

    private static string Put(string member, string json) => ShopReadingTests.Change(Least, member, json);

    private static JsonElement Json(string text) => JsonElement.Parse(text);

    private static Outcome<JobRequest> Read(string text, params MemberOverride[] overrides) =>
        JobReading.Read(Name, Encoding.UTF8.GetBytes(text), [.. overrides]);
}

using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using PodLayout.Findings;
using PodLayout.Jobs.Written;
using PodLayout.Schemas;
using PodLayout.Shops.Written;

namespace PodLayout.Tests.Schemas;

/// <summary>The strict reader and the published schema, the latter judged by JsonSchema.Net, must agree on what is well formed.</summary>
public class ReaderAgainstSchemaTests
{
    private const string FullJob = """
        {"$schema":"x","version":1,"name":"Seat","note":"n","drawing":"seat.dxf","units":"in","outlineLayer":"CUT",
         "layers":{"KNOTS":"defect","0":"ignore"},"joinGapMm":0.1,"chordToleranceMm":0.02,"thicknessMm":45,
         "species":"ash","grainDeg":-30,"sealMarginMm":4,"cutClearanceMm":5,"overhangMm":{"alongGrainMm":90,"acrossGrainMm":50},
         "interiorSpanMm":null,"edgeStepMm":5,"interiorStepMm":20,"shop":"s.json",
         "keep":[{"pod":"120 x 120","turned":true,"column":3,"row":4}],
         "avoid":[{"name":"vice","area":{"minXMm":0,"minYMm":0,"maxXMm":100,"maxYMm":50}}],
         "wood":{"densityKgPerM3":640,"alongGrainGPa":11,"leakLPerMinPerM2":30},"underside":"rough",
         "cutter":{"flutes":3,"helix":"downCut","helixDeg":25,"spindleRpm":16000,"feedMmPerMin":5000,"passDepthMm":8,"widthMm":6,"milling":"climb","tangentialN":90},
         "holding":{"targetFactor":2.5,"leastFactor":1.2,"acceptLessBecause":"screwed down","friction":0.5},
         "avoidOnPart":[{"name":"inlay","centreMm":[10,20],"diameterMm":30}],
         "placement":{"zeroOnBoardMm":[100,-20],"angleDeg":15}}
        """;

    private static readonly string[] Values =
        ["null", "true", "0", "-1", "0.5", "7", "1e8", "\"\"", "\" \"", "\"search\"", "\"a\\u0001\"", "[]", "[1,2]", "[1,2,3]", "[\"a\"]", "{}", "{\"x\":1}"];

    [Fact]
    public void Reader_and_schema_agree_on_every_member_of_a_shop_replaced_by_every_kind_of_value() =>
        AssertAgree(PublishedSchemas.Shop, Encoding.UTF8.GetString(ShopReading.DefaultText()), bytes => ShopReading.Read("f", bytes).Refusal);

    [Fact]
    public void Reader_and_schema_agree_on_every_member_of_a_board_to_be_made_replaced_by_every_kind_of_value() =>
        AssertAgree(
            PublishedSchemas.Shop, File.ReadAllText(Repository.Path("samples", "boards", "two-by-four-feet", "shop.json")),
            bytes => ShopReading.Read("f", bytes).Refusal);

    [Fact]
    public void Reader_and_schema_agree_on_every_member_of_a_job_replaced_by_every_kind_of_value() =>
        AssertAgree(PublishedSchemas.Job, FullJob, bytes => JobReading.Read("f", bytes, []).Refusal);

    [Fact]
    public void Whatever_a_file_is_cut_to_is_refused_and_never_throws()
    {
        var whole = ShopReading.DefaultText().AsSpan().TrimEnd((byte)'\n').ToArray();
        for (var length = 0; length < whole.Length; length++)
        {
            Assert.Equal("json-syntax", ShopReading.Read("f", whole[..length]).Refusal!.Code);
        }
    }

    private static void AssertAgree(string schemaText, string good, Func<byte[], Finding?> read)
    {
        var schema = JsonSchema.FromText(schemaText, new BuildOptions { SchemaRegistry = new SchemaRegistry() });
        var paths = Paths(JsonNode.Parse(good)!, []).ToArray();
        var refused = 0;
        foreach (var path in paths)
        {
            foreach (var value in Values)
            {
                var changed = JsonNode.Parse(good)!;
                var at = path[..^1].Aggregate(changed, (node, step) => step is int i ? node[i]! : node[(string)step]!);
                if (path[^1] is int index)
                {
                    at[index] = JsonNode.Parse(value);
                }
                else
                {
                    at[(string)path[^1]] = JsonNode.Parse(value);
                }

                var text = changed.ToJsonString();
                var refusal = read(Encoding.UTF8.GetBytes(text));
                using var document = JsonDocument.Parse(text);
                var malformed = refusal is not null && refusal.Code.StartsWith("json-", StringComparison.Ordinal);
                Assert.True(schema.Evaluate(document.RootElement).IsValid != malformed, $"{string.Join('.', path)} = {value}: {refusal}");
                refused += malformed ? 1 : 0;
            }
        }

        Assert.True(refused > paths.Length * Values.Length / 2, "Most of these values are wrong most everywhere.");
    }

    private static IEnumerable<object[]> Paths(JsonNode node, object[] path)
    {
        var children = node switch
        {
            JsonObject o => o.Select(p => ((object)p.Key, p.Value)),
            JsonArray a => a.Select((v, i) => ((object)i, v)),
            _ => [],
        };
        foreach (var (step, child) in children)
        {
            object[] here = [.. path, step];
            yield return here;
            foreach (var deeper in child is null ? [] : Paths(child, here))
            {
                yield return deeper;
            }
        }
    }
}

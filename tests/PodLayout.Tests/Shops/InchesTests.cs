using System.Text;
using System.Text.Json.Nodes;
using PodLayout.Schemas;
using PodLayout.Shops.Written;
using PodLayout.Tests.Schemas;

namespace PodLayout.Tests.Shops;

public class InchesTests
{
    [Fact]
    public void A_length_in_inches_is_the_same_length()
    {
        var shop = Good();
        var board = shop["board"]!.AsObject();
        board.Remove("grooveWidthMm");
        board["grooveWidthIn"] = 0.25;
        board["ports"]!["lattice"]!.AsObject().Remove("firstMm");
        board["ports"]!["lattice"]!["firstIn"] = new JsonArray(60 / 25.4, 60 / 25.4);
        var read = Read(shop);
        Assert.Equal(6.35, read.Value!.Board.GrooveWidthMm, 12);
        Assert.Equal(60, read.Value.Board.Ports[0].Centre.X, 9);
    }

    [Theory]
    [InlineData("""{"grooveWidthMm":6,"grooveWidthIn":0.25}""", "json-two-units", "$.board.grooveWidthIn")]
    [InlineData("""{"grooveWidthIn":-0.25}""", "json-out-of-range", "$.board.grooveWidthIn")]
    [InlineData("""{"grooveWidthIn":"1/4"}""", "json-wrong-type", "$.board.grooveWidthIn")]
    [InlineData("{}", "json-missing-member", "$.board.grooveWidthMm")]
    [InlineData("""{"grooveWidthIn":2}""", "groove-too-wide", "$.board.grooveWidthIn")]
    public void A_wrong_length_in_inches_is_refused_where_it_stands(string members, string code, string path)
    {
        var shop = Good();
        shop["board"]!.AsObject().Remove("grooveWidthMm");
        foreach (var (name, value) in JsonNode.Parse(members)!.AsObject())
        {
            shop["board"]![name] = value?.DeepClone();
        }

        var refusal = Read(shop).Refusal!;
        Assert.Equal((code, "shop.json " + path), (refusal.Code, refusal.Place!.ToString()));
        var valid = PublishedSchemasTests.IsValid(PublishedSchemas.Shop, Encoding.UTF8.GetBytes(shop.ToJsonString()));
        Assert.Equal(!code.StartsWith("json-", StringComparison.Ordinal), valid);
    }

    private static JsonNode Good() => JsonNode.Parse(ShopReading.DefaultText())!;

    private static PodLayout.Findings.Outcome<PodLayout.Shops.Shop> Read(JsonNode shop) =>
        ShopReading.Read("shop.json", Encoding.UTF8.GetBytes(shop.ToJsonString()));
}

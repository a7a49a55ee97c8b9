using System.Text;
using System.Text.Json.Nodes;
using PodLayout.BoardMaking;
using PodLayout.Findings;
using PodLayout.Geometry;

namespace PodLayout.Tests.BoardMaking;

/// <summary>Boards that the tests start from.</summary>
internal static class Boards
{
    public static string[] Samples { get; } = ["two-by-four-feet", "two-zones-metric", "small"];

    /// <summary>
    /// Common practice, no source: a board of about two by four feet, quarter-inch grooves 7.5 mm deep on a 30 mm pitch, 120 mm
    /// pods with one port in each 120 mm square, ports drilled 7/8 in into 1 in stock meeting channels of 3/16 in.
    /// </summary>
    public static JsonNode TradeFacts() => Sample("two-by-four-feet");

    public static JsonNode Sample(string name) => JsonNode.Parse(File.ReadAllText(SamplePath(name)))!;

    public static string SamplePath(string name) => Repository.Path("samples", "boards", name, "shop.json");

    public static Outcome<BoardPlan> Made(JsonNode shop) =>
        BoardRequestReading.Read("shop.json", Encoding.UTF8.GetBytes(shop.ToJsonString())).Then(BoardDesign.Make);

    public static BoardPlan Good(JsonNode shop)
    {
        var made = Made(shop);
        Assert.True(made.Succeeded, made.Succeeded ? "" : made.Refusal!.ToString());
        return made.Value;
    }

    public static Finding Refused(JsonNode shop, string code)
    {
        var made = Made(shop);
        Assert.False(made.Succeeded);
        var finding = made.Findings.FirstOrDefault(f => f.Code == code);
        Assert.True(finding is not null, "Found instead: " + string.Join(" / ", made.Findings));
        Assert.Equal(Severity.Refused, finding.Severity);
        Assert.False(string.IsNullOrWhiteSpace(finding.Remedy));
        return finding;
    }

    public static JsonArray At(double x, double y) => new(x, y);

    public static JsonObject Area(Box2 b) => new() { ["minXMm"] = b.MinX, ["minYMm"] = b.MinY, ["maxXMm"] = b.MaxX, ["maxYMm"] = b.MaxY };
}

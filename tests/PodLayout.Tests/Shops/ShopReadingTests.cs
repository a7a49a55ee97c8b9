using System.Text;
using System.Text.Json.Nodes;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Schemas;
using PodLayout.Shops;
using PodLayout.Shops.Written;
using PodLayout.Tests.Schemas;

namespace PodLayout.Tests.Shops;

public class ShopReadingTests
{
    private const string Name = "shop.json";

    [Fact]
    public void The_built_in_shop_has_a_port_in_the_middle_of_a_land_every_120_mm()
    {
        var board = ShopReading.Default().Board;
        Assert.Equal(12 * 9, board.Ports.Length);
        Assert.All(board.Ports, port =>
        {
            Assert.Equal(15, (port.Centre.X - 15) % 30, 9);
            Assert.Equal(15, (port.Centre.Y - 15) % 30, 9);
        });
        Assert.Equal(["2-2", "6-2", "10-2"], board.Ports.Take(3).Select(p => p.Name));
        Assert.Equal(new Box2(15, 15, 1485, 1035), board.UsableArea);
    }

    // Common practice, no source: one port in each 120 mm square, so every seat of a 120 mm pod covers exactly one.
    [Fact]
    public void Every_seat_of_a_120_mm_pod_in_the_built_in_shop_covers_exactly_one_port()
    {
        var board = ShopReading.Default().Board;
        for (var column = 0; board.ColumnXMm(column) + 120 <= 1485; column++)
        {
            for (var row = 0; board.RowYMm(row) + 120 <= 1035; row++)
            {
                Box2 body = new(board.ColumnXMm(column), board.RowYMm(row), board.ColumnXMm(column) + 120, board.RowYMm(row) + 120);
                Assert.Single(board.Ports, p => body.Contains(p.Centre));
            }
        }
    }

    [Theory]
    [InlineData(0, 0, 0, 0)]
    [InlineData(45, -15, 15, 15)]
    [InlineData(-30, 300, 0, 0)]
    [InlineData(29.5, -0.5, 29.5, 29.5)]
    public void Any_groove_crossing_may_be_the_origin(double x, double y, double firstX, double firstY)
    {
        var shop = Good();
        shop["board"]!["latticeOriginMm"] = new JsonArray(x, y);
        shop["board"]!["ports"] = Listed(firstX + 15, firstY + 15);
        var first = Read(shop).Value!.Board.FirstGroove;
        Assert.Equal(firstX, first.X, 9);
        Assert.Equal(firstY, first.Y, 9);
    }

    [Fact]
    public void Marked_ports_are_dead_stuck_open_or_not_there()
    {
        var shop = Good();
        var ports = shop["board"]!["ports"]!;
        ports["dead"] = new JsonArray("2-2");
        ports["stuckOpen"] = new JsonArray(new JsonArray(180, 60));
        ports["missing"] = new JsonArray("10-2");
        var made = Read(shop).Value!.Board.Ports;
        Assert.Equal(PortState.Dead, made.Single(p => p.Name == "2-2").State);
        Assert.Equal(PortState.StuckOpen, made.Single(p => p.Name == "6-2").State);
        Assert.DoesNotContain(made, p => p.Name == "10-2");
    }

    [Fact]
    public void Two_ports_in_one_cell_have_two_names()
    {
        var shop = Good();
        shop["board"]!["ports"] = Listed(54, 60);
        shop["board"]!["ports"]!["list"]!.AsArray().Add(new JsonObject { ["atMm"] = new JsonArray(66, 60) });
        shop["board"]!["ports"]!["diameterMm"] = 6;
        Assert.Equal(["2-2", "2-2b"], Read(shop).Value!.Board.Ports.Select(p => p.Name));
    }

    [Fact]
    public void Sizes_given_in_inches_and_rounded_are_whole_pitches()
    {
        // 1 3/16 in = 30.1625 mm; four of them are 120.65 mm.
        var shop = Good();
        shop["board"]!["pitchMm"] = 30.1625;
        shop["board"]!["latticeOriginMm"] = new JsonArray(0, 0);
        shop["board"]!["ports"] = Listed(15, 15);
        shop["pods"]!.AsArray().Clear();
        shop["pods"]!.AsArray().Add(Pod(120.65, 60.32));
        Assert.True(Read(shop).Succeeded);
    }

    public static TheoryData<string, string, string, string> Damages() => new()
    {
        // path to set, JSON to put there (nothing: take it out), code, path in the message
        { "pods[1].widthMm", "-120", "json-out-of-range", "$.pods[1].widthMm" },
        { "pods[1].widthMm", "0", "json-out-of-range", "$.pods[1].widthMm" },
        { "pods[1].widthMm", "1e999", "json-out-of-range", "$.pods[1].widthMm" },
        { "pods[1].widthMm", "\"120\"", "json-wrong-type", "$.pods[1].widthMm" },
        { "pods[1].widthMm", "125", "pod-off-pitch", "$.pods[1].widthMm" },
        { "pods[1].widthMm", "", "pod-footprint", "$.pods[1]" },
        { "pods[0].diameterMm", "120", "pod-footprint", "$.pods[0]" },
        { "pods[2].lengthMm", "10", "pod-off-pitch", "$.pods[2].lengthMm" },
        { "pods[2].wdithMm", "60", "json-unknown-member", "$.pods[2].wdithMm" },
        { "pods[2].stock", "2.5", "json-wrong-type", "$.pods[2].stock" },
        { "pods[2].stock", "null", "json-wrong-type", "$.pods[2].stock" },
        { "pods[2].name", "\" \"", "json-bad-text", "$.pods[2].name" },
        { "pods[2].name", "\"a\\u0007b\"", "json-bad-text", "$.pods[2].name" },
        { "pods[2].name", "\"a\\ud800b\"", "json-bad-text", "$.pods[2].name" },
        { "pods[2].name", "\"120 x 60\"", "pod-name-twice", "$.pods[2].name" },
        { "pods[2].heightMm", "", "json-missing-member", "$.pods[2].heightMm" },
        { "pods[2].sealInsetAboveMm", "30", "seal-inset-too-large", "$.pods[2].sealInsetAboveMm" },
        { "pods[2].sealInsetBelowMm", "25", "seal-inset-too-large", "$.pods[2].sealInsetBelowMm" },
        { "pods[2].mayTurn", "\"yes\"", "json-wrong-type", "$.pods[2].mayTurn" },
        { "pods", "[]", "json-too-few", "$.pods" },
        { "pods", "{}", "json-wrong-type", "$.pods" },
        { "pods", "[7]", "json-wrong-type", "$.pods[0]" },
        { "version", "2", "json-version", "$.version" },
        { "version", "", "json-missing-member", "$.version" },
        { "board.pitchMm", "0.01", "pitch-too-small", "$.board.pitchMm" },
        { "board.grooveWidthMm", "30", "groove-too-wide", "$.board.grooveWidthMm" },
        { "board.latticeOriginMm", "[15]", "json-wrong-type", "$.board.latticeOriginMm" },
        { "board.latticeOriginMm", "[15, \"15\"]", "json-wrong-type", "$.board.latticeOriginMm[1]" },
        { "board.latticeOriginMm", "[0, 0]", "port-on-groove", "$.board.ports.lattice" },
        { "board.usableMarginMm", "600", "usable-area-empty", "$.board.usableMarginMm" },
        { "board.usableArea", "{\"minXMm\":0,\"minYMm\":0,\"maxXMm\":1,\"maxYMm\":1}", "usable-area-twice", "$.board.usableMarginMm" },
        { "board.ports.lattice", "", "ports-none", "$.board.ports" },
        { "board.ports.lattice.spacingMm", "[120, -1]", "json-out-of-range", "$.board.ports.lattice.spacingMm[1]" },
        { "board.ports.lattice.spacingMm", "true", "json-wrong-type", "$.board.ports.lattice.spacingMm" },
        { "board.ports.lattice.spacingMm", "0.01", "ports-too-many", "$.board.ports.lattice.spacingMm" },
        { "board.ports.lattice.firstMm", "[75, 60]", "port-on-groove", "$.board.ports.lattice" },
        { "board.ports.diameterMm", "25", "port-on-groove", "$.board.ports.lattice" },
        { "board.ports.dead", "[\"1-1\"]", "port-unknown", "$.board.ports.dead[0]" },
        { "board.ports.dead", "[[62, 60]]", "port-unknown", "$.board.ports.dead[0]" },
        { "board.ports.dead", "[\"2-2\", [60, 60]]", "port-marked-twice", "$.board.ports.dead[1]" },
        { "board.ports.dead", "[2]", "json-wrong-type", "$.board.ports.dead[0]" },
        { "board.ports.list", "[{\"atMm\":[2000,60]}]", "port-off-board", "$.board.ports.list[0].atMm" },
        { "board.ports.list", "[{\"atMm\":[62,60]}]", "ports-overlap", "$.board.ports.list[0]" },
        { "board.obstacles[1].kind", "\"nail\"", "json-wrong-type", "$.board.obstacles[1].kind" },
        { "board.obstacles[1].diameterMm", "", "obstacle-shape", "$.board.obstacles[1]" },
        { "board.obstacles[0].area", "{\"minXMm\":0,\"minYMm\":0,\"maxXMm\":1,\"maxYMm\":1}", "obstacle-shape", "$.board.obstacles[0]" },
    };

    [Theory]
    [MemberData(nameof(Damages))]
    public void A_damaged_shop_is_refused_at_its_path(string member, string json, string code, string path)
    {
        var shop = Encoding.UTF8.GetBytes(Change(Good().ToJsonString(), member, json));
        var outcome = ShopReading.Read(Name, shop);
        var refusal = Assert.Single(outcome.Findings);
        Assert.Equal(code, refusal.Code);
        Assert.Equal(new Place.InJson(Name, path), refusal.Place);
        Assert.Equal(FindingKind.Request, refusal.Kind);
        Assert.False(string.IsNullOrWhiteSpace(refusal.Remedy));
        if (code.StartsWith("json-", StringComparison.Ordinal) && !json.Contains("ud800", StringComparison.Ordinal))
        {
            // Whatever the strict reader refuses by form, the published schema refuses as well.
            Assert.False(PublishedSchemasTests.IsValid(PublishedSchemas.Shop, shop));
        }
    }

    [Fact]
    public void All_stock_of_zero_is_refused()
    {
        var shop = Good();
        foreach (var pod in shop["pods"]!.AsArray())
        {
            pod!["stock"] = 0;
        }

        Assert.Equal("pods-none", Read(shop).Refusal!.Code);
    }

    [Theory]
    [InlineData("{\"version\": 1,\n \"name\": NaN}", 2, "not valid JSON")]
    [InlineData("{\"version\": 1,\n // remark\n \"name\": \"x\"}", 2, "not valid JSON")]
    [InlineData("{\"version\": 1,}", 1, "not valid JSON")]
    [InlineData("{\"version\": 1,\n\n \"name\": \"x\"", 3, "not valid JSON")]
    [InlineData("", null, "empty")]
    [InlineData(" \r\n ", null, "empty")]
    [InlineData("\u0089PNG", 1, "not valid JSON")]
    public void What_is_not_JSON_is_refused_with_its_line(string text, int? line, string words)
    {
        var refusal = Assert.Single(ShopReading.Read(Name, Encoding.UTF8.GetBytes(text)).Findings);
        Assert.Equal("json-syntax", refusal.Code);
        Assert.Equal(new Place.InFile(Name, line), refusal.Place);
        Assert.Contains(words, refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Other_encodings_are_refused() =>
        Assert.Contains("UTF-8", ShopReading.Read(Name, Encoding.Unicode.GetBytes("\ufeff{}")).Refusal!.Message, StringComparison.Ordinal);

    [Fact]
    public void A_byte_order_mark_is_let_pass() =>
        Assert.True(ShopReading.Read(Name, [.. Encoding.UTF8.Preamble, .. ShopReading.DefaultText()]).Succeeded);

    [Fact]
    public void A_member_that_stands_twice_is_refused()
    {
        var refusal = ShopReading.Read(Name, "{\"version\":1,\"name\":\"a\",\"board\":{\"name\":\"b\",\"name\":\"c\"}}"u8.ToArray()).Refusal!;
        Assert.Equal("json-duplicate-member", refusal.Code);
        Assert.Equal(new Place.InJson(Name, "$.board.name"), refusal.Place);
    }

    [Fact]
    public void A_mistyped_member_is_answered_with_the_nearest_known_one() => Assert.Contains(
        "Did you mean \"widthMm\"?",
        ShopReading.Read(Name, Encoding.UTF8.GetBytes(Change(Good().ToJsonString(), "board.wdithMm", "1"))).Refusal!.Remedy,
        StringComparison.Ordinal);

    [Fact]
    public void Thousands_of_ports_are_read_at_once()
    {
        var shop = Good();
        shop["board"]!["ports"]!["lattice"]!["spacingMm"] = 30;
        Assert.Equal(49 * 34, Read(shop).Value!.Board.Ports.Length);
    }

    internal static JsonObject Good() => JsonNode.Parse(ShopReading.DefaultText())!.AsObject();

    /// <summary>Puts text at a member path, which may be something that no JSON library would write.</summary>
    internal static string Change(string json, string member, string value)
    {
        const string Mark = "\"@@here@@\"";
        var root = JsonNode.Parse(json)!;
        var at = root;
        var steps = member.Replace("[", ".[", StringComparison.Ordinal).Split('.');
        foreach (var step in steps[..^1])
        {
            at = step[0] == '[' ? at[int.Parse(step.Trim('[', ']'))]! : at[step]!;
        }

        if (value.Length == 0)
        {
            at.AsObject().Remove(steps[^1]);
            return root.ToJsonString();
        }

        at[steps[^1]] = "@@here@@";
        return root.ToJsonString().Replace(Mark, value, StringComparison.Ordinal);
    }

    private static JsonObject Listed(double x, double y) => new()
    {
        ["diameterMm"] = 8,
        ["list"] = new JsonArray(new JsonObject { ["atMm"] = new JsonArray(x, y) }),
    };

    private static JsonObject Pod(double width, double length) => new()
    {
        ["name"] = "p",
        ["widthMm"] = width,
        ["lengthMm"] = length,
        ["sealInsetAboveMm"] = 5,
        ["sealInsetBelowMm"] = 6,
        ["heightMm"] = 60,
        ["stock"] = 1,
    };

    private static Outcome<Shop> Read(JsonNode shop) => ShopReading.Read(Name, Encoding.UTF8.GetBytes(shop.ToJsonString()));
}

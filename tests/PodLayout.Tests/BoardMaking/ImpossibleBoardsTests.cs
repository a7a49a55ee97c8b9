using System.Text.Json.Nodes;
using PodLayout.Geometry;

namespace PodLayout.Tests.BoardMaking;

/// <summary>Boards that cannot be made: each is refused with the figure and with what would mend it.</summary>
public class ImpossibleBoardsTests
{
    private static readonly Dictionary<string, (string Code, string Figure, string Remedy, Action<JsonNode> Change)> Impossible = new()
    {
        ["counterbore larger than its land"] = ("port-on-groove", "15 mm from the middle of a groove; a port of 24 mm needs 15.175 mm", "No port of this diameter fits", shop =>
            shop["board"]!["ports"]!["diameterMm"] = 24),

        // Land of 30 - 6.35 - 2 x 0.5 = 22.65 mm; (22.65 - 22) / 2.
        ["counterbore's wall too thin"] = ("counterbore-wall-thin", "0.325 mm", "20.65 mm wide", shop => shop["board"]!["ports"]!["diameterMm"] = 22),

        // From the port at (105, 60) 30 mm to the pin, less its hole's 5.05 mm and the channel end's 20 mm.
        ["channel through a pin"] = ("port-on-pin", "4.95 mm are left", "missing", shop =>
        {
            Mm(Making(shop)["channels"]!, "width", 40);
            OpenBack(shop, new(200, 100, 1000, 500), (135, 60), (135, 540));
        }
        ),

        // In the rows at Y 180 and 420 a pin stands between the port at X 105 and the vacuum, which begins at X 200.
        ["row stopped by a pin"] = ("port-not-joined", "2 of 45 ports", "move the pin", shop =>
        {
            Making(shop)["channels"]!["layout"] = "rows";
            OpenBack(shop, new(200, 40, 1000, 560), (165, 180), (165, 420));
        }
        ),

        // Their middle line is Y 315: the hole at Y 300 comes down at Y 330.
        ["pins that do not mirror"] = ("pins-not-mirrored", "30 mm from any pin", "mirror each other", shop => Making(shop)["table"]!["pins"]![1]!["atMm"] = Boards.At(1186, 330)),

        // 7.5 + 3/16 in + 4 mm.
        ["stock thinner than its cuts"] = ("floor-thin", "-0.2625 mm", "16.2625 mm", shop =>
        {
            Mm(Making(shop)["stock"]!, "thickness", 12);
            Mm(Making(shop)["portBore"]!, "drillDepth", 9.5);
        }
        ),
        ["pitch that does not divide the pod"] = ("pod-off-pitch", "120 mm, which is not a whole number of pitches of 32 mm", "128 mm", shop =>
        {
            shop["board"]!["pitchMm"] = 32;
            shop["board"]!["ports"]!["lattice"]!["firstMm"] = Boards.At(110, 63);
            shop["board"]!["ports"]!["lattice"]!["spacingMm"] = 128;
        }
        ),
        ["drill through the stock"] = ("drill-through", "-0.6 mm", "less than 25.4 mm", shop => Mm(Making(shop)["portBore"]!, "drillDepth", 26)),
        ["board beyond the travel"] = ("outside-travel", "-26 mm", "make it smaller", shop => Making(shop)["table"]!["travel"]!["maxXMm"] = 1180),
        ["sheet too small"] = ("sheet-too-small", "-24 mm", "1224 x 624 mm", shop => Making(shop)["stock"]!["sheetAlongGrainMm"] = 1200),
        ["seam through a zone"] = ("seam-in-zone", "555 mm from its boundary at X 0 mm", "X 0 mm", shop => Making(shop)["seamsXMm"] = new JsonArray(555)),

        // The seam lies on the boundary of two zones, and on the groove at X 600.
        ["seam on a groove"] = ("groove-at-edge", "-3.175 mm at X 600", "Move the lattice, the edge or the seam", shop => TwoZones(shop, 600)),
        ["gasket over a pin"] = ("gasket-over-pin", "-9.05 mm", "at least 24.05 mm", shop => Making(shop)["gasket"]!["insetMm"] = 10),
        ["vacuum outside the gasket"] = ("vacuum-outside-gasket", "-6 mm", "Close the table's grooves", shop => Making(shop)["table"]!["zones"]![0]!["vacuumExtent"]!["minXMm"] = 30),
        // The rows at Y 60, 180 and 540, of nine ports each, do not run over it.
        ["ports that no row can join"] = ("port-not-joined", "27 of 45 ports", "\"best\"", shop =>
        {
            Making(shop)["channels"]!["layout"] = "rows";
            Making(shop)["table"]!["zones"]![0]!["vacuumExtent"] = Boards.Area(new(200, 200, 1000, 500));
        }
        ),
        ["webs too thin"] = ("web-thin", "-5 mm", "115 mm wide", WideChannels),
        ["channels too narrow for the flow"] = ("channel-too-narrow", "Pa at port", "Make the channels at least", shop =>
        {
            Making(shop)["flow"] = new JsonObject { ["perOpenPortLPerMin"] = 20 };
            Making(shop)["limits"] = new JsonObject { ["pressureLossPa"] = 20 };
        }
        ),
        ["one pin"] = ("json-too-few", "a list of 1", "locator pins", shop => Making(shop)["table"]!["pins"]!.AsArray().RemoveAt(1)),
        ["groove through a pin"] = ("groove-through-pin", "-4.225 mm at Y 285", "lies in a land", shop =>
        {
            foreach (var pin in Making(shop)["table"]!["pins"]!.AsArray())
            {
                pin!["atMm"] = Boards.At((double)pin["atMm"]![0]!, 289.5);
            }
        }
        ),
        ["cord sunk in its groove"] = ("gasket-cord-sunk", "-1 mm", "stand proud", shop => Making(shop)["gasket"]!["depthMm"] = 8),
        ["chamfer cutter in the groove's floor"] = ("chamfer-cuts-floor", "-0.675 mm", "smaller chamfer", shop => shop["board"]!["grooveDepthMm"] = 3),
        ["no way to make it"] = ("making-missing", "missing", "Add it", shop => shop.AsObject().Remove("making")),
    };

    public static TheoryData<string> Names() => [.. Impossible.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void An_impossible_board_is_refused_with_the_figure_and_what_would_mend_it(string name)
    {
        var (code, figure, remedy, change) = Impossible[name];
        var shop = Boards.TradeFacts();
        change(shop);
        var finding = Boards.Refused(shop, code);
        Assert.Contains(figure, finding.Message, StringComparison.Ordinal);
        Assert.Contains(remedy, finding.Remedy, StringComparison.Ordinal);
    }

    private static JsonNode Making(JsonNode shop) => shop["making"]!;

    private static void Mm(JsonNode node, string name, double mm)
    {
        node.AsObject().Remove(name + "In");
        node[name + "Mm"] = mm;
    }

    private static void OpenBack(JsonNode shop, Box2 vacuum, params (double X, double Y)[] pins)
    {
        Making(shop).AsObject().Remove("gasket");
        Making(shop)["table"]!["zones"]![0]!["vacuumExtent"] = Boards.Area(vacuum);
        foreach (var (x, y) in pins)
        {
            Making(shop)["table"]!["pins"]!.AsArray().Add((JsonNode)new JsonObject { ["name"] = $"pin at {x}", ["atMm"] = Boards.At(x, y), ["diameterMm"] = 10 });
        }
    }

    private static void TwoZones(JsonNode shop, double seam)
    {
        Making(shop)["seamsXMm"] = new JsonArray(seam);
        Making(shop)["table"]!["zones"] = new JsonArray(
            new JsonObject { ["name"] = "a", ["area"] = Boards.Area(new(0, 0, seam, 600)), ["vacuumExtent"] = Boards.Area(new(60, 60, seam - 60, 540)) },
            new JsonObject { ["name"] = "b", ["area"] = Boards.Area(new(seam, 0, 1200, 600)), ["vacuumExtent"] = Boards.Area(new(seam + 60, 60, 1140, 540)) });
    }

    // Channels of 125 mm for ports 120 mm apart.
    private static void WideChannels(JsonNode shop)
    {
        Mm(Making(shop)["channels"]!, "width", 125);
        Making(shop)["portBore"]!["offset"] = "search";
        Making(shop)["table"]!["zones"]![0]!["vacuumExtent"] = Boards.Area(new(100, 100, 1100, 500));
    }
}

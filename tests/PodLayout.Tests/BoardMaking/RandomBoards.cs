using System.Text.Json.Nodes;
using FsCheck;
using FsCheck.Fluent;
using PodLayout.Geometry;

namespace PodLayout.Tests.BoardMaking;

/// <summary>Boards of all sizes and pitches that can be made, in one piece or two, turned over about either axis.</summary>
internal static class RandomBoards
{
    public static Arbitrary<JsonNode> All() => (
        from pitch in Gen.Choose(24, 60)
        from columns in Gen.Choose(8, 20)
        from rows in Gen.Choose(8, 16)
        from every in Gen.Choose(2, 4)
        from flip in Gen.Elements("alongX", "alongY")
        from layout in Gen.Elements("best", "best", "rows", "columns", "combOfRows", "combOfColumns")
        from gasket in Gen.Elements(false, true)
        from seam in Gen.Elements(false, true)
        from grain in Gen.Elements("alongX", "alongY", "none")
        select Shop(pitch, columns, rows, every, flip, layout, gasket, seam, grain)).ToArbitrary();

    private static JsonNode Shop(
        double pitch, int columns, int rows, int every, string flip, string layout, bool gasket, bool seam, string grain)
    {
        // Edges and seam in the middle of lands of the lattice; the outermost lands hold pins and gasket.
        double width = columns * pitch, length = rows * pitch, middle = Math.Round(columns / 2.0) * pitch;
        var edge = 1.5 * pitch;
        Box2[] areas = seam ? [new(0, 0, middle, length), new(middle, 0, width, length)] : [new(0, 0, width, length)];
        JsonNode shop = Boards.TradeFacts();
        var board = shop["board"]!.AsObject();
        (board["widthMm"], board["lengthMm"], board["pitchMm"]) = (width, length, pitch);
        board.Remove("grooveWidthIn");
        (board["grooveWidthMm"], board["grooveDepthMm"]) = (4, 5);
        board["latticeOriginMm"] = Boards.At(pitch / 2, pitch / 2);
        board["usableArea"] = Boards.Area(new(edge, edge, width - edge, length - edge));
        board["ports"] = new JsonObject
        {
            ["diameterMm"] = 9,
            ["lattice"] = new JsonObject { ["spacingMm"] = every * pitch, ["firstMm"] = Boards.At(2 * pitch, 2 * pitch) },
        };
        var making = shop["making"]!.AsObject();
        making["portBore"]!["offset"] = "search";
        making["portBore"]!["drillDiameterMm"] = 6;
        making["portBore"]!.AsObject().Remove("drillDiameterIn");
        making["channels"] = new JsonObject { ["widthMm"] = 7, ["depthMm"] = 5, ["layout"] = layout };
        making["limits"] = new JsonObject { ["edgeMm"] = 8, ["webMm"] = 2 };
        making["cutting"] = new JsonObject { ["pinHoles"] = new JsonObject { ["toolDiameterMm"] = 3, ["feedMmPerMin"] = 800, ["stepDownMm"] = 3 } };
        making["flipAxis"] = flip;
        making["stock"]!["grain"] = grain;
        (making["stock"]!["sheetAlongGrainMm"], making["stock"]!["sheetAcrossGrainMm"]) = (2440, 2440);
        making["table"]!["travel"] = Boards.Area(new(-100, -100, 2000, 2000));
        making["table"]!["zones"] = new JsonArray([.. areas.Select((a, i) => new JsonObject
        {
            ["name"] = $"zone {i + 1}",
            ["area"] = Boards.Area(a),
            ["vacuumExtent"] = Boards.Area(a.Grow(-edge)),
        })]);
        making["table"]!["pins"] = new JsonArray([.. areas.SelectMany((a, i) => Pins(a, pitch, flip)).Select((p, i) => new JsonObject
        {
            ["name"] = $"pin {i + 1}", ["atMm"] = Boards.At(p.X, p.Y), ["diameterMm"] = 4,
        })]);
        making.Remove("gasket");
        if (gasket)
        {
            making["gasket"] = new JsonObject { ["widthMm"] = 4, ["depthMm"] = 3, ["insetMm"] = 0.5 * pitch + 2, ["cordDiameterMm"] = 3.5 };
        }

        if (seam)
        {
            making["seamsXMm"] = new JsonArray(middle);
        }

        shop["pods"] = new JsonArray(new JsonObject
        {
            ["name"] = "pod",
            ["widthMm"] = every * pitch,
            ["lengthMm"] = every * pitch,
            ["sealInsetAboveMm"] = 2,
            ["sealInsetBelowMm"] = 2,
            ["heightMm"] = 50,
            ["stock"] = 10,
        });
        return shop;
    }

    // Two that mirror each other about the flip axis, in the outermost lands, near one edge: the axis is the piece's middle.
    private static Point2[] Pins(Box2 a, double pitch, string flip)
    {
        var q = pitch / 4;
        return flip == "alongX"
            ? [new(a.MinX + q, a.MinY + q), new(a.MinX + q, a.MaxY - q)]
            : [new(a.MinX + q, a.MinY + q), new(a.MaxX - q, a.MinY + q)];
    }
}

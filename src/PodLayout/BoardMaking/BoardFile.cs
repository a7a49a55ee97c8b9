using System.Collections.Immutable;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using PodLayout.Geometry;
using PodLayout.Shops;

namespace PodLayout.BoardMaking;

/// <summary>
/// <c>board.json</c>: the shop file as it was given, with the board as it is made (ports where they are bored, pins and seams
/// as places that pods stay off). It is a shop file itself, so that planning and making go by the same figures.
/// </summary>
internal static class BoardFile
{
    /// <summary>Half the width that is kept clear over a seam: the joint's own play.</summary>
    private const double HalfSeamMm = 0.25;

    private static readonly JsonSerializerOptions Indented = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The file's text.</summary>
    /// <param name="request">What is asked.</param>
    /// <param name="first">The port the lattice is counted from; null leaves the ports as given.</param>
    /// <param name="missing">Ports of the lattice that are not bored, beside those marked so already.</param>
    public static string Text(BoardRequest request, Point2? first, ImmutableArray<Point2> missing)
    {
        var document = request.Document.DeepClone().AsObject();
        document.Remove("$schema");
        var board = document["board"]!.AsObject();
        var ports = board["ports"]!.AsObject();
        if (first is { } at)
        {
            var lattice = ports["lattice"]!.AsObject();
            lattice.Remove("firstIn");
            lattice["firstMm"] = PointOf(at);
            document["making"]!["portBore"]!["offset"] = "asGiven";
        }

        if (!missing.IsEmpty)
        {
            var marks = ports["missing"]?.DeepClone().AsArray() ?? [];
            foreach (var port in missing)
            {
                marks.Add((JsonNode)PointOf(port));
            }

            ports["missing"] = marks;
        }

        AddObstacles(request, board);
        return document.ToJsonString(Indented) + "\n";
    }

    public static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);

    private static void AddObstacles(BoardRequest request, JsonObject board)
    {
        var obstacles = board["obstacles"]?.AsArray();
        if (obstacles is null)
        {
            board["obstacles"] = obstacles = [];
        }

        var known = request.Shop.Board.Obstacles.Select(o => o.Shape).OfType<ObstacleShape.Disc>().ToList();
        foreach (var pin in request.Pins.Where(p => !known.Any(k => (k.Centre - p.At).Length < 1 && k.DiameterMm >= p.HoleDiameterMm - 1e-6)))
        {
            obstacles.Add((JsonNode)new JsonObject
            {
                ["name"] = pin.Name,
                ["kind"] = "pin",
                ["centreMm"] = PointOf(pin.At),
                ["diameterMm"] = pin.HoleDiameterMm,
            });
        }

        var (width, length) = (request.Shop.Board.WidthMm, request.Shop.Board.LengthMm);
        foreach (var seam in request.SeamsXMm.Select(x => new Box2(x - HalfSeamMm, 0, x + HalfSeamMm, length))
            .Concat(request.SeamsYMm.Select(y => new Box2(0, y - HalfSeamMm, width, y + HalfSeamMm)))
            .Where(s => !request.Shop.Board.Obstacles.Any(o => o.Shape is ObstacleShape.Rectangle r && r.Extent == s)))
        {
            obstacles.Add((JsonNode)new JsonObject
            {
                ["name"] = "seam",
                ["kind"] = "damage",
                ["area"] = new JsonObject { ["minXMm"] = seam.MinX, ["minYMm"] = seam.MinY, ["maxXMm"] = seam.MaxX, ["maxYMm"] = seam.MaxY },
            });
        }
    }

    // Sums of pitches: a millionth of a millimetre is noise, and would stand in the file for ever.
    private static JsonArray PointOf(Point2 p) => new(Math.Round(p.X, 6) + 0.0, Math.Round(p.Y, 6) + 0.0);
}

using System.Globalization;
using PodLayout.Geometry;
using PodLayout.Shops;

namespace PodLayout.Handover.Picture;

/// <summary>The empty board: grooves, their numbers, ports, what pods stay clear of, and the datum.</summary>
internal static class BoardDrawing
{
    private const double NumberSizeMm = 3.1;

    /// <param name="draft">The sheet.</param>
    /// <param name="board">The board.</param>
    public static void Draw(SheetDraft draft, GridBoard board)
    {
        var face = new Box2(0, 0, board.WidthMm, board.LengthMm);
        draft.AddBox(SheetDraft.Board, "board", face);
        Grooves(draft, board);
        if (board.UsableArea != face)
        {
            draft.AddBox(SheetDraft.Grooves, "usable", board.UsableArea);
        }

        Numbers(draft, board);
        var radius = Symbols.PortRadius(draft, board.PortDiameterMm);
        foreach (var port in board.Ports)
        {
            Symbols.Port(draft, SheetDraft.Ports, port.Centre, radius, port.State);
            draft.AddPort(port.Centre, radius);
        }

        foreach (var obstacle in board.Obstacles)
        {
            DrawObstacle(draft, obstacle);
        }

        Datum(draft);
    }

    /// <summary>Signs of an obstacle, also for the legend.</summary>
    public static void ObstacleSign(SheetDraft draft, string layer, ObstacleKind kind, ObstacleShape shape)
    {
        if (kind == ObstacleKind.Avoided)
        {
            AvoidedSign(draft, layer, RingOf(shape));
            return;
        }

        if (shape is ObstacleShape.Disc disc)
        {
            draft.Add(layer, new Primitive.Disc("obstacle", disc.Centre, disc.DiameterMm / 2));
        }

        var ring = RingOf(shape);
        if (shape is ObstacleShape.Rectangle)
        {
            draft.Add(layer, new Primitive.Area("obstacle", [ring]));
        }

        switch (kind)
        {
            case ObstacleKind.Pin:
                var b = ring.Bounds;
                draft.Add(layer, new Primitive.Strokes("obstacle-hatch",
                [
                    new(b.MinX, b.Centre.Y), new(b.MaxX, b.Centre.Y), new(b.Centre.X, b.MinY), new(b.Centre.X, b.MaxY),
                ]));
                break;
            case ObstacleKind.Stop:
                draft.Add(layer, new Primitive.Hatch("obstacle-hatch", [ring], 45, 1.2 * draft.Scale));
                break;
            default:
                draft.Add(layer, new Primitive.Hatch("obstacle-hatch", [ring], 45, 0.9 * draft.Scale));
                draft.Add(layer, new Primitive.Hatch("obstacle-hatch", [ring], -45, 0.9 * draft.Scale));
                break;
        }
    }

    /// <summary>Sign of an area that was to be avoided, also for spots of the part and for the legend.</summary>
    public static void AvoidedSign(SheetDraft draft, string layer, Ring ring)
    {
        draft.Add(layer, new Primitive.Hatch("avoided-hatch", [ring], -45, 2.2 * draft.Scale));
        draft.Add(layer, new Primitive.Area("avoided", [ring]));
    }

    /// <summary>The middle lines of the grooves.</summary>
    public static void Grooves(SheetDraft draft, GridBoard board)
    {
        var plain = new List<Point2>();
        var fifth = new List<Point2>();
        for (var c = 0; board.ColumnXMm(c) <= board.WidthMm; c++)
        {
            (IsFifth(c) ? fifth : plain).AddRange([new(board.ColumnXMm(c), 0), new(board.ColumnXMm(c), board.LengthMm)]);
        }

        for (var r = 0; board.RowYMm(r) <= board.LengthMm; r++)
        {
            (IsFifth(r) ? fifth : plain).AddRange([new(0, board.RowYMm(r)), new(board.WidthMm, board.RowYMm(r))]);
        }

        draft.Add(SheetDraft.Grooves, new Primitive.Strokes("groove", [.. plain]));
        draft.Add(SheetDraft.Grooves, new Primitive.Strokes("groove-fifth", [.. fifth]));
    }

    private static bool IsFifth(int index) => (index + 1) % 5 == 0;

    private static void Numbers(SheetDraft draft, GridBoard board)
    {
        var content = draft.Content;
        var u = draft.Scale;
        // Of a part of the board, those in it.
        static bool IsIn(double at, double from, double to) => at >= from - 1e-6 && at <= to + 1e-6;
        var columns = (int)Math.Floor((board.WidthMm - board.FirstGroove.X) / board.PitchMm) + 1;
        var rows = (int)Math.Floor((board.LengthMm - board.FirstGroove.Y) / board.PitchMm) + 1;
        var widest = TextMeasure.Width(Math.Max(columns, 1).ToString(CultureInfo.InvariantCulture), NumberSizeMm, true);
        IReadOnlyList<int> across = [.. Numbered(columns, board.PitchMm / u, widest + 0.6)], along = [.. Numbered(rows, board.PitchMm / u, NumberSizeMm * 1.15)];
        foreach (var c in across.Where(c => IsIn(board.ColumnXMm(c), content.MinX, content.MaxX)))
        {
            var twin = IsEnd(across, c) ? $"column {c}" : null;
            var x = board.ColumnXMm(c);
            Number(draft, new(x, content.MinY), new(0, -1), new(0, -2.9 * u), c, TextAnchor.Middle, twin);
            Number(draft, new(x, content.MaxY), new(0, 1), new(0, 2.9 * u), c, TextAnchor.Middle, twin);
        }

        foreach (var r in along.Where(r => IsIn(board.RowYMm(r), content.MinY, content.MaxY)))
        {
            var twin = IsEnd(along, r) ? $"row {r}" : null;
            var y = board.RowYMm(r);
            Number(draft, new(content.MinX, y), new(-1, 0), new(-1.7 * u, 0), r, TextAnchor.End, twin);
            Number(draft, new(content.MaxX, y), new(1, 0), new(1.7 * u, 0), r, TextAnchor.Start, twin);
        }
    }

    // All of them where there is room; else the first and every second, fifth, tenth, ...
    private static IEnumerable<int> Numbered(int count, double pitchOnPaper, double room)
    {
        int[] steps = [1, 2, 5, 10, 20, 50, 100];
        var step = steps.FirstOrDefault(s => s * pitchOnPaper >= room, 200);
        return Enumerable.Range(0, Math.Max(0, count))
            .Where(i => (i + 1) % step == 0 || (i == 0 && (step - 1) * pitchOnPaper >= room));
    }

    // Where every groove has its number, a missing one would be looked for.
    private static bool IsEnd(IReadOnlyList<int> numbered, int index) =>
        numbered.Count > 3 && numbered[1] > numbered[0] + 1 && (index == numbered[0] || index == numbered[^1]);

    // One with a twin on the other side of the board may give way.
    private static void Number(SheetDraft draft, Point2 at, Point2 outwards, Point2 offset, int index, TextAnchor anchor, string? twin)
    {
        var isFifth = IsFifth(index);
        draft.AddLine(SheetDraft.Numbers, isFifth ? "rule" : "leader", at, at + outwards * ((isFifth ? 1.2 : 0.8) * draft.Scale));
        var words = (index + 1).ToString(CultureInfo.InvariantCulture);
        draft.AddText(SheetDraft.Numbers, isFifth ? "number-fifth" : "number", at + offset, words, NumberSizeMm, anchor);
        var box = draft.TextBox(at + offset, words, NumberSizeMm, isFifth);
        box = box.Moved(new(anchor switch { TextAnchor.Start => box.Width / 2, TextAnchor.End => -box.Width / 2, _ => 0 }, 0));
        if (draft.NumbersYield && twin is not null)
        {
            draft.AddYielding(twin, SheetDraft.Numbers, 2, box);
            return;
        }

        draft.Take(box);
        draft.AddWord(box);
    }

    private static void DrawObstacle(SheetDraft draft, Obstacle obstacle)
    {
        ObstacleSign(draft, SheetDraft.Obstacles, obstacle.Kind, obstacle.Shape);
        if (obstacle.ClearanceMm > 0)
        {
            draft.Add(SheetDraft.Obstacles, obstacle.Shape switch
            {
                ObstacleShape.Disc d =>
                    new Primitive.Disc("obstacle-clearance", d.Centre, d.DiameterMm / 2 + obstacle.ClearanceMm),
                _ => new Primitive.Area(
                    "obstacle-clearance", [SheetDraft.RingOf(RingOf(obstacle.Shape).Bounds.Grow(obstacle.ClearanceMm))]),
            });
        }

        if (obstacle.Kind == ObstacleKind.Avoided)
        {
            // Often large, and thinly drawn: words may stand on it.
            return;
        }

        draft.Take(RingOf(obstacle.Shape).Bounds.Grow(0.3 * draft.Scale));
    }

    private static Ring RingOf(ObstacleShape shape) => shape switch
    {
        ObstacleShape.Disc d => new([.. Enumerable.Range(0, 48).Select(i =>
            d.Centre + Turn.FromDegrees(i * 7.5).Apply(new(d.DiameterMm / 2, 0)))]),
        ObstacleShape.Rectangle r => SheetDraft.RingOf(r.Extent),
        _ => throw new ArgumentOutOfRangeException(nameof(shape), shape, "Unknown shape."),
    };

    /// <summary>Zero and the directions of X and Y.</summary>
    public static void Datum(SheetDraft draft)
    {
        var content = draft.Content;
        var u = draft.Scale;
        if (!content.Contains(default(Point2)))
        {
            return;
        }

        draft.Add(SheetDraft.Numbers, new Primitive.Disc("datum", default, 1.3 * u));
        draft.Take(new Box2(0, 0, 0, 0).Grow(1.4 * u));
        draft.AddWord(new Box2(0, 0, 0, 0).Grow(1.4 * u));
        draft.Add(SheetDraft.Numbers, new Primitive.Area("datum-fill", [Quarter(u, 0)]));
        draft.Add(SheetDraft.Numbers, new Primitive.Area("datum-fill", [Quarter(u, 180)]));
        double x = content.MinX - 8.5 * u, y = content.MinY - 7.5 * u;
        var reach = 14 * u;
        Symbols.Arrow(draft, SheetDraft.Numbers, "datum", "datum-fill", new(0, y), new(reach, y), false);
        draft.AddText(SheetDraft.Numbers, "text-bold", new(reach + 1.2 * u, y), "X", 2.8);
        Symbols.Arrow(draft, SheetDraft.Numbers, "datum", "datum-fill", new(x, 0), new(x, reach), false);
        draft.AddText(SheetDraft.Numbers, "text-bold", new(x, reach + 2.2 * u), "Y", 2.8, TextAnchor.Middle);
        const string zero = "datum 0, 0";
        const double zeroMm = 2.4;
        var corner = new Point2(x - 2.5 * u, y - 2.6 * u);
        draft.AddText(SheetDraft.Numbers, "text", corner, zero, zeroMm);
        // Off the board only the flags of marks look for room.
        var words = draft.TextBox(corner, zero, zeroMm);
        foreach (var box in new Box2[] { new(0, y - u, reach + 4 * u, y + u), new(x - u, 0, x + u, reach + 4 * u), words.Moved(new(words.Width / 2, 0)) })
        {
            draft.Take(box);
        }
    }

    private static Ring Quarter(double u, double startDeg) => new(
    [
        default,
        .. Enumerable.Range(0, 10).Select(i => Turn.FromDegrees(startDeg + i * 10).Apply(new(1.3 * u, 0))),
    ]);
}

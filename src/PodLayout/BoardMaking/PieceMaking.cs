using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.JsonFiles;
using PodLayout.Shops;

namespace PodLayout.BoardMaking;

/// <summary>Perimeters and seams, and the pins that locate each piece.</summary>
internal static class PieceMaking
{
    /// <summary>A pin comes down on a pin when it is this near, mm: well within any fit.</summary>
    private const double PinMm = 0.01;

    public static ImmutableArray<Piece> Of(BoardRequest request, CheckList checks)
    {
        Seams(request, request.SeamsXMm, alongY: true, checks);
        Seams(request, request.SeamsYMm, alongY: false, checks);
        var board = request.Shop.Board;
        double[] xs = [0, .. request.SeamsXMm, board.WidthMm], ys = [0, .. request.SeamsYMm, board.LengthMm];
        ImmutableArray<Box2> boxes =
        [
            .. from j in Enumerable.Range(0, ys.Length - 1)
               from i in Enumerable.Range(0, xs.Length - 1)
               select new Box2(xs[i], ys[j], xs[i + 1], ys[j + 1]),
        ];
        PinsOnBoard(request, boxes, checks);
        ImmutableArray<Piece> pieces =
            [.. boxes.Select((box, i) => PieceOf(request, box, boxes.Length == 1 ? "board" : $"piece {Figure.Count(i + 1)}", checks))];
        ApartTurnedOver(pieces, checks);
        return pieces;
    }

    // Pins off the middle of a piece shift it when it is turned over, perhaps onto its neighbour.
    private static void ApartTurnedOver(ImmutableArray<Piece> pieces, CheckList checks)
    {
        for (var i = 0; i < pieces.Length; i++)
        {
            for (var j = 0; j < i; j++)
            {
                Box2 a = pieces[i].Over.Apply(pieces[i].Outline), b = pieces[j].Over.Apply(pieces[j].Outline);
                var overlap = Math.Min(Math.Min(a.MaxX, b.MaxX) - Math.Max(a.MinX, b.MinX), Math.Min(a.MaxY, b.MaxY) - Math.Max(a.MinY, b.MinY));
                if (overlap > PinMm)
                {
                    checks.Add("pieces apart after turning over", Figure.Mm(-overlap) + " mm", "0 mm", Findings.Severity.Warning, "pieces-collide", "$.making.table.pins",
                        $"turned over, {pieces[j].Name} and {pieces[i].Name} would lie on each other by {Figure.Mm(overlap)} mm, since their pins are not in their middle.",
                        "Turn over one piece at a time, or set the pins of each piece evenly about its middle.");
                }
            }
        }
    }

    private static void Seams(BoardRequest request, ImmutableArray<double> seams, bool alongY, CheckList checks)
    {
        var board = request.Shop.Board;
        var (member, letter, whole) = alongY ? ("seamsXMm", "X", board.WidthMm) : ("seamsYMm", "Y", board.LengthMm);
        for (var i = 0; i < seams.Length; i++)
        {
            var (at, path) = (seams[i], JsonWords.Child("$.making." + member, i));
            if (at <= 0 || at >= whole || (i > 0 && at == seams[i - 1]))
            {
                checks.Refuse("seam", $"{letter} {Figure.Mm(at)} mm", "on the board, once", "seam-off-board", path,
                    $"found {letter} {Figure.Mm(at)} mm; the board reaches from 0 to {Figure.Mm(whole)} mm, and a seam divides it once.",
                    "Give the seam's place between the board's edges, or take it out.");
                continue;
            }

            // Through a zone, the joint would let air into it; on a boundary it lies between two seals.
            foreach (var zone in request.Zones)
            {
                var (from, to) = alongY ? (zone.Area.MinX, zone.Area.MaxX) : (zone.Area.MinY, zone.Area.MaxY);
                var inside = Math.Min(at - from, to - at);
                if (inside > PinMm)
                {
                    var nearest = at - from < to - at ? from : to;
                    checks.Refuse("seam to zone boundary", Figure.Mm(inside) + " mm", "0 mm", "seam-in-zone", path,
                        $"the seam at {letter} {Figure.Mm(at)} mm runs through {zone.Name}, {Figure.Mm(inside)} mm from its boundary at {letter} {Figure.Mm(nearest)} mm.",
                        $"Put the seam on a boundary of zones, for instance {letter} {Figure.Mm(nearest)} mm.");
                }
            }
        }
    }

    private static void PinsOnBoard(BoardRequest request, ImmutableArray<Box2> boxes, CheckList checks)
    {
        for (var i = 0; i < request.Pins.Length; i++)
        {
            var pin = request.Pins[i];
            var path = JsonWords.Child("$.making.table.pins", i) + ".atMm";
            var toEdge = boxes.Max(b => Inside(b, pin.At)) - pin.HoleDiameterMm / 2;
            checks.Least(
                $"wall from the hole of {pin.Name} to the nearest edge", toEdge, request.Limits.WallMm, null, "pin-at-edge", path,
                "Move the pin into the board (and, with seams, into one piece), or leave it out.");
        }
    }

    private static Piece PieceOf(BoardRequest request, Box2 box, string name, CheckList checks)
    {
        ImmutableArray<LocatorPin> pins = [.. request.Pins.Where(p => box.Contains(p.At))];
        var alongX = request.Flip == FlipAxis.AlongX;
        if (pins.Length < 2)
        {
            checks.Refuse("pins", Figure.Count(pins.Length), "2", "pins-too-few", "$.making.table.pins",
                $"{name} {Figure.Box(box)} has {Figure.Count(pins.Length)} pins; two are needed to locate it on both sides.",
                "Add a pin, or leave out a seam.");
            var middle = alongX ? box.Centre.Y : box.Centre.X;
            return new(name, box, pins, new(request.Flip, middle));
        }

        var line = alongX ? pins.Average(p => p.At.Y) : pins.Average(p => p.At.X);
        TurnedOver over = new(request.Flip, line);
        var (misses, worst) = pins
            .Select(p => (Misses: pins.Min(q => (over.Apply(p.At) - q.At).Length + Math.Abs(p.HoleDiameterMm - q.HoleDiameterMm)), Pin: p))
            .MaxBy(m => m.Misses);
        var axis = alongX ? $"the line Y {Figure.Mm(line)} mm" : $"the line X {Figure.Mm(line)} mm";
        if (misses > PinMm)
        {
            checks.Refuse($"{name}: pins after turning over", Figure.Mm(misses) + " mm off", $"at most {Figure.Mm(PinMm)} mm", "pins-not-mirrored", "$.making.table.pins",
                $"turned over about {axis} (the middle of its pins), the hole of {worst.Name} comes down {Figure.Mm(misses)} mm from any pin of its size.",
                "Set the pins in pairs that mirror each other about the flip axis, or on it; or name the other flipAxis.");
        }
        else
        {
            checks.Tell($"{name}: pins after turning over about {axis}", Figure.Mm(misses) + " mm off", $"at most {Figure.Mm(PinMm)} mm");
        }

        var apart = pins.Max(p => pins.Max(q => (p.At - q.At).Length));
        checks.Least(
            $"{name}: the pins that are farthest apart", apart, pins.Max(p => p.HoleDiameterMm) + request.Limits.WallMm, null,
            "pins-too-near", "$.making.table.pins", "Set two pins far apart: they hold the piece against turning.");
        return new(name, box, pins, over);
    }

    /// <summary>How far inside a box a point lies; negative outside.</summary>
    public static double Inside(Box2 box, Point2 p) =>
        Math.Min(Math.Min(p.X - box.MinX, box.MaxX - p.X), Math.Min(p.Y - box.MinY, box.MaxY - p.Y));
}

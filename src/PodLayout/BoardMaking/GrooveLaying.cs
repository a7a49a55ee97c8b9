using System.Collections.Immutable;

namespace PodLayout.BoardMaking;

/// <summary>The grooves both ways, over the whole of each piece.</summary>
internal static class GrooveLaying
{
    public static ImmutableArray<Groove> Of(BoardRequest request, ImmutableArray<Piece> pieces, CheckList checks)
    {
        var grooves = ImmutableArray.CreateBuilder<Groove>();
        for (var p = 0; p < pieces.Length; p++)
        {
            grooves.AddRange(Along(request, pieces[p], p, alongX: true, checks));
            grooves.AddRange(Along(request, pieces[p], p, alongX: false, checks));
        }

        OffPins(request, grooves, checks);
        return grooves.ToImmutable();
    }

    private static IEnumerable<Groove> Along(BoardRequest request, Piece piece, int index, bool alongX, CheckList checks)
    {
        var board = request.Shop.Board;
        var (first, from, to) = alongX
            ? (board.FirstGroove.Y, piece.Outline.MinY, piece.Outline.MaxY)
            : (board.FirstGroove.X, piece.Outline.MinX, piece.Outline.MaxX);
        var (usedFrom, usedTo) = alongX ? (board.UsableArea.MinY, board.UsableArea.MaxY) : (board.UsableArea.MinX, board.UsableArea.MaxX);
        var half = board.GrooveWidthMm / 2;
        var worst = double.PositiveInfinity;
        double worstAt = 0, worstEdge = 0;
        for (var k = Math.Max(0, (int)Math.Floor((from - first) / board.PitchMm)); first + k * board.PitchMm < to + half; k++)
        {
            var at = first + k * board.PitchMm;
            var wall = Math.Min(at - from, to - at) - half;
            var used = at >= usedFrom - 1e-6 && at <= usedTo + 1e-6;

            // Past the edge it belongs to the neighbour, or to nothing.
            if (wall <= -2 * half)
            {
                continue;
            }

            if (wall < request.Limits.WallMm - 1e-9 && !used)
            {
                // No pod stands on it: rather no groove than a torn edge.
                continue;
            }

            if (wall < worst)
            {
                (worst, worstAt, worstEdge) = (wall, at, at - from < to - at ? from : to);
            }

            yield return new(index, k, RunOf(request, piece, alongX, at));
        }

        if (double.IsPositiveInfinity(worst))
        {
            checks.Refuse($"{piece.Name}: grooves along {(alongX ? "X" : "Y")}", "0", "1", "grooves-none", "$.board.pitchMm",
                $"{piece.Name} has no groove along {(alongX ? "X" : "Y")}: none of the lattice lies inside its edges.",
                "Give a pitch and a lattice origin that put grooves on it.");
            yield break;
        }

        var letter = alongX ? "Y" : "X";
        checks.Least(
            $"{piece.Name}: wall from a groove along {(alongX ? "X" : "Y")} to the edge", worst, request.Limits.WallMm,
            $"at {letter} {Figure.Mm(worstAt)} (edge at {letter} {Figure.Mm(worstEdge)})", "groove-at-edge", "$.board.latticeOriginMm",
            "Move the lattice, the edge or the seam so that the groove lies inside a piece, or keep it out of the usable area.");
    }

    private static Run RunOf(BoardRequest request, Piece piece, bool alongX, double at)
    {
        var (box, over) = (piece.Outline, request.RunOutMm);
        return alongX
            ? new(new(box.MinX - over, at), new(box.MaxX + over, at))
            : new(new(at, box.MinY - over), new(at, box.MaxY + over));
    }

    private static void OffPins(BoardRequest request, ImmutableArray<Groove>.Builder grooves, CheckList checks)
    {
        if (grooves.Count == 0)
        {
            return;
        }

        foreach (var pin in request.Pins)
        {
            var nearest = grooves.MinBy(g => g.Run.DistanceTo(pin.At))!;
            var wall = nearest.Run.DistanceTo(pin.At) - request.Shop.Board.GrooveWidthMm / 2 - request.ChamferMm - pin.HoleDiameterMm / 2;
            var where = nearest.Run.IsAlongX ? $"Y {Figure.Mm(nearest.Run.From.Y)}" : $"X {Figure.Mm(nearest.Run.From.X)}";
            checks.Least(
                $"wall from the hole of {pin.Name} to the nearest groove", wall, request.Limits.WallMm, $"at {where}", "groove-through-pin",
                "$.board.latticeOriginMm", "Move the lattice or the pin so that the pin lies in a land.");
        }
    }
}

using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Seats;
using PodLayout.Shops;

namespace PodLayout.BoardMaking;

/// <summary>
/// The numbers of columns and rows. A number stands in the land after its groove, so that the cell with column 5 and row 3 is
/// the cell of port 5-3.
/// </summary>
internal static class Numbering
{
    private const double LargestMm = 7;
    private const double LeastMm = 2;

    /// <summary>Two numbers of this share of a land's height stand in it one above the other.</summary>
    private const double HeightShare = 0.3;

    /// <summary>Around a number, mm.</summary>
    private const double ClearMm = 1;

    public static ImmutableArray<Numeral> Of(BoardRequest request, GridBoard board, CheckList checks)
    {
        int columns = Cells(board.WidthMm - board.FirstGroove.X, board.PitchMm), rows = Cells(board.LengthMm - board.FirstGroove.Y, board.PitchMm);
        var land = board.PitchMm - board.GrooveWidthMm - 2 * request.ChamferMm;
        var widest = StrokeDigits.WidthOf(Figure.Count(Math.Max(columns, rows)));
        var height = Math.Min(LargestMm, Math.Min(HeightShare * land, 0.8 * land / widest));
        if (height < LeastMm)
        {
            checks.Tell("row and column numbers", "left out", $"no room for {Figure.Mm(LeastMm)} mm high figures in a land of {Figure.Mm(land)} mm");
            return [];
        }

        List<Box2> taken = [];
        ImmutableArray<Numeral> placed =
        [
            .. Enumerable.Range(0, columns).Select(k => Place(request, board, k, rows, height, alongX: true, taken)).OfType<Numeral>(),
            .. Enumerable.Range(0, rows).Select(k => Place(request, board, k, columns, height, alongX: false, taken)).OfType<Numeral>(),
        ];
        if (placed.Length < columns + rows)
        {
            checks.Tell("row and column numbers", $"{Figure.Count(placed.Length)} of {Figure.Count(columns + rows)}", "the others find no free land");
        }

        return placed;
    }

    /// <summary>A number where it is free: its land nearest to the edge, else farther in, else to one side of a seam.</summary>
    private static Numeral? Place(BoardRequest request, GridBoard board, int k, int across, double height, bool alongX, List<Box2> taken)
    {
        var words = Figure.Count(k + 1);
        var half = new Point2(StrokeDigits.WidthOf(words) * height / 2, height / 2);
        var aside = Math.Max(0, (board.PitchMm - board.GrooveWidthMm) / 2 - request.ChamferMm - (alongX ? half.X : half.Y) - ClearMm);

        // Where a column's and a row's number share a land the row's stands above the column's. In the first land both make room.
        Point2 shared = new(0, (alongX ? -1.1 : 1.1) * height), apart = new(0, (alongX ? -0.75 : 0.75) * height);
        var first = (alongX ? board.FirstGroove.X : board.FirstGroove.Y) + k * board.PitchMm;
        var isSeamed = (alongX ? request.SeamsXMm : request.SeamsYMm).Any(s => s > first && s < first + board.PitchMm);
        var sideways = alongX ? new Point2(aside, 0) : new Point2(0, aside);
        var places =
            from shift in (Point2[])[default, sideways * -1, sideways]
            from band in Enumerable.Range(0, across)
            from raised in k == 0 && band == 0 ? (Point2[])[apart, default, shared] : [default, shared]
            where raised == default || (shift == default && !isSeamed)
            select board.FirstGroove + new Point2((alongX ? k : band) + 0.5, (alongX ? band : k) + 0.5) * board.PitchMm + shift + raised;
        foreach (var middle in places)
        {
            Box2 box = new(middle.X - half.X, middle.Y - half.Y, middle.X + half.X, middle.Y + half.Y);
            if (IsFree(request, board, box, taken))
            {
                taken.Add(box);
                return new(k + 1, middle, StrokeDigits.Of(words, middle, height));
            }
        }

        return null;
    }

    private static bool IsFree(BoardRequest request, GridBoard board, Box2 box, List<Box2> taken)
    {
        var clear = box.Grow(ClearMm);
        return new Box2(0, 0, board.WidthMm, board.LengthMm).Contains(clear)
            && !taken.Any(t => t.Touches(box))
            && board.Ports.All(p => Clearance.ToPoint(clear, p.Centre) >= board.PortDiameterMm / 2)
            && request.Pins.All(p => Clearance.ToPoint(clear, p.At) >= p.HoleDiameterMm / 2)
            && request.SeamsXMm.All(x => x <= clear.MinX || x >= clear.MaxX)
            && request.SeamsYMm.All(y => y <= clear.MinY || y >= clear.MaxY);
    }

    private static int Cells(double lengthMm, double pitchMm) => Math.Max(0, (int)Math.Floor(lengthMm / pitchMm + 1e-9));
}

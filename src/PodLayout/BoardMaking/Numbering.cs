using System.Collections.Immutable;
using PodLayout.Geometry;
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

    public static ImmutableArray<Numeral> Of(BoardRequest request, GridBoard board, CheckList checks)
    {
        int columns = Cells(board.WidthMm - board.FirstGroove.X, board.PitchMm), rows = Cells(board.LengthMm - board.FirstGroove.Y, board.PitchMm);
        var land = board.PitchMm - board.GrooveWidthMm - 2 * request.ChamferMm;
        var widest = StrokeDigits.WidthOf(Figure.Count(Math.Max(columns, rows)));
        var height = Math.Min(LargestMm, Math.Min(0.5 * land, 0.8 * land / widest));
        if (height < LeastMm)
        {
            checks.Tell("row and column numbers", "left out", $"no room for {Figure.Mm(LeastMm)} mm high figures in a land of {Figure.Mm(land)} mm");
            return [];
        }

        return
        [
            .. Line(request, board, columns, rows, height, alongX: true),
            .. Line(request, board, rows, columns, height, alongX: false),
        ];
    }

    private static IEnumerable<Numeral> Line(BoardRequest request, GridBoard board, int count, int across, double height, bool alongX) =>
        Enumerable.Range(0, count).Select(k => Place(request, board, k, across, height, alongX)).OfType<Numeral>();

    private static Numeral? Place(BoardRequest request, GridBoard board, int k, int across, double height, bool alongX)
    {
        var words = Figure.Count(k + 1);
        var half = Math.Max(height, StrokeDigits.WidthOf(words) * height) / 2;
        var aside = Math.Max(0, (board.PitchMm - board.GrooveWidthMm) / 2 - half - 1.5);

        // Nearest to the edge: where a port, a pin or a seam is in the way, to one side of it, or one land farther in.
        for (var band = 0; band < across; band++)
        {
            foreach (var shift in (double[])[0, -aside, aside])
            {
                var cell = new Point2(alongX ? k : band, alongX ? band : k);
                var middle = board.FirstGroove + (cell + new Point2(0.5, 0.5)) * board.PitchMm + (alongX ? new Point2(shift, 0) : new Point2(0, shift));

                // Column numbers and row numbers share the first cell: one above the other.
                if (k == 0 && band == 0)
                {
                    middle += new Point2(0, (alongX ? -0.65 : 0.65) * height);
                }

                if (IsFree(request, board, middle, half))
                {
                    return new(k + 1, middle, StrokeDigits.Of(words, middle, height));
                }
            }
        }

        return null;
    }

    private static bool IsFree(BoardRequest request, GridBoard board, Point2 middle, double half)
    {
        var box = new Box2(middle.X, middle.Y, middle.X, middle.Y).Grow(half + 1);
        return new Box2(0, 0, board.WidthMm, board.LengthMm).Contains(box)
            && board.Ports.All(p => PodLayout.Seats.Clearance.ToPoint(box, p.Centre) >= board.PortDiameterMm / 2)
            && request.Pins.All(p => PodLayout.Seats.Clearance.ToPoint(box, p.At) >= p.HoleDiameterMm / 2)
            && request.SeamsXMm.All(x => x <= box.MinX || x >= box.MaxX)
            && request.SeamsYMm.All(y => y <= box.MinY || y >= box.MaxY);
    }

    private static int Cells(double lengthMm, double pitchMm) => Math.Max(0, (int)Math.Floor(lengthMm / pitchMm + 1e-9));
}

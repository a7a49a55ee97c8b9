using System.Collections.Immutable;
using PodLayout.Shops;

namespace PodLayout.BoardMaking;

/// <summary>Whether each piece comes out of a sheet.</summary>
internal static class SheetChecks
{
    public static void Make(BoardRequest request, ImmutableArray<Piece> pieces, CheckList checks)
    {
        foreach (var piece in pieces)
        {
            var (along, across) = Needed(request, piece);
            var stock = request.Stock;
            var room = Math.Min(stock.SheetAlongGrainMm - along, stock.SheetAcrossGrainMm - across);
            if (stock.Grain == GrainRun.None)
            {
                room = Math.Max(room, Math.Min(stock.SheetAlongGrainMm - across, stock.SheetAcrossGrainMm - along));
            }

            var boundaries = request.Zones.SelectMany(z => new[] { z.Area.MinX, z.Area.MaxX })
                .Where(x => x > piece.Outline.MinX + 1 && x < piece.Outline.MaxX - 1).Distinct().Order().Select(Figure.Mm).ToList();
            checks.Least(
                $"{piece.Name}: sheet beyond the piece with its cut all round ({Figure.Mm(along)} x {Figure.Mm(across)} mm)", room, 0, null,
                "sheet-too-small", "$.making.stock",
                boundaries.Count == 0
                    ? $"Take a sheet of at least {Figure.Mm(along)} x {Figure.Mm(across)} mm along and across its grain."
                    : $"Take a sheet of at least {Figure.Mm(along)} x {Figure.Mm(across)} mm, or put a seam on a zone boundary (seamsXMm: {string.Join(", ", boundaries)}).");
        }
    }

    /// <summary>What a piece takes of a sheet along and across the grain, with the perimeter's tool on all sides, mm.</summary>
    public static (double AlongMm, double AcrossMm) Needed(BoardRequest request, Piece piece)
    {
        var cut = 2 * request.Cutting.Perimeter.ToolDiameterMm;
        var (x, y) = (piece.Outline.Width + cut, piece.Outline.Height + cut);
        return request.Stock.Grain == GrainRun.AlongY ? (y, x) : (x, y);
    }

    /// <summary>How many pieces like this one come out of a sheet, cut side by side.</summary>
    public static int PerSheet(BoardRequest request, Piece piece)
    {
        var (along, across) = Needed(request, piece);
        var stock = request.Stock;
        var one = Fit(stock.SheetAlongGrainMm, along) * Fit(stock.SheetAcrossGrainMm, across);
        return stock.Grain == GrainRun.None ? Math.Max(one, Fit(stock.SheetAlongGrainMm, across) * Fit(stock.SheetAcrossGrainMm, along)) : one;

        static int Fit(double sheet, double piece) => (int)Math.Floor(sheet / piece + 1e-9);
    }
}

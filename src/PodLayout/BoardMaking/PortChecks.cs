using PodLayout.Shops;

namespace PodLayout.BoardMaking;

/// <summary>Every port in its land: the counterbore's wall to the nearest groove.</summary>
internal static class PortChecks
{
    public static void Make(BoardRequest request, GridBoard board, CheckList checks)
    {
        var worst = board.Ports.MinBy(p => WallMm(request, board, p))!;
        var land = board.PitchMm - board.GrooveWidthMm - 2 * request.ChamferMm;
        checks.Least(
            "wall from a port's counterbore to the nearest groove", WallMm(request, board, worst), request.Limits.WallMm, $"at port {worst.Name}",
            "counterbore-wall-thin", "$.board.ports.diameterMm",
            $"In the middle of its land the counterbore may be {Figure.Mm(Math.Max(0, land - 2 * request.Limits.WallMm))} mm wide: make it narrower, or move the ports to the middle.");

        // Grooves run out at the edge: what parts them from the vacuum is the floor over a channel and the wall round a port.
        var floor = request.Stock.ThicknessMm - board.GrooveDepthMm - request.ChannelDepthMm;
        checks.Least(
            "stock between the vacuum and a groove that runs out at the edge", Math.Min(floor, WallMm(request, board, worst)),
            Math.Min(request.Limits.FloorMm, request.Limits.WallMm), null, "groove-opens-vacuum", "$.board.grooveDepthMm",
            "Keep the floor over the channels and the wall round the ports.");
    }

    private static double WallMm(BoardRequest request, GridBoard board, Port port) =>
        Math.Min(ToGroove(port.Centre.X - board.FirstGroove.X, board.PitchMm), ToGroove(port.Centre.Y - board.FirstGroove.Y, board.PitchMm))
        - board.GrooveWidthMm / 2 - request.ChamferMm - request.Bore.CounterboreDiameterMm / 2;

    private static double ToGroove(double from, double pitchMm) => Math.Abs(from - Math.Round(from / pitchMm) * pitchMm);
}

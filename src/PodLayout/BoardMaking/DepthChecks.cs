namespace PodLayout.BoardMaking;

/// <summary>What is left of the stock's thickness, and of the land around a port.</summary>
internal static class DepthChecks
{
    public static void Make(BoardRequest request, CheckList checks)
    {
        var (board, bore, limits) = (request.Shop.Board, request.Bore, request.Limits);
        var thickness = request.Stock.ThicknessMm;
        checks.Least(
            "stock under the drilled ports", thickness - bore.DrillDepthMm, 0.01, null, "drill-through", "$.making.portBore.drillDepthMm",
            $"Drill less than {Figure.Mm(thickness)} mm deep: the port ends in the channel, not in the table.");
        var overlap = bore.DrillDepthMm + request.ChannelDepthMm - thickness;
        checks.Least(
            "overlap of port and channel (drill depth + channel depth - thickness)", overlap, limits.OverlapMm, null, "port-misses-channel",
            "$.making.channels.depthMm",
            $"Cut the channels at least {Figure.Mm(request.ChannelDepthMm + limits.OverlapMm - overlap)} mm deep, or drill the ports at least {Figure.Mm(bore.DrillDepthMm + limits.OverlapMm - overlap)} mm deep.");
        checks.Tell("opening between port and channel", $"{Figure.Tenth(OpeningMm2(bore.DrillDiameterMm / 2, request.ChannelWidthMm / 2))} of the drill's {Figure.Tenth(OpeningMm2(bore.DrillDiameterMm / 2, bore.DrillDiameterMm))} mm2");
        Floor("groove", board.GrooveDepthMm, "channel", request.ChannelDepthMm, "floor-thin", "$.making.channels.depthMm");
        if (bore.CounterboreDepthMm > 0)
        {
            Floor("counterbore", bore.CounterboreDepthMm, "channel", request.ChannelDepthMm, "floor-thin", "$.making.portBore.counterboreDepthMm");
            checks.Least(
                "drilled hole below the counterbore", bore.DrillDepthMm - bore.CounterboreDepthMm, 0.01, null, "counterbore-too-deep",
                "$.making.portBore.counterboreDepthMm", "The counterbore ends above the drilled hole's bottom: make it shallower.");
        }

        if (request.Gasket is { } gasket)
        {
            Floor("groove", board.GrooveDepthMm, "gasket groove", gasket.DepthMm, "floor-thin", "$.making.gasket.depthMm");
            Cord(gasket, checks);
        }

        Chamfer(request, checks);
        Tools(request, checks);

        void Floor(string above, double aboveMm, string below, double belowMm, string code, string path) => checks.Least(
            $"floor between {above} and {below} (thickness - {Figure.Mm(aboveMm)} - {Figure.Mm(belowMm)})", thickness - aboveMm - belowMm,
            limits.FloorMm, null, code, path,
            $"Take stock of at least {Figure.Mm(aboveMm + belowMm + limits.FloorMm)} mm, or cut the {below} at most {Figure.Mm(Math.Max(0, thickness - aboveMm - limits.FloorMm))} mm deep.");
    }

    // What a strip of half a width leaves of a disc over its middle.
    private static double OpeningMm2(double radius, double half) => half >= radius
        ? Math.PI * radius * radius
        : 2 * (half * Math.Sqrt(radius * radius - half * half) + radius * radius * Math.Asin(half / radius));

    private static void Cord(GasketGroove gasket, CheckList checks)
    {
        checks.Least(
            "gasket cord above its groove", gasket.CordDiameterMm - gasket.DepthMm, 0.1, null, "gasket-cord-sunk", "$.making.gasket.depthMm",
            "The cord must stand proud to be pressed: cut the groove shallower or take a thicker cord.");
        var (cord, room) = (Math.PI / 4 * gasket.CordDiameterMm * gasket.CordDiameterMm, gasket.WidthMm * gasket.DepthMm);
        checks.Tell("gasket cord's section in its groove", $"{Figure.Tenth(cord)} of {Figure.Tenth(room)} mm2");
        if (cord > room)
        {
            checks.Refuse("gasket cord's section", $"{Figure.Tenth(cord)} mm2", $"{Figure.Tenth(room)} mm2", "gasket-cord-thick", "$.making.gasket.cordDiameterMm",
                $"the cord's section of {Figure.Tenth(cord)} mm2 does not go into a groove of {Figure.Tenth(room)} mm2, so the board would stand on the cord.",
                $"Cut the groove at least {Figure.Mm(cord / gasket.DepthMm)} mm wide, or take a thinner cord.");
        }
    }

    // A 90 degree cutter down the middle of a groove breaks both edges; its tip hangs in the groove.
    private static void Chamfer(BoardRequest request, CheckList checks)
    {
        if (request.ChamferMm == 0)
        {
            return;
        }

        var tip = ChamferTipMm(request);
        checks.Least(
            "groove's floor below the tip of the chamfer cutter", request.Shop.Board.GrooveDepthMm - tip, 0, null, "chamfer-cuts-floor",
            "$.making.chamferMm", $"The tip goes {Figure.Mm(tip)} mm deep: give a smaller chamfer, or 0 for none.");
        var widest = request.Shop.Board.GrooveWidthMm + 2 * request.ChamferMm;
        checks.Least(
            "chamfer cutter beyond the chamfered groove's width", request.Cutting.Chamfer.ToolDiameterMm - widest, 0, null, "chamfer-cutter-narrow",
            "$.making.cutting.chamfer.toolDiameterMm", $"Take a cutter of at least {Figure.Mm(widest)} mm, or a smaller chamfer.");
    }

    /// <summary>How deep the tip of the 90 degree cutter goes, mm.</summary>
    public static double ChamferTipMm(BoardRequest request) => request.Shop.Board.GrooveWidthMm / 2 + request.ChamferMm;

    private static void Tools(BoardRequest request, CheckList checks)
    {
        var hole = request.Pins.Min(p => p.HoleDiameterMm);
        checks.Least(
            "smallest pin hole beyond its tool's diameter", hole - request.Cutting.PinHoles.ToolDiameterMm, 0, null, "tool-wider-than-hole",
            "$.making.cutting.pinHoles.toolDiameterMm", $"Take a tool of at most {Figure.Mm(hole)} mm.");
        if (request.Bore.CounterboreDepthMm > 0)
        {
            checks.Least(
                "counterbore beyond its tool's diameter", request.Bore.CounterboreDiameterMm - request.Cutting.Counterbores.ToolDiameterMm, 0, null,
                "tool-wider-than-hole", "$.making.cutting.counterbores.toolDiameterMm", $"Take a tool of at most {Figure.Mm(request.Bore.CounterboreDiameterMm)} mm.");
        }
    }
}

using System.Text.Json.Nodes;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.JsonFiles;
using PodLayout.Shops;
using PodLayout.Shops.Written;

namespace PodLayout.BoardMaking;

/// <summary>From a shop file with its member <c>making</c> to the board that is to be made.</summary>
public static class BoardRequestReading
{
    /// <summary>Reads and checks a shop file for making its board.</summary>
    /// <param name="file">Its name, for messages.</param>
    /// <param name="content">Its bytes.</param>
    public static Outcome<BoardRequest> Read(string file, byte[] content) =>
        RequestFile.Read<WrittenShop>(file, content, []).Then(written =>
        {
            FileRefusals refusals = new(file) { Inches = InchPaths.Of(file, content) };
            return written.Making is null
                ? Outcome<BoardRequest>.Refuse(refusals.At(
                    "making-missing",
                    "$.making",
                    "missing; expected how the board is made: table, stock, tools.",
                    "Add it to the shop file; samples/boards holds three examples, and podlayout schema shop lists its members."))
                : ShopMaking.From(written, refusals).Then(shop => From(written, written.Making, shop, refusals, content));
        });

    private static Outcome<BoardRequest> From(
        WrittenShop written, WrittenMaking making, Shop shop, FileRefusals refusals, byte[] content)
    {
        if (EmptyArea(making.Table, refusals) is { } empty)
        {
            return Outcome<BoardRequest>.Refuse(empty);
        }

        var bore = making.PortBore;
        var faceDiameter = shop.Board.PortDiameterMm;
        if (bore.DrillDiameterMm > faceDiameter)
        {
            return Outcome<BoardRequest>.Refuse(refusals.At(
                "drill-wider-than-port",
                "$.making.portBore.drillDiameterMm",
                $"found {JsonWords.Number(bore.DrillDiameterMm)} mm; the port's hole at the face is {JsonWords.Number(faceDiameter)} mm.",
                "Give a drill no wider than $.board.ports.diameterMm, or widen the counterbore there."));
        }

        var lattice = written.Board.Ports.Lattice;
        return Outcome<BoardRequest>.Of(new BoardRequest(
            refusals.File,
            JsonNode.Parse(content)!.AsObject(),
            shop,
            lattice?.SpacingMm.Both,
            lattice?.FirstMm ?? default,
            BoxOf(making.Table.Travel),
            [.. making.Table.Zones.Select(z => new Zone(z.Name, BoxOf(z.Area), BoxOf(z.VacuumExtent)))],
            [.. making.Table.Pins.Select(p => new LocatorPin(p.Name, p.AtMm, p.DiameterMm, p.FitMm))],
            StockOf(making.Stock),
            new(bore.DrillDiameterMm, bore.DrillDepthMm, faceDiameter, bore.CounterboreDepthMm, bore.Plug ?? "plug"),
            bore.Offset,
            making.Channels.WidthMm,
            making.Channels.DepthMm,
            making.Channels.Layout,
            making.Gasket is { } g ? new(g.WidthMm, g.DepthMm, g.InsetMm, g.CordDiameterMm, g.WastePercent) : null,
            [.. making.SeamsXMm.Order()],
            [.. making.SeamsYMm.Order()],
            making.FlipAxis,
            making.ChamferMm,
            making.RunOutMm ?? shop.Board.GrooveWidthMm,
            LimitsOf(making.Limits),
            making.Flow.PerOpenPortLPerMin,
            making.Flow.OpenAtOnce ?? (int)Math.Min(int.MaxValue, Math.Max(1, shop.Pods.Sum(p => (long)p.Stock * p.PortsNeeded))),
            CuttingOf(making, shop.Board, bore),
            refusals.Inches));
    }

    private static Finding? EmptyArea(WrittenTable table, FileRefusals refusals)
    {
        IEnumerable<(WrittenArea Area, string Path)> areas =
        [
            (table.Travel, "$.making.table.travel"),
            .. table.Zones.SelectMany((z, i) => new[]
            {
                (z.Area, JsonWords.Child("$.making.table.zones", i) + ".area"),
                (z.VacuumExtent, JsonWords.Child("$.making.table.zones", i) + ".vacuumExtent"),
            }),
        ];
        return (from entry in areas
                let box = BoxOf(entry.Area)
                where !(box.Width > 0 && box.Height > 0)
                select refusals.At(
                    "area-empty",
                    entry.Path,
                    "the area has no extent.",
                    "Give the lower left corner as minXMm, minYMm and the upper right as maxXMm, maxYMm.")).FirstOrDefault();
    }

    private static Box2 BoxOf(WrittenArea a) => new(a.MinXMm, a.MinYMm, a.MaxXMm, a.MaxYMm);

    private static Stock StockOf(WrittenStock s) =>
        new(s.Material, s.ThicknessMm, s.SheetAlongGrainMm, s.SheetAcrossGrainMm, s.Grain);

    private static MakingLimits LimitsOf(WrittenMakingLimits l) =>
        new(l.OverlapMm, l.FloorMm, l.WallMm, l.WebMm, l.EdgeMm, l.PressureLossPa);

    private static Cutting CuttingOf(WrittenMaking making, GridBoard board, WrittenPortBore bore)
    {
        var c = making.Cutting;
        return new(
            Routed(c.Perimeter), Routed(c.PinHoles), Routed(c.Counterbores), Pass(c.Grooves, board.GrooveWidthMm), Routed(c.Chamfer),
            Pass(c.Ports, bore.DrillDiameterMm), Routed(c.Numbers), Pass(c.Channels, making.Channels.WidthMm),
            Pass(c.Gasket, making.Gasket?.WidthMm ?? 0), c.ThroughMm);

        static Cut Routed(WrittenRouted cut) => new(cut.ToolDiameterMm, cut.FeedMmPerMin, cut.StepDownMm);

        static Cut Pass(WrittenPass cut, double widthMm) => new(widthMm, cut.FeedMmPerMin, cut.StepDownMm);
    }
}

using System.Globalization;
using PodLayout.Handover.Format;

namespace PodLayout.Handover;

/// <summary>Figures of a layout file that can be worked with: those that the job and shop files are held to.</summary>
internal static class LayoutFileBounds
{
    // More grooves one way are a slip of the pitch, as in the shop file.
    private const double MostGrooves = 2000;

    /// <summary>The first figure out of bounds: its path and what is wrong with it; null when there is none.</summary>
    public static (string Path, string Message)? First(LayoutFile file)
    {
        foreach (var (path, value, from, to) in Figures(file))
        {
            if (!(value >= from && value <= to))
            {
                return (path, string.Create(CultureInfo.InvariantCulture, $"A number from {from:0.####} to {to:0.####} was expected, {value:0.######} was found."));
            }
        }

        return null;
    }

    private static IEnumerable<(string Path, double Value, double From, double To)> Figures(LayoutFile file) =>
        [.. Rules(file.Rules), .. Placed(file), .. Shop(file.Shop), .. Part(file.Part)];

    private static IEnumerable<(string Path, double Value, double From, double To)> Rules(RulesEntry rules)
    {
        const double Least = 0.001, Limit = 10_000;
        yield return ("$.rules.sealMarginMm", rules.SealMarginMm, 0, 1000);
        yield return ("$.rules.cutClearanceMm", rules.CutClearanceMm, 0, 1000);
        yield return ("$.rules.overhangAlongGrainMm", rules.OverhangAlongGrainMm, Least, Limit);
        yield return ("$.rules.overhangAcrossGrainMm", rules.OverhangAcrossGrainMm, Least, Limit);
        yield return ("$.rules.interiorSpanMm", rules.InteriorSpanMm ?? Limit, Least, Limit);
        yield return ("$.rules.edgeStepMm", rules.EdgeStepMm, 0.5, 1000);
        yield return ("$.rules.interiorStepMm", rules.InteriorStepMm, 1, 1000);
        yield return ("$.rules.thinFloorSpanMm", rules.ThinFloorSpanMm, 1, Limit);
    }

    private static IEnumerable<(string Path, double Value, double From, double To)> Placed(LayoutFile file)
    {
        const double Far = Tolerances.LargestCoordinateMm;
        if (file.Placement is { } placement)
        {
            yield return ("$.placement.zeroOnBoardMm[0]", placement.ZeroOnBoardMm.X, -Far, Far);
            yield return ("$.placement.zeroOnBoardMm[1]", placement.ZeroOnBoardMm.Y, -Far, Far);
            yield return ("$.placement.angleDeg", placement.AngleDeg, -360, 360);
        }

        if (file.Program is { } program)
        {
            yield return ("$.program.zeroInDrawingMm[0]", program.ZeroInDrawingMm.X, -Far, Far);
            yield return ("$.program.zeroInDrawingMm[1]", program.ZeroInDrawingMm.Y, -Far, Far);
            foreach (var (tool, i) in (program.Tools ?? []).Select((t, i) => (t, i)))
            {
                yield return (string.Create(CultureInfo.InvariantCulture, $"$.program.tools[{i}].diameterMm"), tool.DiameterMm, 0, Far);
                yield return (string.Create(CultureInfo.InvariantCulture, $"$.program.tools[{i}].deepestZMm"), tool.DeepestZMm, -Far, Far);
            }
        }

        for (var i = 0; i < file.Asked.Keep.Length; i++)
        {
            var at = string.Create(CultureInfo.InvariantCulture, $"$.asked.keep[{i}]");
            yield return (at + ".columnFromDatum", file.Asked.Keep[i].ColumnFromDatum, 1, 1e6);
            yield return (at + ".rowFromDatum", file.Asked.Keep[i].RowFromDatum, 1, 1e6);
        }

        for (var i = 0; i < file.Pods.Length; i++)
        {
            var at = string.Create(CultureInfo.InvariantCulture, $"$.pods[{i}]");
            yield return (at + ".centreMm[0]", file.Pods[i].CentreMm.X, -Far, Far);
            yield return (at + ".centreMm[1]", file.Pods[i].CentreMm.Y, -Far, Far);
            // Wrong grooves are a rule broken; numbers that no sum can hold are not.
            yield return (at + ".columnFromDatum", file.Pods[i].ColumnFromDatum, -1e6, 1e6);
            yield return (at + ".rowFromDatum", file.Pods[i].RowFromDatum, -1e6, 1e6);
        }
    }

    private static IEnumerable<(string Path, double Value, double From, double To)> Shop(ShopEntry shop)
    {
        const double Far = Tolerances.LargestCoordinateMm, Least = 0.001, Body = 100_000;
        yield return ("$.shop.podGapMm", shop.PodGapMm, 0, 1000);
        yield return ("$.shop.board.widthMm", shop.Board.WidthMm, Least, Body);
        yield return ("$.shop.board.lengthMm", shop.Board.LengthMm, Least, Body);
        yield return ("$.shop.board.pitchMm", shop.Board.PitchMm, Math.Max(shop.Board.WidthMm, shop.Board.LengthMm) / MostGrooves, Far);
        yield return ("$.shop.board.firstGrooveMm[0]", shop.Board.FirstGrooveMm.X, 0, shop.Board.PitchMm);
        yield return ("$.shop.board.firstGrooveMm[1]", shop.Board.FirstGrooveMm.Y, 0, shop.Board.PitchMm);
        yield return ("$.shop.board.portDiameterMm", shop.Board.PortDiameterMm, Least, Far);
        yield return ("$.shop.board.portMarginMm", shop.Board.PortMarginMm, 0, 1000);
        for (var i = 0; i < shop.Zones.Length; i++)
        {
            var (area, at) = (shop.Zones[i].Area, string.Create(CultureInfo.InvariantCulture, $"$.shop.zones[{i}].area"));
            yield return (at + ".minXMm", area.MinXMm, -Far, Far);
            yield return (at + ".minYMm", area.MinYMm, -Far, Far);
            yield return (at + ".maxXMm", area.MaxXMm, -Far, Far);
            yield return (at + ".maxYMm", area.MaxYMm, -Far, Far);
        }

        for (var i = 0; i < shop.PodTypes.Length; i++)
        {
            var (type, at) = (shop.PodTypes[i], string.Create(CultureInfo.InvariantCulture, $"$.shop.podTypes[{i}]"));
            yield return (at + ".widthMm", type.WidthMm ?? Least, Least, Body);
            yield return (at + ".lengthMm", type.LengthMm ?? Least, Least, Body);
            yield return (at + ".diameterMm", type.DiameterMm ?? Least, Least, Body);
            yield return (at + ".sealInsetAboveMm", type.SealInsetAboveMm, 0, Smaller(type) / 2);
            yield return (at + ".sealInsetBelowMm", type.SealInsetBelowMm, 0, Smaller(type) / 2);
            yield return (at + ".heightMm", type.HeightMm, Least, 10_000);
            yield return (at + ".stock", type.Stock, 0, 100_000);
            yield return (at + ".portsNeeded", type.PortsNeeded, 1, 100);
        }
    }

    private static double Smaller(PodTypeEntry type) => type.DiameterMm ?? Math.Min(type.WidthMm ?? 0, type.LengthMm ?? 0);

    private static IEnumerable<(string Path, double Value, double From, double To)> Part(PartEntry part)
    {
        const double Far = Tolerances.LargestCoordinateMm;
        yield return ("$.part.grainDeg", part.GrainDeg, -360, 360);
        var shape = part.InDrawing;
        var rings = shape.HolesMm.Select((r, i) => (string.Create(CultureInfo.InvariantCulture, $"holesMm[{i}]"), r))
            .Concat(shape.DefectsMm.Select((r, i) => (string.Create(CultureInfo.InvariantCulture, $"defectsMm[{i}]"), r)))
            .Concat(shape.Hazards.SelectMany((h, i) => h.RingsMm.Select((r, k) => (string.Create(CultureInfo.InvariantCulture, $"hazards[{i}].ringsMm[{k}]"), r))))
            .Concat(shape.Avoided.Select((a, i) => (string.Create(CultureInfo.InvariantCulture, $"avoided[{i}].ringMm"), a.RingMm)))
            .Concat(shape.Floors.SelectMany((f, i) => f.RingsMm.Select((r, k) => (string.Create(CultureInfo.InvariantCulture, $"floors[{i}].ringsMm[{k}]"), r))))
            .Concat((shape.WeakFloors ?? []).SelectMany((f, i) => f.RingsMm.Select((r, k) => (string.Create(CultureInfo.InvariantCulture, $"weakFloors[{i}].ringsMm[{k}]"), r))))
            .Concat(shape.Held.SelectMany((h, i) => h.HolesMm.Prepend(h.OutlineMm).Select((r, k) => (string.Create(
                CultureInfo.InvariantCulture, $"held[{i}].{(k == 0 ? "outlineMm" : $"holesMm[{k - 1}]")}"), r))))
            .Concat((shape.BlankMm ?? []).Select((r, i) => (string.Create(CultureInfo.InvariantCulture, $"blankMm[{i}]"), r)))
            .Concat((shape.LeftOutLinesMm ?? []).Select((l, i) => (string.Create(CultureInfo.InvariantCulture, $"leftOutLinesMm[{i}]"), l)))
            .Prepend(("outlineMm", shape.OutlineMm));
        foreach (var (name, ring) in rings)
        {
            for (var i = 0; i < ring.Length; i++)
            {
                var at = string.Create(CultureInfo.InvariantCulture, $"$.part.inDrawing.{name}[{i}]");
                yield return (at, ring[i].X, -Far, Far);
                yield return (at, ring[i].Y, -Far, Far);
            }
        }
    }
}

using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Handover.Picture;
using PodLayout.Shops;

namespace PodLayout.BoardMaking;

/// <summary>The operations in the order in which they are done.</summary>
internal static class Operations
{
    /// <summary>Style of all lines; drawings for the machine know layers, not looks.</summary>
    private const string Style = "leader";

    public static ImmutableArray<Operation> Of(BoardPlan plan)
    {
        var (alongX, alongY) = (Grooves(plan, alongX: true), Grooves(plan, alongX: false));
        IEnumerable<Operation?> all =
        [
            PinHoles(plan),
            Perimeter(plan),
            // Across the grain first: the passes along it then clean up what tore out at the crossings.
            plan.Request.Stock.Grain == GrainRun.AlongX ? alongY : alongX,
            plan.Request.Stock.Grain == GrainRun.AlongX ? alongX : alongY,
            Chamfer(plan),
            Counterbores(plan),
            Ports(plan),
            Numbers(plan),
            Channels(plan),
            Gasket(plan),
        ];
        return [.. all.OfType<Operation>()];
    }

    private static Operation PinHoles(BoardPlan plan)
    {
        var (cut, depth) = (plan.Request.Cutting.PinHoles, Through(plan));
        var pins = plan.Pieces.SelectMany(p => p.Pins).ToList();
        var length = pins.Sum(p => Math.PI * (p.HoleDiameterMm - cut.ToolDiameterMm) * cut.Passes(depth) + depth);
        return new(
            "pin holes", BoardSide.Front, $"PIN-HOLE-{Mm(cut.ToolDiameterMm)}-DEEP-{Figure.Mm(depth)}", $"{Figure.Mm(cut.ToolDiameterMm)} mm straight cutter, round the hole",
            depth, [.. pins.Select(p => new Primitive.Disc(Style, p.At, p.HoleDiameterMm / 2))], pins.Count, length, cut.FeedMmPerMin);
    }

    private static Operation Perimeter(BoardPlan plan)
    {
        var (cut, depth) = (plan.Request.Cutting.Perimeter, Through(plan));
        var length = plan.Pieces.Sum(p => 2 * (p.Outline.Width + p.Outline.Height) + Math.PI * cut.ToolDiameterMm) * cut.Passes(depth);
        return new(
            "perimeter", BoardSide.Front, $"PERIMETER-{Mm(cut.ToolDiameterMm)}-OUTSIDE-DEEP-{Figure.Mm(depth)}",
            $"{Figure.Mm(cut.ToolDiameterMm)} mm straight cutter, outside the line",
            depth, [.. plan.Pieces.Select(p => Box(p.Outline))], plan.Pieces.Length, length, cut.FeedMmPerMin);
    }

    private static Operation? Grooves(BoardPlan plan, bool alongX)
    {
        var (cut, depth) = (plan.Request.Cutting.Grooves, plan.Board.GrooveDepthMm);
        var runs = plan.Grooves.Where(g => g.Run.IsAlongX == alongX).Select(g => g.Run).ToList();
        var way = plan.Request.Stock.Grain switch
        {
            GrainRun.None => alongX ? "along-X" : "along-Y",
            GrainRun.AlongX => alongX ? "along-grain" : "across-grain",
            _ => alongX ? "across-grain" : "along-grain",
        };
        return Lines(
            $"grooves {way.Replace('-', ' ')}", BoardSide.Front, $"GROOVE-{way.ToUpperInvariant()}-{Mm(cut.ToolDiameterMm)}-DEEP-{Figure.Mm(depth)}",
            $"{Figure.Mm(cut.ToolDiameterMm)} mm cutter, one pass on the line", depth, runs, cut);
    }

    private static Operation? Chamfer(BoardPlan plan)
    {
        if (plan.Request.ChamferMm == 0)
        {
            return null;
        }

        var (cut, depth) = (plan.Request.Cutting.Chamfer, DepthChecks.ChamferTipMm(plan.Request));
        return Lines(
            "chamfer on the grooves", BoardSide.Front, $"CHAMFER-90DEG-{Mm(cut.ToolDiameterMm)}-DEEP-{Figure.Mm(depth)}",
            $"90 degree cutter of {Figure.Mm(cut.ToolDiameterMm)} mm, on the grooves' lines; depth is its tip's", depth, [.. plan.Grooves.Select(g => g.Run)], cut);
    }

    private static Operation? Counterbores(BoardPlan plan)
    {
        var (cut, bore) = (plan.Request.Cutting.Counterbores, plan.Request.Bore);
        if (bore.CounterboreDepthMm == 0)
        {
            return null;
        }

        // Rings half a tool apart, from the outer one inwards; none when the tool is as wide as the hole.
        double rings = 0;
        for (var r = (bore.CounterboreDiameterMm - cut.ToolDiameterMm) / 2; r > 1e-9; r -= cut.ToolDiameterMm / 2)
        {
            rings += 2 * Math.PI * r;
        }

        var each = rings * cut.Passes(bore.CounterboreDepthMm) + bore.CounterboreDepthMm;
        return new(
            "counterbores for the plugs", BoardSide.Front, $"COUNTERBORE-{Mm(cut.ToolDiameterMm)}-DEEP-{Figure.Mm(bore.CounterboreDepthMm)}",
            $"{Figure.Mm(cut.ToolDiameterMm)} mm straight cutter, hole of {Figure.Mm(bore.CounterboreDiameterMm)} mm", bore.CounterboreDepthMm,
            [.. plan.Board.Ports.Select(p => new Primitive.Disc(Style, p.Centre, bore.CounterboreDiameterMm / 2))],
            plan.Board.Ports.Length, each * plan.Board.Ports.Length, cut.FeedMmPerMin);
    }

    private static Operation Ports(BoardPlan plan)
    {
        var (cut, bore) = (plan.Request.Cutting.Ports, plan.Request.Bore);
        return new(
            "ports", BoardSide.Front, $"PORT-DRILL-{Mm(bore.DrillDiameterMm)}-DEEP-{Figure.Mm(bore.DrillDepthMm)}",
            $"{Figure.Mm(bore.DrillDiameterMm)} mm drill; depth at its full diameter", bore.DrillDepthMm,
            [.. plan.Board.Ports.Select(p => new Primitive.Disc(Style, p.Centre, bore.DrillDiameterMm / 2))],
            plan.Board.Ports.Length, plan.Board.Ports.Length * bore.DrillDepthMm, cut.FeedMmPerMin);
    }

    private static Operation? Numbers(BoardPlan plan)
    {
        var cut = plan.Request.Cutting.Numbers;
        ImmutableArray<Primitive> strokes = [.. plan.Numerals.SelectMany(n => n.Strokes).Select(s => new Primitive.Line(Style, s))];
        var length = plan.Numerals.SelectMany(n => n.Strokes).Sum(s => s.Zip(s.Skip(1), (a, b) => (b - a).Length).Sum());
        return plan.Numerals.IsEmpty ? null : new(
            "row and column numbers", BoardSide.Front, $"NUMBER-{Mm(cut.ToolDiameterMm)}-DEEP-{Figure.Mm(cut.StepDownMm)}",
            $"{Figure.Mm(cut.ToolDiameterMm)} mm engraving cutter", cut.StepDownMm, strokes, plan.Numerals.Length, length, cut.FeedMmPerMin);
    }

    private static Operation? Channels(BoardPlan plan)
    {
        var (cut, depth) = (plan.Request.Cutting.Channels, plan.Request.ChannelDepthMm);
        return Lines(
            "vacuum channels", BoardSide.Back, $"CHANNEL-{Mm(cut.ToolDiameterMm)}-DEEP-{Figure.Mm(depth)}", $"{Figure.Mm(cut.ToolDiameterMm)} mm cutter on the line",
            depth, [.. plan.Channels.SelectMany(c => c.Runs.Select(r => Over(plan.Pieces[c.Part.Piece], r)))], cut);
    }

    private static Operation? Gasket(BoardPlan plan)
    {
        if (plan.Request.Gasket is not { } gasket)
        {
            return null;
        }

        var cut = plan.Request.Cutting.Gasket;
        var loops = plan.Parts.Select(p => plan.Pieces[p.Piece].Over.Apply(p.GasketLine!.Value)).ToList();
        return new(
            "gasket grooves", BoardSide.Back, $"GASKET-{Mm(gasket.WidthMm)}-DEEP-{Figure.Mm(gasket.DepthMm)}", $"{Figure.Mm(gasket.WidthMm)} mm cutter on the line",
            gasket.DepthMm, [.. loops.Select(Box)], loops.Count, loops.Sum(l => 2 * (l.Width + l.Height)) * cut.Passes(gasket.DepthMm), cut.FeedMmPerMin);
    }

    private static Operation? Lines(string title, BoardSide side, string layer, string tool, double depth, List<Run> runs, Cut cut) =>
        runs.Count == 0 ? null : new(
            title, side, layer, tool, depth, [.. runs.Select(r => new Primitive.Line(Style, [r.From, r.To]))], runs.Count,
            runs.Sum(r => r.LengthMm) * cut.Passes(depth), cut.FeedMmPerMin);

    private static Run Over(Piece piece, Run run) => new(piece.Over.Apply(run.From), piece.Over.Apply(run.To));

    private static Primitive.Area Box(Box2 box) => new(Style, [SheetDraft.RingOf(box)]);

    private static double Through(BoardPlan plan) => plan.Request.Stock.ThicknessMm + plan.Request.Cutting.ThroughMm;

    private static string Mm(double value) => Figure.Mm(value) + "MM";
}

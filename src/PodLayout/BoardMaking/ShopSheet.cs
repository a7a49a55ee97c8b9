using System.Globalization;
using System.Text;
using PodLayout.Shops;

namespace PodLayout.BoardMaking;

/// <summary>The sheet for the shop: what to buy, what to do in which order, what was checked.</summary>
public static class ShopSheet
{
    /// <summary>The sheet as Markdown that reads as plain text too, LF at line ends.</summary>
    public static string Write(BoardPlan plan)
    {
        StringBuilder text = new();
        Heading(1, plan.Board.Name);
        Line($"{Figure.Mm(plan.Board.WidthMm)} x {Figure.Mm(plan.Board.LengthMm)} mm, pitch {Figure.Mm(plan.Board.PitchMm)} mm. All lengths in mm unless said otherwise; coordinates from the board's lower left corner, X to the right, Y up.");
        Heading(2, "To buy");
        foreach (var line in ToBuy(plan))
        {
            Line("- " + line);
        }

        Heading(2, "Order of work");
        var number = 0;
        foreach (var line in Order(plan))
        {
            Line($"{(++number).ToString(CultureInfo.InvariantCulture)}. {line}");
        }

        Heading(2, "Tools, depths, cuts");
        Table(text, ["side", "operation", "tool", "depth mm", "count", "cut m", "feed mm/min", "min", "layer"], Operations.Of(plan).Select(o => (string[])
        [
            o.Side == BoardSide.Front ? "front" : "back", o.Title, o.Tool, Figure.Mm(o.DepthMm), Figure.Count(o.Count),
            (o.CutMm / 1000).ToString("0.00", CultureInfo.InvariantCulture), Figure.Tenth(o.FeedMmPerMin), o.Minutes.ToString("0.0", CultureInfo.InvariantCulture), o.Layer,
        ]));
        var operations = Operations.Of(plan);
        Line($"In all {(operations.Sum(o => o.CutMm) / 1000).ToString("0.00", CultureInfo.InvariantCulture)} m of cut over all passes, {operations.Sum(o => o.Minutes).ToString("0.0", CultureInfo.InvariantCulture)} minutes at the feeds given; ways between cuts, lifting and changes of tools are not counted.");
        Heading(2, "Places");
        foreach (var line in Places(plan))
        {
            Line("- " + line);
        }

        Heading(2, "Checked");
        Table(text, ["what", "figure", "limit", ""], plan.Checks.Select(c => (string[])[c.What, c.Value, c.Limit, c.Finding is null ? "" : "see: " + c.Finding.Code]));
        foreach (var finding in plan.Checks.Select(c => c.Finding).OfType<Findings.Finding>())
        {
            Line($"- {finding.Message} {finding.Remedy} [{finding.Code}]");
        }

        Heading(2, "Cautions");
        foreach (var caution in BoardCautions.All)
        {
            Line("- " + caution);
        }

        return text.ToString();

        void Heading(int level, string words)
        {
            text.Append(text.Length > 0 ? "\n" : "").Append('#', level).Append(' ').Append(Plain(words)).Append("\n\n");
        }

        void Line(string words) => text.Append(Plain(words)).Append('\n');
    }

    private static IEnumerable<string> ToBuy(BoardPlan plan)
    {
        var (request, stock) = (plan.Request, plan.Request.Stock);
        var alike = plan.Pieces.All(p => SheetChecks.Needed(request, p) == SheetChecks.Needed(request, plan.Pieces[0]));
        var perSheet = alike ? Math.Max(1, SheetChecks.PerSheet(request, plan.Pieces[0])) : 1;
        var sheets = (plan.Pieces.Length + perSheet - 1) / perSheet;
        yield return $"{Figure.Count(sheets)} sheet{(sheets == 1 ? "" : "s")} of {stock.Material}, {Figure.Mm(stock.ThicknessMm)} thick, {Figure.Mm(stock.SheetAlongGrainMm)} along the grain x {Figure.Mm(stock.SheetAcrossGrainMm)} across"
            + (stock.Grain == GrainRun.None ? " (no grain)" : $"; the grain runs along {(stock.Grain == GrainRun.AlongX ? "X" : "Y")}");
        foreach (var piece in plan.Pieces)
        {
            var (along, across) = SheetChecks.Needed(request, piece);
            yield return $"for {piece.Name}: a blank of at least {Figure.Mm(along)} along x {Figure.Mm(across)} across the grain, and scrap of the same stock for the trial of the pin holes";
        }

        var ports = plan.Board.Ports.Length;
        var spare = (int)Math.Ceiling(ports * 0.05);
        yield return $"{Figure.Count(ports)} plugs ({request.Bore.Plug}) for holes of {Figure.Mm(request.Bore.CounterboreDiameterMm)}, {Figure.Mm(request.Bore.CounterboreDepthMm)} deep; {Figure.Count(spare)} more as spares";
        if (request.Gasket is { } gasket)
        {
            var metres = CordM(plan);

            // Up to the next tenth: cord that is too short is bought twice.
            var bought = Math.Ceiling(metres * (1 + gasket.WastePercent / 100) * 10 - 1e-9) / 10;
            yield return $"gasket cord of {Figure.Mm(gasket.CordDiameterMm)}: {metres.ToString("0.00", CultureInfo.InvariantCulture)} m in the grooves, {bought.ToString("0.0", CultureInfo.InvariantCulture)} m with {Figure.Tenth(gasket.WastePercent)} % waste";
        }

        yield return "sealer for the channels, the ports and the edges: bare stock leaks";
    }

    /// <summary>Length of all gasket grooves, m.</summary>
    private static double CordM(BoardPlan plan) =>
        plan.Parts.Sum(p => p.GasketLine is { } line ? 2 * (line.Width + line.Height) : 0) / 1000;

    private static IEnumerable<string> Order(BoardPlan plan)
    {
        var front = Operations.Of(plan).Where(o => o.Side == BoardSide.Front).ToList();
        var back = Operations.Of(plan).Where(o => o.Side == BoardSide.Back).ToList();
        yield return "In scrap of the same thickness: cut the pin holes once, set the scrap on the pins, front up and then turned over; it must drop on without play both ways. Mend fitMm if not.";
        yield return $"Front up: {front[0].Title}, then {front[1].Title} (layers {front[0].Layer}, {front[1].Layer}). Set the {(plan.Pieces.Length == 1 ? "board" : "pieces")} on the pins.";
        foreach (var operation in front.Skip(2))
        {
            var why = operation.Layer.Contains("ACROSS-GRAIN", StringComparison.Ordinal)
                ? "; across the grain first, which chips less: the passes along it then clean the crossings" : "";
            yield return $"Front: {operation.Title}, {Figure.Mm(operation.DepthMm)} deep (layer {operation.Layer}){why}.";
        }

        var alongX = plan.Request.Flip == FlipAxis.AlongX;
        yield return $"Turn {(plan.Pieces.Length == 1 ? "the board" : "each piece")} over about its pins, {(alongX ? "front edge to the rear" : "left edge to the right")}, and set it on the same pins; zero stays as it is. Look that the front's datum corner is where board-back.svg shows it.";
        foreach (var operation in back)
        {
            yield return $"Back: {operation.Title}, {Figure.Mm(operation.DepthMm)} deep (layer {operation.Layer}).";
        }

        yield return "Blow the ports through from the front, seal channels, ports and edges, lay the cord, set the plugs, and try the vacuum with all plugs in before the first part.";
    }

    private static IEnumerable<string> Places(BoardPlan plan)
    {
        foreach (var piece in plan.Pieces)
        {
            var axis = plan.Request.Flip == FlipAxis.AlongX ? "Y" : "X";
            yield return $"{piece.Name}: {Figure.Box(piece.Outline)}, turned over about {axis} {Figure.Mm(piece.Over.LineMm)}";
            foreach (var pin in piece.Pins)
            {
                yield return $"{pin.Name}: X {Figure.Mm(pin.At.X)}, Y {Figure.Mm(pin.At.Y)}, pin {Figure.Mm(pin.DiameterMm)}, hole {Figure.Mm(pin.HoleDiameterMm)}, on both sides";
            }
        }

        yield return $"grooves, {BoardPicture.FirstCut(plan)}";
        yield return $"ports: {string.Join(", ", plan.Board.Ports.Take(3).Select(p => $"{p.Name} at X {Figure.Mm(p.Centre.X)}, Y {Figure.Mm(p.Centre.Y)}"))}{(plan.Board.Ports.Length > 3 ? $", ... ({Figure.Count(plan.Board.Ports.Length)} in all)" : "")}";
    }

    private static void Table(StringBuilder text, string[] head, IEnumerable<string[]> rows)
    {
        Row(head);
        Row([.. head.Select(_ => "---")]);
        foreach (var row in rows)
        {
            Row(row);
        }

        text.Append('\n');

        void Row(string[] cells) => text.Append("| ").AppendJoin(" | ", cells.Select(c => Plain(c).Replace("|", "\\|", StringComparison.Ordinal))).Append(" |\n");
    }

    private static string Plain(string words) => words.Any(char.IsControl) ? new([.. words.Select(c => char.IsControl(c) ? ' ' : c)]) : words;
}

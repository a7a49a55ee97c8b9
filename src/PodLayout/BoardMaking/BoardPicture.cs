using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Handover.Picture;
using PodLayout.Shops;

namespace PodLayout.BoardMaking;

/// <summary>The picture of one side of the board, for a person.</summary>
public static class BoardPicture
{
    /// <summary>The picture as SVG, an A4 page.</summary>
    public static string Svg(BoardPlan plan, BoardSide side) => SvgWriter.Write(Draw(plan, side));

    /// <summary>The picture as a sheet, for any output.</summary>
    public static Sheet Draw(BoardPlan plan, BoardSide side)
    {
        var front = side == BoardSide.Front;
        Box2 face = new(0, 0, plan.Board.WidthMm, plan.Board.LengthMm);
        var content = front ? face : Box2.Around(plan.Pieces.Select(p => p.Over.Apply(p.Outline))
            .SelectMany(b => new[] { new Point2(b.MinX, b.MinY), new Point2(b.MaxX, b.MaxY) }).Append(default));
        ImmutableArray<PanelItem> items = front ? FrontPanel(plan) : BackPanel(plan);
        var frame = PageFrame.Fit(content, [.. items.Select(i => i.HeightMm)]);
        SheetDraft draft = new(frame.Scale, frame.Page, content);
        draft.AddBox(SheetDraft.Paper, "paper", frame.Page);
        if (front)
        {
            Front(draft, plan);
        }
        else
        {
            Back(draft, plan);
        }

        PanelItem.DrawAll(draft, frame, items);
        var title = $"{plan.Board.Name}, {(front ? "front" : "back")}";
        return draft.Finish(title, $"{title}: {(front ? FrontWords(plan) : BackWords(plan))}");
    }

    private static void Front(SheetDraft draft, BoardPlan plan)
    {
        BoardDrawing.Draw(draft, plan.Board);
        var half = plan.Board.GrooveWidthMm / 2;
        foreach (var groove in plan.Grooves)
        {
            draft.AddBox(SheetDraft.Board, "groove-cut", Clipped(groove.Run.IsAlongX
                ? groove.Run.Box.Grow(0) with { MinY = groove.Run.From.Y - half, MaxY = groove.Run.From.Y + half }
                : groove.Run.Box with { MinX = groove.Run.From.X - half, MaxX = groove.Run.From.X + half }, plan.Pieces[groove.Piece].Outline));
        }

        foreach (var piece in plan.Pieces)
        {
            draft.AddLine(SheetDraft.Grooves, "part-edge", Closed(piece.Outline));
        }

        foreach (var port in plan.Board.Ports.Where(p => p.State == PortState.Working))
        {
            draft.Add(SheetDraft.Ports, new Primitive.Disc("bore", port.Centre, plan.Request.Bore.CounterboreDiameterMm / 2));
            draft.Add(SheetDraft.Ports, new Primitive.Disc("bore-deep", port.Centre, plan.Request.Bore.DrillDiameterMm / 2));
        }

        foreach (var stroke in plan.Numerals.SelectMany(n => n.Strokes))
        {
            draft.Add(SheetDraft.Labels, new Primitive.Line("engraving", stroke));
        }

        Seams(draft, plan, front: true);
    }

    private static void Back(SheetDraft draft, BoardPlan plan)
    {
        foreach (var piece in plan.Pieces)
        {
            draft.AddBox(SheetDraft.Board, "board", piece.Over.Apply(piece.Outline));
            foreach (var pin in piece.Pins)
            {
                // The table's pins stay where they are, and holes come down on them: each is named for the pin, not for the hole.
                BoardDrawing.ObstacleSign(draft, SheetDraft.Obstacles, ObstacleKind.Pin, new ObstacleShape.Disc(pin.At, pin.HoleDiameterMm));
                PinName(draft, piece.Over.Apply(piece.Outline), pin.At, pin);
            }
        }

        foreach (var part in plan.Parts)
        {
            var over = plan.Pieces[part.Piece].Over;
            var extent = over.Apply(part.Zone.VacuumExtent);
            draft.Add(SheetDraft.Board, new Primitive.Hatch("vacuum-hatch", [SheetDraft.RingOf(extent)], 45, 2.5 * draft.Scale));
            draft.AddLine(SheetDraft.Board, "vacuum-extent", Closed(extent));
            draft.AddLine(SheetDraft.Grooves, "zone", Closed(over.Apply(part.Area)));
            if (part.GasketLine is { } line)
            {
                var (loop, half) = (over.Apply(line), plan.Request.Gasket!.WidthMm / 2);
                draft.Add(SheetDraft.Grooves, new Primitive.Area("gasket", [Rounded(loop.Grow(half), 2 * half), SheetDraft.RingOf(loop.Grow(-half))]));
            }
        }

        foreach (var laid in plan.Channels)
        {
            var over = plan.Pieces[laid.Part.Piece].Over;
            var shape = Region.UnionOf(laid.Runs.Select(r => Region.Inside(Slot(over.Apply(r.From), over.Apply(r.To), plan.Request.ChannelWidthMm / 2))));
            draft.Add(SheetDraft.Grooves, new Primitive.Area("channel", shape.Boundary));
            foreach (var port in laid.Ports)
            {
                draft.Add(SheetDraft.Ports, new Primitive.Disc("bore", over.Apply(port.Centre), plan.Request.Bore.DrillDiameterMm / 2));
            }
        }

        foreach (var piece in plan.Pieces)
        {
            FlipLine(draft, piece);
        }

        Seams(draft, plan, front: false);
        FaceCorner(draft, plan);
        BoardDrawing.Datum(draft);
    }

    private static void PinName(SheetDraft draft, Box2 outline, Point2 at, LocatorPin pin)
    {
        // Away from the nearer side edge, where there is room.
        var right = at.X < outline.Centre.X;
        var off = new Point2((right ? 1 : -1) * (pin.HoleDiameterMm / 2 + 1.2 * draft.Scale), 0);
        var width = TextMeasure.Width(pin.Name, 2.2) * draft.Scale;
        var middle = at + off + new Point2((right ? 1 : -1) * width / 2, 0);
        draft.AddBox(SheetDraft.Labels, "knockout", new(middle.X - width / 2, at.Y - 1.4 * draft.Scale, middle.X + width / 2, at.Y + 1.4 * draft.Scale));
        draft.AddText(SheetDraft.Labels, "text", at + off, pin.Name, 2.2, right ? TextAnchor.Start : TextAnchor.End);
    }

    // Where the corner that is zero on the front lies now: whoever turns the board over the wrong way sees it here.
    private static void FaceCorner(SheetDraft draft, BoardPlan plan)
    {
        var u = draft.Scale;
        var piece = plan.Pieces[0];
        var corner = piece.Over.Apply(new Point2(0, 0));
        var inwards = piece.Over.Apply(piece.Outline).Centre - corner;
        Point2 x = new(Math.Sign(inwards.X) * 6 * u, 0), y = new(0, Math.Sign(inwards.Y) * 6 * u);
        draft.Add(SheetDraft.Labels, new Primitive.Area("pod-turned", [new([corner, corner + x, corner + y])]));
        draft.AddText(
            SheetDraft.Labels, "text", corner + new Point2(x.X * 1.2, -Math.Sign(y.Y) * 2.6 * u),
            "front's datum corner", 2.4, x.X > 0 ? TextAnchor.Start : TextAnchor.End);
    }

    private static void FlipLine(SheetDraft draft, Piece piece)
    {
        var (box, at, past) = (piece.Over.Apply(piece.Outline), piece.Over.LineMm, 3 * draft.Scale);
        draft.AddLine(SheetDraft.Grooves, "flip-line", piece.Over.Axis == FlipAxis.AlongX
            ? [new(box.MinX - past, at), new(box.MaxX + past, at)]
            : [new(at, box.MinY - past), new(at, box.MaxY + past)]);
    }

    private static void Seams(SheetDraft draft, BoardPlan plan, bool front)
    {
        foreach (var x in plan.Request.SeamsXMm)
        {
            draft.AddLine(SheetDraft.Labels, "seam", new(x, 0), new(x, plan.Board.LengthMm));
        }

        foreach (var y in plan.Request.SeamsYMm)
        {
            draft.AddLine(SheetDraft.Labels, "seam", new(0, y), new(plan.Board.WidthMm, y));
        }

        for (var i = 0; plan.Pieces.Length > 1 && i < plan.Pieces.Length; i++)
        {
            var box = front ? plan.Pieces[i].Outline : plan.Pieces[i].Over.Apply(plan.Pieces[i].Outline);

            // Above the board where it is the topmost; else inside, under its upper edge.
            var isTop = box.MaxY >= draft.Content.MaxY - 1e-6;
            Point2 at = new(box.Centre.X, box.MaxY + (isTop ? 5.4 : -2.6) * draft.Scale);
            if (!isTop)
            {
                draft.AddBox(SheetDraft.Labels, "knockout", draft.TextBox(at, plan.Pieces[i].Name, 2.6, isBold: true).Grow(0.3 * draft.Scale));
            }

            draft.AddText(SheetDraft.Labels, "text-bold", at, plan.Pieces[i].Name, 2.6, TextAnchor.Middle);
        }
    }

    private static ImmutableArray<PanelItem> FrontPanel(BoardPlan plan)
    {
        var (board, bore) = (plan.Board, plan.Request.Bore);
        return
        [
            .. PanelItem.Title($"{board.Name}: front"),
            .. PanelItem.Words(FrontWords(plan), 14),
            .. PanelItem.Under("Signs",
            [
                PanelItem.Sign($"groove, {Figure.Mm(board.GrooveWidthMm)} wide, {Figure.Mm(board.GrooveDepthMm)} deep", (d, at) =>
                    d.AddBox(SheetDraft.Panel, "groove-cut", new Box2(at.X, at.Y, at.X, at.Y).Grow(1.2 * d.Scale) with { MinX = at.X - 4 * d.Scale, MaxX = at.X + 4 * d.Scale })),
                PanelItem.Sign($"port: counterbore {Figure.Mm(bore.CounterboreDiameterMm)}, drill {Figure.Mm(bore.DrillDiameterMm)}", (d, at) =>
                {
                    d.Add(SheetDraft.Panel, new Primitive.Disc("bore", at, 1.8 * d.Scale));
                    d.Add(SheetDraft.Panel, new Primitive.Disc("bore-deep", at, 1 * d.Scale));
                }),
                PanelItem.Sign("locator pin", (d, at) =>
                    BoardDrawing.ObstacleSign(d, SheetDraft.Panel, ObstacleKind.Pin, new ObstacleShape.Disc(at, 3.4 * d.Scale))),
                .. plan.Pieces.Length == 1 ? [] : (IEnumerable<PanelItem>)[PanelItem.Sign("seam between pieces", (d, at) =>
                    d.AddLine(SheetDraft.Panel, "seam", at - new Point2(4 * d.Scale, 0), at + new Point2(4 * d.Scale, 0)))],
            ]),
            .. PanelItem.Under("Cautions", PanelItem.Words(BoardCautions.Short, 6)),
        ];
    }

    private static ImmutableArray<PanelItem> BackPanel(BoardPlan plan) =>
    [
        .. PanelItem.Title($"{plan.Board.Name}: back"),
        .. PanelItem.Words(BackWords(plan), 16),
        .. PanelItem.Under("Signs",
        [
            PanelItem.Sign($"channel, {Figure.Mm(plan.Request.ChannelWidthMm)} wide, {Figure.Mm(plan.Request.ChannelDepthMm)} deep", (d, at) =>
                d.Add(SheetDraft.Panel, new Primitive.Area("channel", [Slot(at - new Point2(3 * d.Scale, 0), at + new Point2(3 * d.Scale, 0), 1.2 * d.Scale)]))),
            .. plan.Request.Gasket is not { } gasket ? [] : (IEnumerable<PanelItem>)[PanelItem.Sign(
                $"gasket groove, {Figure.Mm(gasket.WidthMm)} wide, {Figure.Mm(gasket.DepthMm)} deep", (d, at) =>
                d.AddBox(SheetDraft.Panel, "gasket", new(at.X - 4 * d.Scale, at.Y - 1 * d.Scale, at.X + 4 * d.Scale, at.Y + 1 * d.Scale)))],
            PanelItem.Sign("port, drilled from the front", (d, at) => d.Add(SheetDraft.Panel, new Primitive.Disc("bore", at, 1.2 * d.Scale))),
            PanelItem.Sign("table's own vacuum grooves", (d, at) =>
            {
                var box = new Box2(at.X - 4 * d.Scale, at.Y - 1.8 * d.Scale, at.X + 4 * d.Scale, at.Y + 1.8 * d.Scale);
                d.Add(SheetDraft.Panel, new Primitive.Hatch("vacuum-hatch", [SheetDraft.RingOf(box)], 45, 1.2 * d.Scale));
                d.AddLine(SheetDraft.Panel, "vacuum-extent", Closed(box));
            }),
            PanelItem.Sign("line a piece is turned over about", (d, at) => d.AddLine(SheetDraft.Panel, "flip-line", at - new Point2(4.5 * d.Scale, 0), at + new Point2(4.5 * d.Scale, 0))),
            PanelItem.Sign("edge of a zone", (d, at) => d.AddLine(SheetDraft.Panel, "zone", at - new Point2(4.5 * d.Scale, 0), at + new Point2(4.5 * d.Scale, 0))),
            PanelItem.Sign("locator pin", (d, at) => BoardDrawing.ObstacleSign(d, SheetDraft.Panel, ObstacleKind.Pin, new ObstacleShape.Disc(at, 3.4 * d.Scale))),
        ]),
        .. PanelItem.Under("Cautions", PanelItem.Words(BoardCautions.Short, 6)),
    ];

    private static string FrontWords(BoardPlan plan)
    {
        var (board, ports) = (plan.Board, plan.Board.Ports.Length);
        return $"{Figure.Mm(board.WidthMm)} x {Figure.Mm(board.LengthMm)} mm, {plan.Request.Stock.Material} of {Figure.Mm(plan.Request.Stock.ThicknessMm)} mm. "
            + $"Grooves on a pitch of {Figure.Mm(board.PitchMm)} mm, {FirstCut(plan)}. "
            + $"{Figure.Count(ports)} ports; the first, {board.Ports[0].Name}, at X {Figure.Mm(board.Ports[0].Centre.X)}, Y {Figure.Mm(board.Ports[0].Centre.Y)}"
            + (plan.Request.PortSpacing is { } s ? $", then every {Figure.Mm(s.X)} x {Figure.Mm(s.Y)} mm. " : ". ")
            + string.Concat(plan.Request.Pins.Select(p => $"{p.Name}: hole {Figure.Mm(p.HoleDiameterMm)} at X {Figure.Mm(p.At.X)}, Y {Figure.Mm(p.At.Y)}. "))
            + (plan.Numerals.IsEmpty ? "" : "A number stands in the land after its groove.");
    }

    /// <summary>The first groove each way that is cut: one on the very edge has a number, but is not cut.</summary>
    internal static string FirstCut(BoardPlan plan)
    {
        var alongY = plan.Grooves.Where(g => !g.Run.IsAlongX).MinBy(g => g.Index)!;
        var alongX = plan.Grooves.Where(g => g.Run.IsAlongX).MinBy(g => g.Index)!;
        return $"the first that are cut: column {Figure.Count(alongY.Index + 1)} at X {Figure.Mm(alongY.Run.From.X)}, row {Figure.Count(alongX.Index + 1)} at Y {Figure.Mm(alongX.Run.From.Y)}";
    }

    private static string BackWords(BoardPlan plan)
    {
        var alongX = plan.Request.Flip == FlipAxis.AlongX;
        return string.Concat(plan.Pieces.Select(p =>
                $"{char.ToUpperInvariant(p.Name[0])}{p.Name[1..]} turned over about {(alongX ? "Y" : "X")} {Figure.Mm(p.Over.LineMm)} ({(alongX ? "front edge to the rear" : "left edge to the right")}), on the same pins; zero is where it was. "))
            + string.Concat(plan.Channels.Select(c =>
                $"{c.Part.Zone.Name}: {ChannelChecks.InWords(c.Kind)}, {Figure.Count(c.Ports.Length)} ports, {Figure.Mm(Math.Round(c.LengthMm / 1000, 2))} m; loses {Figure.Tenth(c.Network.WorstLossPa)} Pa at the flow assumed. "));
    }

    private static ImmutableArray<Point2> Closed(Box2 box) => [.. SheetDraft.RingOf(box).Points, new(box.MinX, box.MinY)];

    private static Box2 Clipped(Box2 a, Box2 b) => new(
        Math.Max(a.MinX, b.MinX), Math.Max(a.MinY, b.MinY), Math.Min(a.MaxX, b.MaxX), Math.Min(a.MaxY, b.MaxY));

    /// <summary>What a round tool clears along a straight line.</summary>
    private static Ring Slot(Point2 from, Point2 to, double half)
    {
        const int chords = 12;
        var along = (to - from).Length > 0 ? (to - from) * (1 / (to - from).Length) : new Point2(1, 0);
        var start = Math.Atan2(along.Y, along.X) * 180 / Math.PI;
        return new(
        [
            .. Enumerable.Range(0, chords + 1).Select(i => to + Turn.FromDegrees(start - 90 + 180.0 * i / chords).Apply(new(half, 0))),
            .. Enumerable.Range(0, chords + 1).Select(i => from + Turn.FromDegrees(start + 90 + 180.0 * i / chords).Apply(new(half, 0))),
        ]);
    }

    private static Ring Rounded(Box2 box, double radius)
    {
        Point2[] corners = [new(box.MaxX - radius, box.MaxY - radius), new(box.MinX + radius, box.MaxY - radius), new(box.MinX + radius, box.MinY + radius), new(box.MaxX - radius, box.MinY + radius)];
        return new([.. corners.SelectMany((c, q) => Enumerable.Range(0, 7).Select(i => c + Turn.FromDegrees(90 * q + 15 * i).Apply(new(radius, 0))))]);
    }
}

using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Handover.Picture;
using PodLayout.Shops;

namespace PodLayout.BoardMaking;

/// <summary>A section through one port, across its channel, with the dimensions.</summary>
public static class SectionPicture
{
    private const string Layer = SheetDraft.Labels;

    /// <summary>The picture as SVG, an A4 page.</summary>
    public static string Svg(BoardPlan plan) => SvgWriter.Write(Draw(plan));

    /// <summary>The picture as a sheet, for any output.</summary>
    public static Sheet Draw(BoardPlan plan)
    {
        var view = View.Of(plan);
        var items = Panel(plan, view);

        // Room for the dimensions is counted on paper, and the scale depends on it: settle both in a few rounds.
        PageFrame frame = null!;
        Box2 content = default;
        for (var (round, scale) = (0, 0.5); round < 8; round++)
        {
            content = new(-view.HalfMm - 46 * scale, -24 * scale, view.HalfMm + 76 * scale, view.ThicknessMm + 28 * scale);
            frame = PageFrame.Fit(content, [.. items.Select(i => i.HeightMm)]);
            if (frame.Scale <= scale)
            {
                break;
            }

            scale = frame.Scale;
        }

        SheetDraft draft = new(frame.Scale, frame.Page, content);
        draft.AddBox(SheetDraft.Paper, "paper", frame.Page);
        Stock(draft, plan, view);
        Dimensions(draft, plan, view);
        PanelItem.DrawAll(draft, frame, items);
        var title = $"{plan.Board.Name}, section through port {view.Port.Name}";
        return draft.Finish(title, $"{title}: {Words(plan)}");
    }

    private static void Stock(SheetDraft draft, BoardPlan plan, View view)
    {
        var (bore, request, t) = (plan.Request.Bore, plan.Request, view.ThicknessMm);
        List<Region> cuts =
        [
            Region.Inside(new Box2(-bore.DrillDiameterMm / 2, t - bore.DrillDepthMm, bore.DrillDiameterMm / 2, t + 1)),
            .. view.Channels.Select(c => Region.Inside(new Box2(c - request.ChannelWidthMm / 2, -1, c + request.ChannelWidthMm / 2, request.ChannelDepthMm))),
            .. view.Grooves.Select(g => Region.Inside(GrooveShape(plan, g, t))),
        ];
        if (bore.CounterboreDepthMm > 0)
        {
            cuts.Add(Region.Inside(new Box2(-bore.CounterboreDiameterMm / 2, t - bore.CounterboreDepthMm, bore.CounterboreDiameterMm / 2, t + 1)));
        }

        var rings = Region.Inside(new Box2(-view.HalfMm, 0, view.HalfMm, t)).Minus(Region.UnionOf(cuts)).Boundary;
        draft.Add(SheetDraft.Board, new Primitive.Area("stock", rings));
        draft.Add(SheetDraft.Board, new Primitive.Hatch("stock-hatch", rings, 45, 1.8 * draft.Scale));
        if (bore.CounterboreDepthMm > 0)
        {
            draft.AddBox(SheetDraft.Ports, "plug", new(
                -bore.CounterboreDiameterMm / 2 + 0.3 * draft.Scale, t - bore.CounterboreDepthMm + 0.3 * draft.Scale,
                bore.CounterboreDiameterMm / 2 - 0.3 * draft.Scale, t - 0.3 * draft.Scale));
        }
    }

    private static Ring GrooveShape(BoardPlan plan, double at, double t)
    {
        var (half, c, floor) = (plan.Board.GrooveWidthMm / 2, plan.Request.ChamferMm, t - plan.Board.GrooveDepthMm);
        return c == 0
            ? SheetDraft.RingOf(new(at - half, floor, at + half, t + 1))
            : new([new(at - half, floor), new(at + half, floor), new(at + half, t - c), new(at + half + c, t), new(at + half + c, t + 1),
                new(at - half - c, t + 1), new(at - half - c, t), new(at - half, t - c)]);
    }

    private static void Dimensions(SheetDraft draft, BoardPlan plan, View view)
    {
        var (bore, request, t, u) = (plan.Request.Bore, plan.Request, view.ThicknessMm, draft.Scale);
        var (gw, gd, cw, cd) = (plan.Board.GrooveWidthMm, plan.Board.GrooveDepthMm, request.ChannelWidthMm, request.ChannelDepthMm);
        var (left, right) = (view.LeftGroove, view.RightGroove);
        var (bottom, radius) = (t - bore.DrillDepthMm, bore.CounterboreDiameterMm / 2);

        // Above the face, from the farthest line inwards: figures stand clear over lines that lead farther out.
        Dimension.Across(draft, Layer, left, right, t, t + 19 * u, $"pitch {Figure.Mm(right - left)}");
        Dimension.Across(draft, Layer, left - gw / 2, left + gw / 2, t, t + 11 * u, $"groove {Figure.Mm(gw)}");
        Dimension.Across(draft, Layer, radius, right - gw / 2 - request.ChamferMm, t, t + 11 * u, $"wall {Figure.Mm(right - gw / 2 - request.ChamferMm - radius)}");

        Dimension.Across(draft, Layer, -radius, radius, t, t + 5 * u, $"{(bore.CounterboreDepthMm > 0 ? "counterbore" : "port")} {Figure.Mm(2 * radius)}");

        // Below the back.
        Dimension.Across(draft, Layer, -bore.DrillDiameterMm / 2, bore.DrillDiameterMm / 2, bottom, -13 * u, $"drill {Figure.Mm(bore.DrillDiameterMm)}");
        Dimension.Across(draft, Layer, -cw / 2, cw / 2, 0, -5 * u, $"channel {Figure.Mm(cw)}");

        // To the left and right.
        Dimension.Up(draft, Layer, bottom, t, bore.DrillDiameterMm / 2, view.HalfMm + 54 * u, $"drill {Figure.Mm(bore.DrillDepthMm)}", textOnLeft: false);
        Dimension.Up(draft, Layer, 0, cd, cw / 2, view.HalfMm + 30 * u, $"channel {Figure.Mm(cd)}", textOnLeft: false);
        Dimension.Up(draft, Layer, 0, t, -view.HalfMm, -view.HalfMm - 27 * u, $"stock {Figure.Mm(t)}", textOnLeft: true);
        Dimension.Up(draft, Layer, t - gd, t, left - gw / 2, -view.HalfMm - 5 * u, $"groove {Figure.Mm(gd)}", textOnLeft: true);
        Dimension.Up(draft, Layer, t - bore.CounterboreDepthMm, t, radius, view.HalfMm + 5 * u, $"counterbore {Figure.Mm(bore.CounterboreDepthMm)}", textOnLeft: false, isShown: bore.CounterboreDepthMm > 0);
        Dimension.Up(draft, Layer, bottom, cd, Math.Max(cw, bore.DrillDiameterMm) / 2, view.HalfMm + 5 * u, $"overlap {Figure.Mm(plan.OverlapMm)}", textOnLeft: false);
        Dimension.Up(draft, Layer, cd, t - gd, right, right, $"floor {Figure.Mm(t - gd - cd)}", textOnLeft: false);
    }

    private static ImmutableArray<PanelItem> Panel(BoardPlan plan, View view) =>
    [
        .. PanelItem.Title($"Section through port {view.Port.Name}"),
        .. PanelItem.Words($"{plan.Board.Name}. Cut along {(view.AlongX ? "X" : "Y")} through X {Figure.Mm(view.Port.Centre.X)}, Y {Figure.Mm(view.Port.Centre.Y)}, across the port's channel, face up; all figures in mm. {Words(plan)}", 16),
        .. PanelItem.Under("Signs",
        [
            PanelItem.Sign("plug in its counterbore", (d, at) => d.AddBox(SheetDraft.Panel, "plug", new(at.X - 3 * d.Scale, at.Y - 1.2 * d.Scale, at.X + 3 * d.Scale, at.Y + 1.2 * d.Scale))),
        ]),
        .. PanelItem.Under("Cautions", PanelItem.Words(BoardCautions.Short, 6)),
    ];

    private static string Words(BoardPlan plan) =>
        $"Drill {Figure.Mm(plan.Request.Bore.DrillDepthMm)} + channel {Figure.Mm(plan.Request.ChannelDepthMm)} - stock {Figure.Mm(plan.Request.Stock.ThicknessMm)} = overlap {Figure.Mm(plan.OverlapMm)} mm. "
        + $"Chamfer on the grooves {Figure.Mm(plan.Request.ChamferMm)} mm. The drill's depth is that at its full diameter.";

    /// <summary>What the section shows, in its own coordinates: the port at 0, the back at height 0.</summary>
    private sealed record View(
        Port Port, bool AlongX, double HalfMm, double ThicknessMm, ImmutableArray<double> Grooves, ImmutableArray<double> Channels,
        double LeftGroove, double RightGroove)
    {
        public static View Of(BoardPlan plan)
        {
            var laid = plan.Channels[0];
            var port = laid.Ports.MinBy(p => (p.Centre - laid.Part.Area.Centre).Length)!;
            var run = laid.Runs.First(r => r.DistanceTo(port.Centre) < 1e-6);
            var alongX = !run.IsAlongX;
            var at = alongX ? port.Centre.X : port.Centre.Y;
            var first = alongX ? plan.Board.FirstGroove.X : plan.Board.FirstGroove.Y;
            var pitch = plan.Board.PitchMm;
            var half = 0.8 * pitch;
            var cell = Math.Floor((at - first) / pitch);
            var (left, right) = (first + cell * pitch - at, first + (cell + 1) * pitch - at);
            var across = alongX ? port.Centre.Y : port.Centre.X;
            ImmutableArray<double> channels =
            [
                .. laid.Runs.Where(r => r.IsAlongX == run.IsAlongX)
                    .Where(r => alongX ? r.From.Y <= across && across <= r.To.Y : r.From.X <= across && across <= r.To.X)
                    .Select(r => (alongX ? r.From.X : r.From.Y) - at)
                    .Where(c => Math.Abs(c) < half),
            ];
            var reach = Math.Max(half, Math.Max(-left, right) + 0.5 * pitch);
            return new(
                port, alongX, reach, plan.Request.Stock.ThicknessMm,
                [.. Enumerable.Range(-2, 6).Select(k => left + k * pitch).Where(g => Math.Abs(g) < reach - plan.Board.GrooveWidthMm)], channels, left, right);
        }
    }
}

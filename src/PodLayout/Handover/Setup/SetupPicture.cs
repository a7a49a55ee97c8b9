using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Handover.Picture;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Parts;
using PodLayout.Shops;

namespace PodLayout.Handover.Setup;

/// <summary>The picture that a board is set up from: board, pods, ports, the part and the marks that it is laid by.</summary>
internal static class SetupPicture
{
    // On a screen the drawing is so wide and high, in millimetres of a paper that the browser stretches; and so much more where many
    // pods would be smaller than that, so that lines and signs leave room for their numbers.
    private const double ScreenWidthMm = 110;
    private const double ScreenHeightMm = 89;
    private const double MostTimes = 160.0 / ScreenWidthMm;
    private const double SmallPodPixels = 30;
    private const int ManyPods = 16;

    // What is read on a tablet that is held upright must be so large, in pixels of a page that leaves this much for the picture.
    private const double LeastPixels = 9.2;
    private const double TabletWidth = 774;
    private const double TabletHeight = 920;

    // Numbers, and the datum's arrows left and below.
    private const double AroundMm = 10;
    private const double DatumMm = 14;

    // Type on paper: capitals of 2.5 mm for what must be read, 2 mm for the rest. Common practice, no source.
    private const double MustReadMm = 3.45;
    private const double ReadMm = 2.8;

    private const string SeenFrom = "The board is seen from above; you stand at the datum's side.";

    // The table of pods names them all; the panel has room for so many.
    private const int MostTypes = 8;

    /// <summary>For the screen: the drawing alone, and what its signs mean.</summary>
    /// <param name="result">The plan.</param>
    /// <param name="laying">How the part is laid.</param>
    /// <param name="faults">Pods that keep a rule no longer, or that are not counted.</param>
    public static (Sheet Picture, Sheet Signs) OnScreen(PlanResult result, Laying laying, params ImmutableArray<PodFault> faults)
    {
        var content = Content(result);
        var scale = ScreenScale(result.Layout!, content);
        var page = new Box2(
            content.MinX - DatumMm * scale, content.MinY - DatumMm * scale, content.MaxX + AroundMm * scale, content.MaxY + AroundMm * scale);
        SheetDraft draft = new(scale, page, content) { LeastPortMm = LeastPortMm(result.Layout!, scale), NumbersYield = true };
        Draw(draft, result, laying, LetterSizes.OnScreen(LeastPixels / Pixels(page) / scale), page, faults);
        return (draft.Finish(LayoutPicture.Title(result), LayoutPicture.Description(result)), Signs(result, draft));
    }

    // For a millimetre of the board.
    private static double Pixels(Box2 page) => Math.Min(TabletWidth / page.Width, TabletHeight / page.Height);

    private static double ScreenScale(Layout layout, Box2 content)
    {
        var scale = Math.Max(content.Width / ScreenWidthMm, content.Height / ScreenHeightMm);
        if (layout.Pods.Length <= ManyPods)
        {
            return scale;
        }

        var side = layout.Pods.Select(p => Math.Min(p.ExtentXMm, p.ExtentYMm)).Min();
        var pod = side * Pixels(content.Grow((AroundMm + DatumMm) / 2 * scale));
        return scale / Math.Clamp(SmallPodPixels / pod, 1, MostTimes);
    }

    // The ring of an open port does not reach out of its pod's edge, as long as it can be seen.
    private static double LeastPortMm(Layout layout, double scale)
    {
        const double leastMm = 0.5, mostMm = 0.75, edgeMm = 0.2, ringShare = 1.25;
        var room = layout.Pods.SelectMany(p => p.OpenPorts.Where(o => p.BodyBox.Contains(o.Centre)).Select(o => Math.Min(
            p.ExtentXMm / 2 - Math.Abs(o.Centre.X - p.Centre.X), p.ExtentYMm / 2 - Math.Abs(o.Centre.Y - p.Centre.Y)))).DefaultIfEmpty(double.PositiveInfinity).Min();
        return Math.Clamp((room / scale + edgeMm) / ringShare, leastMm, mostMm);
    }

    /// <summary>For paper: the first page of the card.</summary>
    /// <param name="result">The plan.</param>
    /// <param name="laying">How the part is laid.</param>
    /// <param name="head">What stands beside it, a heading and its lines.</param>
    /// <param name="foot">What stands at the foot of the page.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="inInches">Whether the scale is one of inches.</param>
    /// <param name="faults">Pods that keep a rule no longer, or that are not counted.</param>
    /// <param name="besides">Lines that stand smaller below those of the head.</param>
    /// <param name="warnings">What must be read first; stands below the heading.</param>
    public static Sheet OnPaper(
        PlanResult result, Laying laying, (string Title, ImmutableArray<string> Lines) head, string foot, PaperSize paper,
        bool inInches = false, ImmutableArray<PodFault> faults = default, ImmutableArray<string> besides = default,
        params ImmutableArray<string> warnings)
    {
        var content = Content(result);
        IReadOnlyList<PanelItem> Items(IReadOnlyDictionary<string, string> names, SheetDraft? drawn) =>
        [
            .. PanelItem.Title(head.Title),
            .. warnings.Select(PanelItem.Warning),
            .. head.Lines.SelectMany(l => PanelItem.Paragraph(l, 4, MustReadMm)),
            .. (besides.IsDefault ? [] : besides).SelectMany(l => PanelItem.Paragraph(l, 3, ReadMm)),
            PanelText.ScaleBar(paper.Name, inInches),
            .. PanelItem.Paragraph(SeenFrom, 2, ReadMm),
            .. TypeNames(result, names),
            .. PanelItem.EndingIn(foot.Length > 0 ? 3 : 2, [.. PanelItem.Under("Signs", Legend.ForSetup(result, GrainDeg(result), names, drawn)), .. foot.Length > 0 ? PanelItem.Words(foot, 1, isBold: true) : []]),
        ];

        // Letters for the types take the most room, and are what is drawn where names do not fit.
        var letters = LayoutPicture.Names(result, double.PositiveInfinity);
        var frame = PageFrame.Fit(content, [.. Items(letters, drawn: null).Select(i => i.HeightMm)], paper);
        SheetDraft draft = new(frame.Scale, frame.Page, content);
        Draw(draft, result, laying, LetterSizes.OnPaper, PageFrame.Around(content, frame.Scale), faults.IsDefault ? [] : faults);
        PanelItem.DrawAll(draft, frame, Items(LayoutPicture.Names(result, frame.Scale), draft));
        return draft.Finish(LayoutPicture.Title(result), "");
    }

    private static Sheet Signs(PlanResult result, SheetDraft drawn)
    {
        var names = LayoutPicture.Names(result, drawn.Scale);
        IReadOnlyList<PanelItem> items = [.. PanelItem.Words(SeenFrom, 2), .. TypeNames(result, names), .. Legend.ForSetup(result, GrainDeg(result), names, drawn)];
        // One column: on a screen there is room below, and the type stays large.
        var height = items.Sum(i => i.HeightMm);
        var page = new Box2(0, 0, PageFrame.ColumnWidthMm, height + 1);
        PageFrame frame = new(1, page, [new(new(0, page.MaxY), height, IsBelow: false)]);
        SheetDraft draft = new(1, page, page);
        PanelItem.DrawAll(draft, frame, items);
        return draft.Finish("Signs in the picture", string.Join("; ", draft.On(SheetDraft.Panel).OfType<Primitive.Text>().Select(t => t.Words)));
    }

    private static IEnumerable<PanelItem> TypeNames(PlanResult result, IReadOnlyDictionary<string, string> names) =>
        result.Layout!.Pods.Select(p => p.Type.Name).Distinct(StringComparer.Ordinal).Where(n => names[n] != n && names[n].Length > 0)
            .OrderBy(n => names[n], StringComparer.Ordinal).Take(MostTypes).SelectMany(n => PanelItem.Words($"{names[n]} = {n}", 2));

    private static double GrainDeg(PlanResult result) => result.Job.Part.GrainDeg + result.Layout!.Placement.AngleDeg;

    private static PartShape Shape(PlanResult result) => result.Job.Part.Shape.Laid(
        Turn.FromDegrees(result.Layout!.Placement.AngleDeg), result.Layout.Placement.ZeroOnBoard);

    private static Box2 Content(PlanResult result) => LayoutPicture.Content(result.Job.Shop.Board, Shape(result));

    private static void Draw(SheetDraft draft, PlanResult result, Laying laying, LetterSizes sizes, Box2 around, ImmutableArray<PodFault> faults)
    {
        var (job, layout, shape) = (result.Job, result.Layout!, Shape(result));
        draft.AddBox(SheetDraft.Paper, "paper", draft.Page);
        BoardDrawing.Draw(draft, job.Shop.Board);
        PartDrawing.Draw(draft, shape, GrainDeg(result), LayoutPicture.ProgramZero(job, layout.Placement));
        Before(draft, job, layout);
        PodDrawing.Bodies(draft, job.Shop.Board, layout, StandingChanges.Of(job, layout).Staying);
        FaultDrawing.Frames(draft, layout, faults);
        foreach (var at in laying.Marks.Select(m => m.At))
        {
            // The dot of a mark, which is drawn last: words keep off the lines through it.
            Point2 x = new(0.9 * draft.Scale, 0), y = new(0, 0.9 * draft.Scale);
            draft.KeepOff(at - x, at + x);
            draft.KeepOff(at - y, at + y);
            draft.AddDot(at);
        }

        PodLabels labels = new(draft, job.Shop.Board, layout, LayoutPicture.Names(result, draft.Scale), sizes);
        labels.Inside();
        PartDrawing.GrainArrow(draft, shape, GrainDeg(result), sizes.IsTight ? labels.WantedOutside() : []);

        // Before the words beside pods, which have more places to go to.
        foreach (var mark in laying.Marks)
        {
            MarkFlag.Draw(draft, job.Shop.Board, shape, mark, around, sizes);
        }

        labels.Outside();
        FaultDrawing.Words(draft, job.Shop.Board, layout, faults);

        PartDrawing.ZeroName(draft, LayoutPicture.ProgramZero(job, layout.Placement));
        ZoneNames(draft, job.Shop);
        PieceNames.Draw(draft, shape, LayoutPicture.Loose(job, layout.Placement));
    }

    // The pods that stand on the board now and are not part of the layout.
    private static void Before(SheetDraft draft, Job job, Layout layout)
    {
        var board = job.Shop.Board;
        var toPlug = StandingChanges.Of(job, layout).ToPlug.ToHashSet(StringComparer.Ordinal);
        foreach (var port in board.Ports.Where(p => toPlug.Contains(p.Name)))
        {
            var radius = Symbols.PortRadius(draft, board.PortDiameterMm);
            Symbols.PortToPlug(draft, SheetDraft.OpenPorts, port.Centre, radius);
            draft.Take(new Box2(port.Centre.X, port.Centre.Y, port.Centre.X, port.Centre.Y).Grow(1.5 * radius));
        }

        foreach (var pod in StandingChanges.Of(job, layout).TakeUp)
        {
            if (StandingChanges.Placed(pod, job.Shop) is not { } body)
            {
                continue;
            }

            if (body.Type.Footprint is PodFootprint.Round round)
            {
                draft.Add(SheetDraft.Before, new Primitive.Disc("before", body.Centre, round.DiameterMm / 2));
            }
            else
            {
                draft.AddBox(SheetDraft.Before, "before", body.BodyBox);
            }

            draft.KeepOff(SheetDraft.RingOf(body.BodyBox), isUnderPods: true);
            if (Open(body, layout, draft.Scale) is var (at, half))
            {
                Symbols.Cross(draft, SheetDraft.Before, "before-cross", at, half);
                draft.KeepOff(new Box2(at.X, at.Y, at.X, at.Y).Grow(half));
                draft.Take(new Box2(at.X, at.Y, at.X, at.Y).Grow(half));
            }
        }
    }

    // Where the cross of a pod to take up is seen: as near to the pod's middle and as large as the pods of the layout let it be.
    private static (Point2 At, double Half)? Open(PlacedPod body, Layout layout, double scale)
    {
        const int steps = 12;
        const double leastMm = 0.7;
        var box = body.BodyBox;
        List<Box2> over = [.. layout.Pods.Select(p => p.BodyBox.Grow(0.3 * scale)).Where(b => b.Touches(box))];
        var places = (from i in Enumerable.Range(0, steps + 1)
                      from j in Enumerable.Range(0, steps + 1)
                      select new Point2(box.MinX + box.Width * i / steps, box.MinY + box.Height * j / steps))
            .OrderBy(p => Math.Round((p - body.Centre).Length, 6)).ToList();
        for (var half = Math.Min(2.5 * scale, 0.3 * Math.Min(body.ExtentXMm, body.ExtentYMm)); half >= leastMm * scale; half *= 0.8)
        {
            foreach (var at in places)
            {
                var cross = new Box2(at.X, at.Y, at.X, at.Y).Grow(half);
                if (box.Contains(cross) && !over.Exists(b => b.Touches(cross)))
                {
                    return (at, half);
                }
            }
        }

        return null;
    }

    private static void ZoneNames(SheetDraft draft, Shop shop)
    {
        const double sizeMm = 2.6;
        foreach (var zone in shop.Zones)
        {
            draft.AddLine(
                SheetDraft.Zones, "zone", [.. SheetDraft.RingOf(zone.Area).Points, new(zone.Area.MinX, zone.Area.MinY)]);
            var words = TextMeasure.Cut(zone.Name, Math.Max(8, zone.Area.Width / draft.Scale - 4), sizeMm, true);
            var box = draft.TextBox(default, words, sizeMm, true);
            var places =
                from down in Enumerable.Range(1, 12)
                from across in Enumerable.Range(0, 9)
                select box.Moved(new(
                    zone.Area.MinX + (zone.Area.Width - box.Width) * across / 8 + (across == 0 ? 1 : across == 8 ? -1 : 0) * draft.Scale + box.Width / 2,
                    zone.Area.MaxY - down * 4 * draft.Scale));
            // Off the lines of the part where that can be: a name on its outline would look like an opening in it.
            List<Box2> free = [.. places.Where(p => zone.Area.Contains(p) && draft.IsFree(p.Grow(0.5 * draft.Scale)))];
            foreach (var place in free.Where(p => !draft.IsCrossed(p.Grow(0.5 * draft.Scale)) && !draft.HasWord(p)).Concat(free))
            {
                draft.AddBox(SheetDraft.Labels, "knockout", place);
                draft.AddText(SheetDraft.Labels, "text-bold", place.Centre, words, sizeMm, TextAnchor.Middle);
                draft.Take(place);
                draft.AddWord(place);
                break;
            }
        }
    }
}

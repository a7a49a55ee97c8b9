using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Handover.Picture;
using PodLayout.Layouts;
using PodLayout.Parts;

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

    /// <summary>For the screen: the drawing alone, what its signs mean, and parts of it that are shown larger.</summary>
    /// <param name="result">The plan.</param>
    /// <param name="laying">How the part is laid.</param>
    /// <param name="faults">Pods that keep a rule no longer, or that are not counted.</param>
    public static (Sheet Picture, Sheet Signs, ImmutableArray<CloserView> Closer) OnScreen(PlanResult result, Laying laying, params ImmutableArray<PodFault> faults)
    {
        var content = Content(result);
        var (draft, sizes) = OnScreen(content, DatumMm, result.Layout!.Pods);
        var tooSmall = Draw(draft, result, laying, sizes, draft.Page, faults);
        var closer = CloserView.Of(result, draft, tooSmall, faults, _ => "shown larger below", ScreenWidthMm / ScreenHeightMm, (window, pods) => OnScreen(window, window.Contains(default(Point2)) ? DatumMm : AroundMm, pods));
        return (draft.Finish(LayoutPicture.Title(result), LayoutPicture.Description(result)), Signs(result, draft), closer);
    }

    // Below and on the left there may be more than the numbers of grooves.
    private static (SheetDraft Draft, LetterSizes Sizes) OnScreen(Box2 content, double leftMm, ImmutableArray<PlacedPod> pods)
    {
        var scale = ScreenScale(pods, content);
        var page = new Box2(
            content.MinX - leftMm * scale, content.MinY - leftMm * scale, content.MaxX + AroundMm * scale, content.MaxY + AroundMm * scale);
        return (new(scale, page, content) { LeastPortMm = LeastPortMm(pods, scale), NumbersYield = true }, LetterSizes.OnScreen(LeastPixels / Pixels(page) / scale));
    }

    /// <summary>
    /// How large a picture must be on a screen for its numbers to be read there, in pixels. No more than there is room for on a tablet
    /// that is held upright, which it is drawn for.
    /// </summary>
    public static (double Width, double Height) LeastPixelsOf(Sheet picture)
    {
        var least = picture.Layers.SelectMany(l => l.Primitives).OfType<Primitive.Text>().Where(t => t.Style is "pod-id" or "stretch-number")
            .Select(t => t.SizeMm).DefaultIfEmpty(double.PositiveInfinity).Min();
        var pixels = Math.Min(LeastPixels / least, Pixels(picture.Extent));
        return (picture.Extent.Width * pixels, picture.Extent.Height * pixels);
    }

    // For a millimetre of the board.
    private static double Pixels(Box2 page) => Math.Min(TabletWidth / page.Width, TabletHeight / page.Height);

    private static double ScreenScale(ImmutableArray<PlacedPod> pods, Box2 content)
    {
        var scale = Math.Max(content.Width / ScreenWidthMm, content.Height / ScreenHeightMm);
        if (pods.Length <= ManyPods)
        {
            return scale;
        }

        var side = pods.Select(p => Math.Min(p.ExtentXMm, p.ExtentYMm)).Min();
        var pod = side * Pixels(content.Grow((AroundMm + DatumMm) / 2 * scale));
        return scale / Math.Clamp(SmallPodPixels / pod, 1, MostTimes);
    }

    // The ring of an open port does not reach out of its pod's edge, as long as it can be seen.
    private static double LeastPortMm(ImmutableArray<PlacedPod> pods, double scale)
    {
        const double leastMm = 0.5, mostMm = 0.75, edgeMm = 0.2, ringShare = 1.25;
        var room = pods.SelectMany(p => p.OpenPorts.Where(o => p.BodyBox.Contains(o.Centre)).Select(o => Math.Min(
            p.ExtentXMm / 2 - Math.Abs(o.Centre.X - p.Centre.X), p.ExtentYMm / 2 - Math.Abs(o.Centre.Y - p.Centre.Y)))).DefaultIfEmpty(double.PositiveInfinity).Min();
        return Math.Clamp((room / scale + edgeMm) / ringShare, leastMm, mostMm);
    }

    /// <summary>For paper: the first page of the card, and the last ones with parts of it that are shown larger.</summary>
    /// <param name="result">The plan.</param>
    /// <param name="laying">How the part is laid.</param>
    /// <param name="head">What stands beside it, a heading and its lines.</param>
    /// <param name="textPages">How many pages are between them; null where the pages have no numbers.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="inInches">Whether the scale is one of inches.</param>
    /// <param name="faults">Pods that keep a rule no longer, or that are not counted.</param>
    /// <param name="besides">Lines that stand smaller below those of the head.</param>
    /// <param name="running">What names the card on the other pages.</param>
    /// <param name="warnings">What must be read first; stands below the heading.</param>
    public static ImmutableArray<Sheet> OnPaper(
        PlanResult result, Laying laying, (string Title, ImmutableArray<string> Lines) head, int? textPages, PaperSize paper,
        bool inInches = false, ImmutableArray<PodFault> faults = default, ImmutableArray<string> besides = default,
        string running = "",
        params ImmutableArray<string> warnings)
    {
        var content = Content(result);
        IReadOnlyList<PanelItem> Items(IReadOnlyDictionary<string, string> names, SheetDraft? drawn, string foot) =>
        [
            .. PanelItem.Title(head.Title),
            .. warnings.Select(PanelItem.Warning),
            .. head.Lines.SelectMany(l => PanelItem.Paragraph(l, 7, MustReadMm)),
            .. (besides.IsDefault ? [] : besides).SelectMany(l => PanelItem.Paragraph(l, 3, ReadMm)),
            PanelText.ScaleBar(paper.Name, inInches),
            .. PanelItem.Paragraph(SeenFrom, 2, ReadMm),
            .. TypeNames(result, names),
            .. PanelItem.EndingIn(foot.Length > 0 ? 3 : 2, [.. PanelItem.Under("Signs", Legend.ForSetup(result, GrainDeg(result), names, drawn)), .. foot.Length > 0 ? PanelItem.Words(foot, 1, isBold: true) : []]),
        ];

        // Letters for the types take the most room, and are what is drawn where names do not fit.
        var letters = LayoutPicture.Names(result, double.PositiveInfinity);
        string Foot(int page, int more) => textPages is { } text ? PaperDraft.Number(page, 1 + text + more) : "";
        var frame = PageFrame.Fit(content, [.. Items(letters, drawn: null, Foot(1, 0)).Select(i => i.HeightMm)], paper);
        SheetDraft draft = new(frame.Scale, frame.Page, content);
        faults = faults.IsDefault ? [] : faults;
        var tooSmall = Draw(draft, result, laying, LetterSizes.OnPaper, PageFrame.Around(content, frame.Scale), faults);
        (double WidthMm, double HeightMm) size = (frame.Page.Width / frame.Scale, frame.Page.Height / frame.Scale);
        var closer = CloserView.Of(result, draft, tooSmall, faults, count => count == 1 ? "larger on the last page" : "larger on the last pages", CloserPage.Shape(size), (window, pods) => CloserPage.Draft(size, window, pods));
        PanelItem.DrawAll(draft, frame, Items(LayoutPicture.Names(result, frame.Scale), draft, Foot(1, closer.Length)));
        return
        [
            draft.Finish(LayoutPicture.Title(result), ""),
            .. closer.Select((view, i) => CloserPage.Written(view, size, running, Foot(2 + (textPages ?? 0) + i, closer.Length))),
        ];
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

    /// <summary>All but marks and words.</summary>
    /// <returns>Where the numbers of stretches that stay unsupported are to point.</returns>
    public static ImmutableArray<Point2> DrawThings(SheetDraft draft, PlanResult result, ImmutableArray<PodFault> faults)
    {
        var (job, layout) = (result.Job, result.Layout!);
        draft.AddBox(SheetDraft.Paper, "paper", draft.Page);
        BoardDrawing.Draw(draft, job.Shop.Board);
        PartDrawing.Draw(draft, Shape(result), GrainDeg(result), LayoutPicture.ProgramZero(job, layout.Placement));
        StandingDrawing.Draw(draft, job, layout);
        PodDrawing.Bodies(draft, job.Shop.Board, layout, StandingChanges.Of(job, layout).Staying);
        FaultDrawing.Frames(draft, layout, faults);
        return SupportDrawing.Unsupported(draft, Shape(result), result.Unsupported, layout.Placement);
    }

    // The pods whose numbers are too small to be read.
    private static IReadOnlyList<int> Draw(
        SheetDraft draft, PlanResult result, Laying laying, LetterSizes sizes, Box2 around, ImmutableArray<PodFault> faults)
    {
        var (job, layout, shape) = (result.Job, result.Layout!, Shape(result));
        var unsupported = DrawThings(draft, result, faults);
        foreach (var at in laying.Marks.Select(m => m.At))
        {
            // The dot of a mark, which is drawn last: words keep off the lines through it.
            Point2 x = new(0.9 * draft.Scale, 0), y = new(0, 0.9 * draft.Scale);
            draft.KeepOff(at - x, at + x);
            draft.KeepOff(at - y, at + y);
            draft.AddDot(at);
        }

        PodLabels labels = new(draft, job.Shop.Board, layout, LayoutPicture.Names(result, draft.Scale), sizes) { LeavesOutTooSmall = true };
        labels.Inside();
        PartDrawing.GrainArrow(draft, shape, GrainDeg(result), sizes.IsTight ? labels.WantedOutside() : []);

        // Before the words beside pods, which have more places to go to.
        foreach (var mark in laying.Marks)
        {
            MarkFlag.Draw(draft, job.Shop.Board, shape, mark, around, sizes);
        }

        SupportDrawing.Numbers(draft, shape, unsupported, StretchWords.CardMark);
        labels.Outside();
        FaultDrawing.Words(draft, job.Shop.Board, layout, faults);

        PartDrawing.ZeroName(draft, LayoutPicture.ProgramZero(job, layout.Placement));
        ZoneNames.Draw(draft, job.Shop);
        PieceNames.Draw(draft, shape, LayoutPicture.Loose(job, layout.Placement));
        return labels.TooSmall;
    }
}

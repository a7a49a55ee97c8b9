using PodLayout.Geometry;
using PodLayout.Handover.Picture;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Parts;
using PodLayout.Shops;

namespace PodLayout.Handover;

/// <summary>The picture of a layout, or of what stands in the way of one.</summary>
public static class LayoutPicture
{
    /// <summary>The picture as SVG, an A4 page.</summary>
    public static string Svg(PlanResult result) => SvgWriter.Write(Draw(result));

    /// <summary>The picture as a sheet, for any output.</summary>
    public static Sheet Draw(PlanResult result)
    {
        result = result with { Mark = LayoutMark.Of(result) };
        var (job, layout) = (result.Job, result.Layout);
        var placement = layout?.Placement ?? WithoutLayout(job);
        var turn = Turn.FromDegrees(placement.AngleDeg);
        var shape = job.Part.Shape.Laid(turn, placement.ZeroOnBoard);
        var grainDeg = job.Part.GrainDeg + placement.AngleDeg;
        var board = job.Shop.Board;
        var content = Content(board, shape);

        // The names that fit into pods depend on the scale, and the words of the panel on the names: letters take the
        // same room or more, so the frame is found with letters.
        var letters = Names(result, double.PositiveInfinity);
        var frame = PageFrame.Fit(content, [.. PanelText.Items(result, letters, grainDeg, drawn: null).Select(i => i.HeightMm)]);
        var names = Names(result, frame.Scale);

        var draft = new SheetDraft(frame.Scale, frame.Page, content);
        draft.AddBox(SheetDraft.Paper, "paper", frame.Page);
        BoardDrawing.Draw(draft, board);
        PartDrawing.Draw(draft, shape, grainDeg, ProgramZero(job, placement));
        PodDrawing.Kept(draft, job);
        if (layout is not null)
        {
            PodDrawing.Bodies(draft, board, layout);
            SupportDrawing.Ticks(draft, shape, layout);
            var unsupported = SupportDrawing.Unsupported(draft, shape, result.Unsupported, placement);
            HoldingDrawing.Bars(draft, board, layout);
            HoldingDrawing.Weakest(draft, layout);
            PodLabels labels = new(draft, board, layout, names, LetterSizes.OnPaper);
            labels.Inside();
            PartDrawing.GrainArrow(draft, shape, grainDeg);
            labels.Outside();
            SupportDrawing.Numbers(draft, shape, unsupported);
            SupportDrawing.Worst(draft, shape, layout, job.Support, grainDeg);
        }
        else
        {
            PartDrawing.GrainArrow(draft, shape, grainDeg);
            SupportDrawing.Numbers(draft, shape, SupportDrawing.Unsupported(draft, shape, result.Unsupported, placement));
        }

        PartDrawing.ZeroName(draft, ProgramZero(job, placement));
        PieceNames.Draw(draft, shape, Loose(job, placement));
        PanelItem.DrawAll(draft, frame, PanelText.Items(result, names, grainDeg, draft));
        return draft.Finish(Title(result), Description(result)) with { Mark = LayoutMark.Sentence(result.Mark) };
    }

    /// <summary>
    /// What stands in the pods for each type's name: the name where it fits at a scale, else a letter; nothing where all pods are of one
    /// type, which is then named beside the drawing alone.
    /// </summary>
    internal static IReadOnlyDictionary<string, string> Names(PlanResult result, double scale)
    {
        var types = result.Job.Shop.Pods.Select(p => p.Name).ToList();
        if (result.Layout is { } layout && NamesFit(layout, scale))
        {
            return types.ToDictionary(n => n, n => n, StringComparer.Ordinal);
        }

        var used = result.Layout?.Pods.Select(p => p.Type.Name).ToHashSet(StringComparer.Ordinal) ?? [];
        return types.OrderBy(n => used.Contains(n) ? 0 : 1).Select((n, i) => (Name: n, Letter: used.Count == 1 ? "" : Letter(i)))
            .ToDictionary(p => p.Name, p => p.Letter, StringComparer.Ordinal);
    }

    /// <summary>The board, and the part or its blank where they reach beyond.</summary>
    internal static Box2 Content(GridBoard board, PartShape shape) => Box2.Around(
    [
        default, new(board.WidthMm, board.LengthMm), .. shape.Outline.Points, .. shape.Blank.SelectMany(r => r.Points),
    ]);

    /// <summary>Names of the loose pieces that no pod holds, each with a point of the board inside it; a frame all round has none.</summary>
    internal static IEnumerable<(string Name, Point2 At, double AcrossMm)> Loose(Job job, Placement placement) =>
        job.Offcuts.Where(p => !p.IsAround && !job.Part.Shape.Held.Any(h => h.Name == p.Name))
            .Select(p => (p.Name, Turn.FromDegrees(placement.AngleDeg).Apply(p.Inside) + placement.ZeroOnBoard, Math.Max(p.WidthMm, p.HeightMm)));

    /// <summary>Where the program's zero lies on the board; null without a program.</summary>
    internal static Point2? ProgramZero(Job job, Placement placement) => job.ProgramZero is { } zero
        ? Turn.FromDegrees(placement.AngleDeg).Apply(zero.InDrawing) + placement.ZeroOnBoard : null;

    // Where it was to lie; else in the middle of the usable area.
    private static Placement WithoutLayout(Job job)
    {
        if (job.Placement is PlacementWish.Given given)
        {
            return new(given.ZeroOnBoard, given.AngleDeg);
        }

        var angle = job.Placement switch
        {
            PlacementWish.Search search => search.AnglesDeg[0],
            PlacementWish.SearchInterval interval => interval.FromDeg,
            _ => 0,
        };
        var middle = job.Part.Shape.Outline.Laid(Turn.FromDegrees(angle), default).Bounds.Centre;
        return new(job.Shop.Board.UsableArea.Centre - middle, angle);
    }

    private static string Letter(int index) => index < 26 ? ((char)('A' + index)).ToString() : "T" + CsvText.Count(index + 1);

    // Within the seal.
    private static bool NamesFit(Layout layout, double scale) => layout.Pods.All(p =>
    {
        const double leastSideMm = 6.5, roomMm = 0.6;
        return Math.Min(p.ExtentXMm, p.ExtentYMm) >= leastSideMm * scale
            && TextMeasure.Width(p.Type.Name, LetterSizes.OnPaper.Least) <= (p.ExtentXMm - 2 * Math.Max(0, p.Type.SealInsetAboveMm)) / scale - roomMm;
    });

    internal static string Title(PlanResult result) => (result.DoesNotHold ? "DOES NOT HOLD: " : "") + Named(result);

    private static string Named(PlanResult result) =>
        (result.Layout is null ? "No layout: " : "Layout: ") + (result.Job.Name.Length > 0 ? result.Job.Name : result.Job.Part.Name);

    // The same in words; the summary holds nothing that the picture does not show.
    internal static string Description(PlanResult result) => Summary.Write(result).Replace('\n', ' ').TrimEnd();
}

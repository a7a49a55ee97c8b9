using PodLayout.Geometry;

namespace PodLayout.Parts;

/// <summary>
/// A sheet frame or a blank around the part looks like a part with a hole of the part's shape. Where the two cannot be told apart for
/// certain the choice is left to whoever knows; a rectangle on a frame's layer with more signs of a sheet is left out.
/// </summary>
/// <param name="Frame">The ring around everything.</param>
/// <param name="Inside">The rings inside it that may be parts, the largest first.</param>
/// <param name="IsSure">Whether it can be shown that the frame is no part.</param>
internal sealed record FrameDoubt(RoledRing Frame, IReadOnlyList<RoledRing> Inside, bool IsSure)
{
    /// <summary>Rings on another layer that take this share of a rectangle may be parts in a frame.</summary>
    private const double DoubtfulShare = 0.05;

    /// <summary>Where there are other signs of a frame, less will do.</summary>
    private const double LeastShare = 0.003;

    /// <summary>In what is no rectangle, a ring on another layer that takes this share may be a part in its blank.</summary>
    private const double LargeShare = 0.5;

    /// <summary>A rectangle fills this share of the box around it.</summary>
    private const double RectangleShare = 0.98;

    /// <summary>Sheets are drawn to the millimetre, mm.</summary>
    private const double SheetMm = 1;

    /// <summary>Trimmed sheets of ISO 216 (A0 to A4), the drawing spaces of ISO 5457 and ANSI/ASME Y14.1 sheets A to E, mm; from memory.</summary>
    private static readonly (double Long, double Short)[] Sheets =
    [
        (1189, 841), (841, 594), (594, 420), (420, 297), (297, 210), (1159, 821), (811, 574), (564, 400), (390, 277), (277, 180), (277, 190),
        (11 * 25.4, 8.5 * 25.4), (17 * 25.4, 11 * 25.4), (22 * 25.4, 17 * 25.4), (34 * 25.4, 22 * 25.4), (44 * 25.4, 34 * 25.4),
    ];

    private static readonly double[] Scales = [1, 2, 2.5, 5, 10];

    /// <summary>On one layer a single hole that takes this share of a rectangle may be the part.</summary>
    private const double LargeHoleShare = 0.15;

    /// <summary>Whether the frame is rather the part, with a large hole: taken for it with a word.</summary>
    public bool IsSlight { get; private init; }

    /// <summary>The doubt about the ring around everything; null when there is none.</summary>
    public static FrameDoubt? About(RoledRing outer, RingTree tree, Func<string, int> textsOn)
    {
        var isRectangle = IsRectangle(outer);
        // Sheet edge and border lie within each other: the innermost of them is the frame.
        var (frame, frames) = (outer, 1);
        while (isRectangle && Border(frame, tree) is { } border)
            (frame, frames) = (border, frames + 1);
        var isOwnLayer = !tree.Within(frame).Any(r => OnSame(r, outer) && r.AreaMm2 >= LeastShare * frame.AreaMm2 && !IsRectangle(r));
        var foreign = tree.Within(frame).Where(r => !OnSame(r, outer) && r.Role is null && !LayerWords.SaysHole(r.Layer)).OrderByDescending(r => r.AreaMm2).ToList();
        if (foreign.Count == 0)
            return AboutSameLayer(outer, frame, frames, tree);
        var share = foreign.Sum(r => r.AreaMm2) / frame.AreaMm2;
        var isNamed = LayerWords.SaysFrame(outer.Layer);
        var isSheet = isRectangle && (IsSheet(outer) || IsSheet(frame) || frames > 1 || outer.IsPage);
        var insideIsOutline = LayerWords.SaysOutline(foreign[0].Layer) && !LayerWords.SaysOutline(outer.Layer);
        if (LayerWords.SaysOutline(outer.Layer) && !insideIsOutline && !isNamed && !(isSheet && frames > 1))
            return null;
        var isDoubtful = isNamed || isSheet || insideIsOutline ? share >= LeastShare : isRectangle ? share >= DoubtfulShare : share >= LargeShare;
        if (!isDoubtful)
            return null;
        // A title block has words, or boxes of its own.
        var hasTitle = textsOn(outer.Layer) > 0 || tree.Within(frame).Any(r => OnSame(r, outer));
        var likely = foreign.Where(r => r.AreaMm2 >= 0.01 * foreign[0].AreaMm2).ToList();
        return new(outer, foreign, isNamed && isRectangle && isOwnLayer && likely.Count == 1 && (isSheet || hasTitle || insideIsOutline));
    }

    /// <summary>
    /// On one layer the size of a sheet, the page itself or a second frame gives reason to doubt; a single large hole in a rectangle a slight
    /// one.
    /// </summary>
    private static FrameDoubt? AboutSameLayer(RoledRing outer, RoledRing frame, int frames, RingTree tree)
    {
        var inside = tree.Within(frame).Where(r => r.Role is null && !LayerWords.SaysHole(r.Layer)).OrderByDescending(r => r.AreaMm2).ToList();
        if (IsRectangle(outer) && frames == 1 && inside.Count == 1 && tree.Within(inside[0]).Count == 0 && !IsSheet(outer) && !outer.IsPage)
        {
            return inside[0].AreaMm2 >= LargeHoleShare * outer.AreaMm2 && !LayerWords.SaysOutline(outer.Layer)
                ? new(outer, inside, false) { IsSlight = true } : null;
        }

        var isSheet = IsRectangle(outer) && (outer.IsPage || (IsSheet(outer) && tree.Within(frame).Count > 0 && inside.Exists(r => tree.Within(r).Count > 0 || r.AreaMm2 >= DoubtfulShare * frame.AreaMm2)));
        return isSheet && inside.Count > 0 && !(frames == 1 && LayerWords.SaysOutline(outer.Layer)) && inside[0].AreaMm2 >= LeastShare * frame.AreaMm2
            ? new(outer, inside, false) : null;
    }

    private static bool OnSame(RoledRing a, RoledRing b) => a.Layer.Equals(b.Layer, StringComparison.OrdinalIgnoreCase);

    private static RoledRing? Border(RoledRing frame, RingTree tree)
    {
        var within = tree.Within(frame);
        // The border holds all else but boxes of its own layer in the margin (zone letters).
        var border = within.Where(r => OnSame(r, frame) && IsRectangle(r) && tree.Within(r).Count > 0).MaxBy(r => r.AreaMm2);
        return border is not null && border.AreaMm2 >= 0.7 * frame.AreaMm2 && within.All(r => ReferenceEquals(r, border) || OnSame(r, frame)) ? border : null;
    }

    public static bool IsRectangle(RoledRing ring) => ring.AreaMm2 >= RectangleShare * ring.Bounds.Width * ring.Bounds.Height;

    private static bool IsSheet(RoledRing ring)
    {
        Box2 box = ring.Bounds;
        double longer = Math.Max(box.Width, box.Height), shorter = Math.Min(box.Width, box.Height);
        return Scales.Any(s => Sheets.Any(t => Math.Abs(longer - s * t.Long) <= SheetMm * s && Math.Abs(shorter - s * t.Short) <= SheetMm * s));
    }
}

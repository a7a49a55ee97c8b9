using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Parts;

namespace PodLayout.Handover.Picture;

/// <summary>How far the part reaches beyond its pods: a tick at each edge point, the worst one called out.</summary>
internal static class SupportDrawing
{
    /// <summary>From this share of the limit on a tick is drawn heavily.</summary>
    public const double HighShare = 0.85;

    /// <summary>From this share of the limit on a tick is drawn in the middle weight.</summary>
    public const double MiddleShare = 0.6;

    /// <summary>Length of a tick at the limit, mm of paper.</summary>
    public const double TickMm = 2.4;

    // Directions in which a label is looked for, from the one that leads away from the part.
    private static readonly double[] Turns = [0, 20, -20, 40, -40, 65, -65, 90, -90, 105, -105, 120, -120, 135, -135, 150, -150, 165, -165, 180];

    /// <summary>Half the size of the sign of an interior point, mm of paper.</summary>
    public const double PlusMm = 0.45;

    /// <param name="draft">The sheet.</param>
    /// <param name="shape">The part, board coordinates.</param>
    /// <param name="layout">The layout.</param>
    public static void Ticks(SheetDraft draft, PartShape shape, Layout layout)
    {
        var turn = Turn.FromDegrees(layout.Placement.AngleDeg);
        var sides = Sides(shape);
        var strokes = new[] { "support-low", "support-middle", "support-high" }
            .ToDictionary(s => s, _ => new List<Point2>(), StringComparer.Ordinal);
        foreach (var point in layout.SupportPoints)
        {
            var at = turn.Apply(point.OnPart) + layout.Placement.ZeroOnBoard;
            var style = StyleOf(point.ShareOfLimit);
            if (point.IsEdge)
            {
                var length = TickMm * draft.Scale * Math.Clamp(point.ShareOfLimit, 0.08, 1.3);
                strokes[style].AddRange([at, at + Outwards(sides, at) * length]);
            }
            else if (IsBetweenPods(layout, at))
            {
                var half = PlusMm * draft.Scale;
                strokes[style].AddRange([at - new Point2(half, 0), at + new Point2(half, 0)]);
                strokes[style].AddRange([at - new Point2(0, half), at + new Point2(0, half)]);
            }
        }

        foreach (var (style, ends) in strokes.Where(s => s.Value.Count > 0))
        {
            draft.Add(SheetDraft.Support, new Primitive.Strokes(style, [.. ends]));
        }
    }

    /// <summary>Whether points inside the part are in the drawing: those under pods are not.</summary>
    public static bool ShowsInterior(Layout layout)
    {
        var turn = Turn.FromDegrees(layout.Placement.AngleDeg);
        return layout.SupportPoints.Any(p => !p.IsEdge && IsBetweenPods(layout, turn.Apply(p.OnPart) + layout.Placement.ZeroOnBoard));
    }

    private static bool IsBetweenPods(Layout layout, Point2 at) => !layout.Pods.Any(p => p.BodyBox.Contains(at));

    /// <summary>The worst point: a circle, the ellipse of the limit, and a label where there is room.</summary>
    public static void Worst(SheetDraft draft, PartShape shape, Layout layout, SupportRules rules, double grainDeg)
    {
        if (LayoutFiling.WorstPoint(layout) is not { } worst)
        {
            return;
        }

        var at = Turn.FromDegrees(layout.Placement.AngleDeg).Apply(worst.OnPart) + layout.Placement.ZeroOnBoard;
        var (along, across) = worst.Limit switch
        {
            SupportLimit.Edge => (rules.OverhangAlongGrainMm, rules.OverhangAcrossGrainMm),
            SupportLimit.Interior => (rules.InteriorSpanMm ?? 0, rules.InteriorSpanMm ?? 0),
            _ => (rules.ThinFloorSpanMm, rules.ThinFloorSpanMm),
        };
        Limit(draft, at, along, across, Turn.FromDegrees(grainDeg));
        draft.Add(SheetDraft.Support, new Primitive.Disc("worst", at, 1.3 * draft.Scale));
        var words = Summary.Percent(worst.ShareOfLimit) + " of limit";
        Callout(draft, shape, at, box => draft.AddText(
            SheetDraft.Labels, "worst-label", box.Centre, words, 2.5, TextAnchor.Middle), draft.TextBox(default, words, 2.5, true));
    }

    /// <summary>The stretches beyond the limit of every pod.</summary>
    /// <returns>Where the number of each is to point.</returns>
    public static ImmutableArray<Point2> Unsupported(
        SheetDraft draft, PartShape onBoard, ImmutableArray<UnsupportedStretch> stretches, Placement placement)
    {
        var turn = Turn.FromDegrees(placement.AngleDeg);
        var middles = ImmutableArray.CreateBuilder<Point2>();
        foreach (var s in stretches)
        {
            Point2 from = turn.Apply(s.From) + placement.ZeroOnBoard, to = turn.Apply(s.To) + placement.ZeroOnBoard;
            if (s.IsEdge && s.From != s.To && EdgePath.Between(onBoard, from, to, s.LengthMm) is { } path)
            {
                draft.AddLine(SheetDraft.Support, "unsupported", path);
                middles.Add(path[path.Length / 2]);
            }
            else
            {
                Symbols.Cross(draft, SheetDraft.Support, "unsupported-spot", from, 1.2 * draft.Scale);
                middles.Add(from);
            }
        }

        return middles.ToImmutable();
    }

    /// <summary>The numbers of such stretches, with what stands before each: those of the summary, or of the card.</summary>
    public static void Numbers(SheetDraft draft, PartShape onBoard, ImmutableArray<Point2> middles, string before = "")
    {
        for (var i = 0; i < middles.Length; i++)
        {
            var number = before + (i + 1).ToString(CultureInfo.InvariantCulture);
            var size = (Symbols.FlagMm(number, isClose: false) + 0.1) * draft.Scale;
            Callout(
                draft, onBoard, middles[i], box => Symbols.Flag(draft, SheetDraft.Labels, box.Centre, number),
                new(-size, -size, size, size));
        }
    }

    /// <summary>The style of a tick.</summary>
    public static string StyleOf(double share) =>
        share >= HighShare ? "support-high" : share >= MiddleShare ? "support-middle" : "support-low";

    // The ellipse as far as it lies on the board: the numbers and the panel stay readable.
    private static void Limit(SheetDraft draft, Point2 at, double alongMm, double acrossMm, Turn grain)
    {
        const int chords = 180;
        var run = new List<Point2>();
        for (var i = 0; i <= chords; i++)
        {
            var (sin, cos) = Math.SinCos(2 * Math.PI * i / chords);
            var p = at + grain.Apply(new(alongMm * cos, acrossMm * sin));
            if (draft.Content.Contains(p))
            {
                run.Add(p);
            }

            if (run.Count > 1 && (i == chords || !draft.Content.Contains(p)))
            {
                draft.AddLine(SheetDraft.Support, "limit", [.. run]);
            }

            if (!draft.Content.Contains(p))
            {
                run.Clear();
            }
        }
    }

    /// <summary>A label near a point, joined to it by a line: outside the part by preference, off everything already placed.</summary>
    /// <param name="draft">The sheet.</param>
    /// <param name="shape">The part, board coordinates.</param>
    /// <param name="at">The point.</param>
    /// <param name="draw">Draws the label into its box.</param>
    /// <param name="size">The label's box about zero.</param>
    /// <param name="fromEdgeMm">How far it stays from the part's edges, mm of paper.</param>
    /// <param name="mostCoveredMm">How far the line to the label may run over other things, mm of paper.</param>
    /// <param name="farthestMm">How long the line may be, mm of paper.</param>
    /// <returns>Whether there was room.</returns>
    public static bool Callout(
        SheetDraft draft, PartShape shape, Point2 at, Action<Box2> draw, Box2 size, double fromEdgeMm = 0.8 * TickMm,
        double mostCoveredMm = double.PositiveInfinity, double farthestMm = double.PositiveInfinity)
    {
        var u = draft.Scale;
        var outwards = Outwards(Sides(shape), at);
        var places = from distance in new[] { 7.0, 9, 12, 16, 21, 28, 40, 5.5, 4, 3.2, 2.5, 2, 1.6, 1.2 }
                     from turnDeg in Turns
                     let direction = Turn.FromDegrees(turnDeg).Apply(outwards)
                     let middle = at + direction * (distance * u)
                         + new Point2(Math.Sign(Math.Round(direction.X, 3)) * size.Width / 2, Math.Sign(Math.Round(direction.Y, 3)) * size.Height / 2)
                     select size.Moved(middle);
        var free = places.Where(p => draft.IsFree(p.Grow(0.6 * u)) && !draft.IsCrossed(p.Grow((0.6 + fromEdgeMm) * u))
            && !draft.HasWordBeyond(at, Nearest(p, at)) && !draft.IsAtDot(at, Nearest(p, at))).ToList();

        // Over nothing where that can be; else the nearest.
        var covered = free.ConvertAll(p => (Place: p, Mm: draft.Covered(at, Nearest(p, at))));
        bool IsClear(Box2 place) => !draft.IsOnPort(place) && !draft.CrossesLeader(at, Nearest(place, at));
        double Length(Box2 place) => (Nearest(place, at) - at).Length / u;
        covered.RemoveAll(c => Length(c.Place) > farthestMm);

        // A port that stays plugged is rather hidden than that the line becomes so much longer.
        const double overPortMm = 8;
        var over = covered.Where(c => c.Mm == 0).Select(c => Length(c.Place)).FirstOrDefault(double.PositiveInfinity);
        foreach (var (place, _) in covered.Where(c => c.Mm == 0 && IsClear(c.Place) && Length(c.Place) <= over + overPortMm).Concat(covered.Where(c => c.Mm == 0))
            .Concat(covered.Where(c => c.Mm <= mostCoveredMm)).Where(c => !draft.RunsAlongLine(at, Nearest(c.Place, at))).Take(1))
        {
            var grown = place.Grow(0.6 * u);
            draft.AddLeader(at, Nearest(place, at));
            draft.AddBox(SheetDraft.Labels, "knockout", place.Grow(0.3 * u));
            draw(place);
            draft.Take(grown);
            draft.AddWord(place);
            return true;
        }

        return false;
    }

    private static Point2 Nearest(Box2 box, Point2 p) =>
        new(Math.Clamp(p.X, box.MinX, box.MaxX), Math.Clamp(p.Y, box.MinY, box.MaxY));

    // The edges of a part, each with its direction away from the wood.
    private static (Point2 A, Point2 B, Point2 Outwards)[] Sides(PartShape shape) =>
    [
        .. shape.Holes.Select(h => (Ring: h, Sign: -1)).Prepend((Ring: shape.Outline, Sign: 1))
            .SelectMany(r => EdgePath.Sides(r.Ring).Select(s => (
                s.A, s.B, new Point2((s.B - s.A).Y, -(s.B - s.A).X) * (r.Sign / Math.Max((s.B - s.A).Length, 1e-9))))),
    ];

    // Away from the wood at a point of its edge; at a corner halfway between the two sides.
    private static Point2 Outwards((Point2 A, Point2 B, Point2 Outwards)[] sides, Point2 at)
    {
        var distances = Array.ConvertAll(sides, s => EdgePath.Distance(s.A, s.B, at));
        var nearest = distances.Min();
        Point2 sum = default;
        for (var i = 0; i < sides.Length; i++)
        {
            sum += distances[i] <= nearest + 0.02 ? sides[i].Outwards : default;
        }

        return sum.Length > 1e-6 ? sum * (1 / sum.Length) : new(0, 1);
    }
}

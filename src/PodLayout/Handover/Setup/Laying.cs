using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Handover.Picture;
using PodLayout.Layouts;
using PodLayout.Parts;
using PodLayout.Shops;

namespace PodLayout.Handover.Setup;

/// <summary>How the part, or the blank that it is cut out of, is laid down so that it lies where it was planned.</summary>
/// <param name="Marks">Places on the edge of what is laid with their coordinates.</param>
/// <param name="Gaps">Pins and stops near it, the nearest first.</param>
internal sealed record Laying(ImmutableArray<LayingMark> Marks, ImmutableArray<StopGap> Gaps)
{
    // From this turn of the edge on a corner can be felt with a square, degrees. Common practice, no source.
    private const double CornerDeg = 30;

    // Sides shorter than this beside it make a corner a notch or a rounding.
    private const double SideMm = 4;

    private const int MostCorners = 4;

    private const string Corner = "corner";
    private const string Hollow = "inner corner";

    // Places that are no farther apart are one, mm.
    private const double SameMm = 0.01;

    // Marks nearer than this to each other say the same.
    private const double ApartMm = 8;

    /// <summary>Pins and stops farther away are not measured from, mm. Common practice, no source.</summary>
    public const double NearMm = 60;

    // Corners within this share of half the extent from the middle lie neither left nor right, neither near nor far.
    private const double MiddleShare = 0.15;

    private const int MostGaps = 6;

    /// <summary>Whether it is the blank that is laid: where it reaches beyond the part the part's edges are not there yet.</summary>
    public bool IsBlank { get; private init; }

    /// <summary>What is laid, in a word.</summary>
    public string Thing => IsBlank ? "blank" : "part";

    /// <summary>The extent of what is laid, on the board.</summary>
    public Box2 Bounds { get; private init; }

    public static Laying Of(PlanResult result, Layout layout)
    {
        var part = result.Job.Part.Shape.Laid(Turn.FromDegrees(layout.Placement.AngleDeg), layout.Placement.ZeroOnBoard);
        var shape = part.Blank.IsEmpty ? part : BlankOf(part);
        var outline = shape.Outline.CounterClockwise();
        List<LayingMark> marks = [];
        foreach (var (what, isX, isLow) in new[]
        {
            ("leftmost edge", true, true), ("edge nearest to you", false, true), ("rightmost edge", true, false),
            ("edge farthest from you", false, false),
        })
        {
            var touch = Touch(outline, isX, isLow);
            var same = marks.FindIndex(m => (m.At - touch).Length < SameMm);
            if (same >= 0)
            {
                marks[same] = marks[same] with { What = marks[same].What + ", " + what, XCounts = true, YCounts = true };
            }
            else
            {
                Add(marks, what, touch, isX, !isX);
            }
        }

        // Where an edge ends in a corner the corner says both, whether or not it is one of those that lie farthest apart.
        var sharp = Sharp(outline);
        for (var i = 0; i < marks.Count; i++)
        {
            if (sharp.Exists(c => (marks[i].At - c).Length < SameMm))
            {
                marks[i] = marks[i] with { What = Corner, XCounts = true, YCounts = true };
            }
        }

        foreach (var corner in FarApart(sharp).Where(c => marks.TrueForAll(m => (m.At - c).Length >= ApartMm)))
        {
            Add(marks, IsHollow(outline, corner) ? Hollow : Corner, corner, true, true);
        }

        var bounds = outline.Bounds;
        return new([.. marks.Select(m => m.What is Corner or Hollow ? m with { What = CornerName(m, marks, bounds) } : m)], Nearest(shape, result.Job.Shop.Board))
        {
            IsBlank = !part.Blank.IsEmpty,
            Bounds = bounds,
        };
    }

    // The piece of the blank that the part is cut out of, with what is cut out of it already.
    private static PartShape BlankOf(PartShape part)
    {
        var outer = part.Blank.Where(r => r.SignedAreaMm2 > 0).DefaultIfEmpty(part.Blank[0]).ToList();
        var around = outer.MaxBy(r => (part.Outline.Points.Count(r.Contains), r.AreaMm2))!;
        return new(around, [.. part.Blank.Where(r => r.SignedAreaMm2 < 0 && around.Contains(r.Points[0])).Select(r => r.CounterClockwise())], []);
    }

    // Of several corners on one side the one farthest out has the side's name.
    private static string CornerName(LayingMark mark, List<LayingMark> marks, Box2 bounds)
    {
        string Side(Point2 p)
        {
            double x = (p.X - bounds.Centre.X) / (bounds.Width / 2), y = (p.Y - bounds.Centre.Y) / (bounds.Height / 2);
            string[] words =
            [
                Math.Abs(y) < MiddleShare ? "" : y < 0 ? "near" : "far", Math.Abs(x) < MiddleShare ? "" : x < 0 ? "left" : "right", mark.What,
            ];
            return string.Join(' ', words.Where(w => w.Length > 0));
        }

        var side = Side(mark.At);
        var first = marks.Where(m => m.What == mark.What && Side(m.At) == side).MaxBy(m => Math.Round((m.At - bounds.Centre).Length, 6));
        return first == mark ? side : mark.What;
    }

    private static void Add(List<LayingMark> marks, string what, Point2 at, bool xCounts, bool yCounts) =>
        marks.Add(new("E" + CsvText.Count(marks.Count + 1), what, at, xCounts, yCounts));

    // Where a straightedge along X or Y touches the outline; of a straight edge the end nearer to the datum, of one across from it
    // the other end, so that a turn shows at one of the two.
    private static Point2 Touch(Ring outline, bool isX, bool isLow)
    {
        double Off(Point2 p) => (isX ? p.X : p.Y) * (isLow ? 1 : -1);
        var most = outline.Points.Min(Off);
        return outline.Points.Where(p => Off(p) <= most + 1e-6).MinBy(p => (isX ? p.Y : p.X) * (isLow ? 1 : -1));
    }

    private static List<Point2> Sharp(Ring outline)
    {
        var points = outline.Points;
        List<Point2> sharp = [];
        for (var i = 0; i < points.Length; i++)
        {
            Point2 before = points[i] - points[(i + points.Length - 1) % points.Length], after = points[(i + 1) % points.Length] - points[i];
            var turn = Math.Abs(Math.Atan2(before.Cross(after), before.Dot(after))) * 180 / Math.PI;
            if (turn >= CornerDeg && before.Length >= SideMm && after.Length >= SideMm)
            {
                sharp.Add(points[i]);
            }
        }

        return sharp;
    }

    // Whether the edge turns into the wood there.
    private static bool IsHollow(Ring outline, Point2 corner)
    {
        var points = outline.Points;
        var i = points.IndexOf(corner);
        Point2 before = corner - points[(i + points.Length - 1) % points.Length], after = points[(i + 1) % points.Length] - corner;
        return before.Cross(after) * outline.SignedAreaMm2 < 0;
    }

    // Sharp corners as far apart as can be, beginning at the one nearest to the datum.
    private static List<Point2> FarApart(List<Point2> corners)
    {
        List<Point2> chosen = [], sharp = [.. corners];
        while (chosen.Count < MostCorners && sharp.Count > 0)
        {
            var next = chosen.Count == 0
                ? sharp.MinBy(p => p.X + p.Y) : sharp.MaxBy(p => Math.Round(chosen.Min(c => (c - p).Length), 6));
            sharp.Remove(next);
            chosen.Add(next);
        }

        return chosen;
    }

    private static ImmutableArray<StopGap> Nearest(PartShape shape, GridBoard board)
    {
        return
        [
            .. board.Obstacles.Where(o => o.Kind is ObstacleKind.Pin or ObstacleKind.Stop).Select(o => Gap(shape, o))
                .Where(g => g.GapMm <= NearMm).OrderBy(g => g.GapMm).ThenBy(g => g.Stop.Name, StringComparer.Ordinal).Take(MostGaps),
        ];
    }

    private static StopGap Gap(PartShape shape, Obstacle stop)
    {
        bool IsUnder(Point2 p) => PartDrawing.Within(shape.Outline, p) && !shape.Holes.Any(h => PartDrawing.Within(h, p));
        var sides = shape.Holes.Prepend(shape.Outline).SelectMany(EdgePath.Sides).ToList();
        switch (stop.Shape)
        {
            case ObstacleShape.Disc disc:
                var (at, distance) = Foot(sides, disc.Centre);
                return new(stop, Math.Max(0, distance - disc.DiameterMm / 2), at, IsUnder(disc.Centre));
            case ObstacleShape.Rectangle rectangle:
                var box = rectangle.Extent;
                var corners = SheetDraft.RingOf(box);
                var foot = corners.Points.Select(c => Foot(sides, c)).MinBy(f => f.Distance);
                var own = EdgePath.Sides(corners).ToList();
                var vertex = sides.Select(s => s.A).MinBy(p => box.Contains(p) ? 0 : own.Min(s => EdgePath.Distance(s.A, s.B, p)));
                var fromVertex = box.Contains(vertex) ? 0 : own.Min(s => EdgePath.Distance(s.A, s.B, vertex));
                return fromVertex < foot.Distance
                    ? new(stop, fromVertex, vertex, IsUnder(box.Centre)) : new(stop, foot.Distance, foot.At, IsUnder(box.Centre));
            default:
                throw new ArgumentOutOfRangeException(nameof(stop), stop.Shape, "Unknown shape.");
        }
    }

    private static (Point2 At, double Distance) Foot(List<(Point2 A, Point2 B)> sides, Point2 p)
    {
        var (a, b) = sides.MinBy(s => EdgePath.Distance(s.A, s.B, p));
        var at = EdgePath.Nearest(a, b, p);
        return (at, (p - at).Length);
    }
}

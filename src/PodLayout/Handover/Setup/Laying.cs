using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Handover.Picture;
using PodLayout.Layouts;
using PodLayout.Parts;
using PodLayout.Shops;

namespace PodLayout.Handover.Setup;

/// <summary>How the part is laid down so that it lies where it was planned.</summary>
/// <param name="Marks">Places on its edge with their coordinates.</param>
/// <param name="Gaps">Pins and stops near it, the nearest first.</param>
internal sealed record Laying(ImmutableArray<LayingMark> Marks, ImmutableArray<StopGap> Gaps)
{
    // From this turn of the edge on a corner can be felt with a square, degrees. Common practice, no source.
    private const double CornerDeg = 30;

    // Sides shorter than this beside it make a corner a notch or a rounding.
    private const double SideMm = 4;

    private const int MostCorners = 4;

    // Marks nearer than this to each other say the same.
    private const double ApartMm = 8;

    // Pins farther away are not measured from.
    private const double NearMm = 400;

    private const int MostGaps = 6;

    public static Laying Of(PlanResult result, Layout layout)
    {
        var shape = result.Job.Part.Shape.Laid(Turn.FromDegrees(layout.Placement.AngleDeg), layout.Placement.ZeroOnBoard);
        var outline = shape.Outline.CounterClockwise();
        List<LayingMark> marks = [];
        foreach (var (what, isX, isLow) in new[]
        {
            ("leftmost edge", true, true), ("edge nearest to you", false, true), ("rightmost edge", true, false),
            ("edge farthest from you", false, false),
        })
        {
            var touch = Touch(outline, isX, isLow);
            var same = marks.FindIndex(m => (m.At - touch).Length < 0.01);
            if (same >= 0)
            {
                marks[same] = marks[same] with { What = marks[same].What + ", " + what, XCounts = true, YCounts = true };
            }
            else
            {
                Add(marks, what, touch, isX, !isX);
            }
        }

        foreach (var corner in Corners(outline))
        {
            // Where an edge ends in a corner the corner says both.
            var same = marks.FindIndex(m => (m.At - corner).Length < 0.01);
            if (same >= 0)
            {
                marks[same] = marks[same] with { What = "corner: " + marks[same].What, XCounts = true, YCounts = true };
            }
            else if (marks.TrueForAll(m => (m.At - corner).Length >= ApartMm))
            {
                Add(marks, "corner", corner, true, true);
            }
        }

        return new([.. marks], Nearest(shape, result.Job.Shop.Board));
    }

    private static void Add(List<LayingMark> marks, string what, Point2 at, bool xCounts, bool yCounts) =>
        marks.Add(new("E" + CsvText.Count(marks.Count + 1), what, at, xCounts, yCounts));

    // Where a straightedge along X or Y touches the outline; of a straight edge the end nearer to the datum.
    private static Point2 Touch(Ring outline, bool isX, bool isLow)
    {
        double Off(Point2 p) => (isX ? p.X : p.Y) * (isLow ? 1 : -1);
        var most = outline.Points.Min(Off);
        return outline.Points.Where(p => Off(p) <= most + 1e-6).MinBy(p => isX ? p.Y : p.X);
    }

    // Sharp corners as far apart as can be, beginning at the one nearest to the datum.
    private static List<Point2> Corners(Ring outline)
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

        List<Point2> chosen = [];
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

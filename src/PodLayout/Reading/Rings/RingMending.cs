using PodLayout.Findings;
using PodLayout.Geometry;

namespace PodLayout.Reading.Rings;

/// <summary>
/// Mends what no tool could cut and no eye could see: vertices a hair apart, steps back at a joint, lines out and back on themselves,
/// loops without area. All that is enclosed stays enclosed to within a micrometre.
/// </summary>
internal static class RingMending
{
    private const double Flaw = Tolerances.FlawMm;

    /// <summary>A loop smaller than this in both directions is a slip at a joint, mm.</summary>
    private const double LargestKnotMm = Tolerances.ChordMm;

    /// <summary>Loops that one ring is freed of; a ring with more is drawn wrongly.</summary>
    private const int MostLoops = 50;

    /// <summary>The rings without their flaws. What encloses nothing goes to the open lines.</summary>
    /// <param name="rings">Closed lines.</param>
    /// <param name="open">Where closed lines without area are put.</param>
    /// <param name="joined">Ends that were joined across a gap, which has been told: a step back there is no news.</param>
    /// <param name="findings">Where what is mended is told.</param>
    public static List<DrawnPath> Mended(List<DrawnPath> rings, List<DrawnPath> open, HashSet<Point2> joined, DrawingFindings findings)
    {
        var mended = new List<DrawnPath>(rings.Count);
        foreach (var ring in rings)
        {
            var points = ring.Points.ToList();
            var before = points.Count;
            MergeVertices(ring, points, findings);
            CutSpikes(ring, points, joined, findings);
            if (points.Count > 2)
                CutLoops(ring, points, findings);
            if (points.Count > 2)
            {
                mended.Add(points.Count == before ? ring : ring with { Points = [.. points] });
                continue;
            }

            findings.AddAt(Severity.Mended, "ring-flat", $"{ring.Origin}: a closed line without area was taken as an open one.", ring.Points[0]);
            open.Add(ring with { Closed = false });
        }

        return mended;
    }

    private static void Tell(DrawingFindings findings, DrawnPath ring, double extentMm, Point2 at, string what) => findings.AddAt(
        extentMm <= LargestKnotMm ? Severity.Mended : Severity.Warning, "flaw-mended", $"{what} of {findings.Lengths.Length(extentMm)} on layer {ring.Layer} was taken out.", at);

    private static void MergeVertices(DrawnPath ring, List<Point2> points, DrawingFindings findings)
    {
        for (var i = points.Count - 1; i >= 0 && points.Count > 2; i--)
        {
            var step = (points[i] - points[(i + points.Count - 1) % points.Count]).Length;
            if (step > Flaw)
                continue;
            Tell(findings, ring, step, points[i], "A side");
            points.RemoveAt(i);
        }
    }

    /// <summary>Takes out vertices at which the line turns back onto itself.</summary>
    private static void CutSpikes(DrawnPath ring, List<Point2> points, HashSet<Point2> joined, DrawingFindings findings)
    {
        for (var i = 0; i < points.Count && points.Count > 2;)
        {
            var n = points.Count;
            Point2 a = points[(i + n - 1) % n], b = points[i], c = points[(i + 1) % n];
            if (!TurnsBack(a, b, c))
            {
                i++;
                continue;
            }

            if (!(joined.Contains(b) && (joined.Contains(a) || joined.Contains(c))))
                Tell(findings, ring, Math.Min((b - a).Length, (c - b).Length), b, "A step back");
            points.RemoveAt(i);
            if (points.Count > 2 && (a - c).Length <= Flaw)
                points.RemoveAt(points.IndexOf(c));
            i = Math.Max(0, Math.Min(i, points.Count) - 2);
        }
    }

    private static bool TurnsBack(Point2 a, Point2 b, Point2 c)
    {
        Point2 back = a - b, on = c - b;
        return back.Dot(on) > 0 && Math.Abs(back.Cross(on)) <= Flaw * Math.Max(back.Length, on.Length);
    }

    private static void CutLoops(DrawnPath ring, List<Point2> points, DrawingFindings findings)
    {
        for (var round = 0; round < MostLoops; round++)
        {
            if (RingCrossings.Find([new([.. points])]) is not [var crossing])
                return;
            int i = Math.Min(crossing.FirstSide, crossing.SecondSide), j = Math.Max(crossing.FirstSide, crossing.SecondSide);
            if (j - i < 2)
                return;
            // Two loops meet at the crossing: the sides after i up to j, and all others.
            List<Point2> inner = [crossing.Point, .. points[(i + 1)..(j + 1)]], outer = [.. points[..(i + 1)], crossing.Point, .. points[(j + 1)..]];
            var drop = IsSliver(inner) ? inner : IsSliver(outer) ? outer : null;
            if (drop is null)
                return;
            var box = Box2.Around(drop);
            Tell(findings, ring, Math.Max(box.Width, box.Height), crossing.Point, "A loop without area");
            points.Clear();
            foreach (var p in ReferenceEquals(drop, inner) ? outer : inner)
            {
                if (points.Count == 0 || (p - points[^1]).Length > Tolerances.SamePointMm)
                    points.Add(p);
            }

            if (points.Count > 1 && (points[0] - points[^1]).Length <= Tolerances.SamePointMm)
                points.RemoveAt(points.Count - 1);
            CutSpikes(ring, points, [], findings);
            if (points.Count < 3)
                return;
        }
    }

    private static bool IsSliver(List<Point2> loop)
    {
        var box = Box2.Around(loop);
        if (Math.Max(box.Width, box.Height) <= LargestKnotMm)
            return true;
        if (loop.Count < 3)
            return true;
        var ring = new Ring([.. loop]);
        // Twice the area by the length is the mean width of what is long and thin.
        return 2 * ring.AreaMm2 <= Flaw * ring.PerimeterMm;
    }
}

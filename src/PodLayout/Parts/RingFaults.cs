using System.Globalization;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Reading;
using PodLayout.Reading.Rings;

namespace PodLayout.Parts;

/// <summary>What keeps the lines of a drawing from being the edges of a part.</summary>
internal static class RingFaults
{
    /// <summary>Faults of one kind named one by one; the rest are counted.</summary>
    private const int MostNamed = 5;

    /// <summary>A gap up to this may be a slip of the drawing, so that a wider join gap is worth offering, mm.</summary>
    private const double WidestSlipMm = 2;

    /// <summary>Refuses open contours and branches on layers that are not ignored.</summary>
    public static void RefuseOpen(Drawing drawing, LayerRoles roles, DrawingFindings findings)
    {
        bool Counts(string layer) => roles.RoleOf(layer) is not (LayerRole.Ignore or LayerRole.Cut);
        Named(
            drawing.Branches.Where(b => Counts(b.Layer)), "ring-branch", findings,
            b => (b.Point, $"{b.Ends} line ends on layer {b.Layer} meet in one point; two were expected.", "Delete the line that is too many, or put it on a layer that is ignored."));
        Named(drawing.OpenContours.Where(c => Counts(c.Layer)), "ring-open", findings, c => Describe(c, drawing));
    }

    private static (Point2, string, string) Describe(OpenContour contour, Drawing drawing)
    {
        Point2 a = contour.Points[0], b = contour.Points[^1];
        double gapA = Distance(a, contour.NearestToStart), gapB = Distance(b, contour.NearestToEnd);
        var message = $"A line on layer {contour.Layer} does not close: it ends at {At(a)}{Nearest(contour.NearestToStart, gapA)} and at {At(b)}{Nearest(contour.NearestToEnd, gapB)}.";
        var slip = Math.Max(gapA, gapB) <= WidestSlipMm ? Math.Max(gapA, gapB) : Math.Min(gapA, gapB);
        var widen = slip > drawing.JoinGapMm && slip <= WidestSlipMm
            ? string.Create(CultureInfo.InvariantCulture, $"Close it in the drawing, or raise the join gap above {slip:0.####} mm.")
            : "Close it in the drawing, or map its layer to ignore.";
        return (a, message, widen);
    }

    private static double Distance(Point2 p, Point2? other) => other is { } o ? (o - p).Length : double.PositiveInfinity;

    private static string At(Point2 p) => string.Create(CultureInfo.InvariantCulture, $"({p.X:0.####}, {p.Y:0.####})");

    private static string Nearest(Point2? other, double gap) => other is { } o
        ? string.Create(CultureInfo.InvariantCulture, $" (nearest other end {At(o)}, {gap:0.######} mm away)") : "";

    private static void Named<T>(
        IEnumerable<T> faults, string code, DrawingFindings findings, Func<T, (Point2 At, string Message, string Remedy)> describe)
    {
        var all = faults.ToList();
        foreach (var fault in all.Take(MostNamed))
        {
            var (at, message, remedy) = describe(fault);
            findings.AddAt(Severity.Refused, code, message, at, remedy);
        }

        if (all.Count > MostNamed)
            findings.Refuse(code, $"{all.Count - MostNamed} more of this kind.", "Mend the drawing, or map the layers of construction lines to ignore.");
    }

    /// <summary>Drops rings that lie on another of the same meaning, drawn with other lines or on another layer.</summary>
    public static List<RoledRing> WithoutDoubles(List<RoledRing> rings, DrawingFindings findings)
    {
        var kept = new List<RoledRing>();
        // Rings whose layer says something come first, so that they are the ones that stay.
        foreach (var ring in rings.OrderBy(r => r.Role is null).ThenByDescending(r => r.AreaMm2))
        {
            var twin = kept.Find(k => (k.Role == LayerRole.Defect) == (ring.Role == LayerRole.Defect) && k.IsAlike(ring) && Containment.IsSame(k.Ring, ring.Ring));
            if (twin is null)
                kept.Add(ring);
            else
                findings.AddAt(Severity.Warning, "duplicate", $"A ring on layer {ring.Layer} lies on one on layer {twin.Layer}; it was dropped.", ring.Ring.Points[0]);
        }

        return kept;
    }

    /// <summary>Refuses rings that cross or touch themselves or each other; defects may cross others.</summary>
    public static void RefuseCrossings(List<RoledRing> rings, DrawingFindings findings)
    {
        var crossings = RingCrossings.Find(rings.ConvertAll(r => r.Ring));
        Named(
            crossings.Where(c => c.First == c.Second), "ring-crosses-itself", findings,
            c => (c.Point, $"A ring on layer {rings[c.First].Layer} crosses or touches itself.", "Mend the line there in the drawing."));
        Named(
            crossings.Where(c => c.First != c.Second && rings[c.First].Role != LayerRole.Defect && rings[c.Second].Role != LayerRole.Defect),
            "rings-cross", findings,
            c => (c.Point, $"Two rings cross or touch (layers {rings[c.First].Layer} and {rings[c.Second].Layer}).", "Mend one of them in the drawing, or map its layer to ignore or defect."));
    }
}

using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Reading;
using PodLayout.Reading.Rings;

namespace PodLayout.Parts;

/// <summary>
/// Lines that do not close. Engravings, centre lines and dimensions are left out with a warning when the closed rings alone make a
/// part; an edge that was not drawn to its end is refused, since without it another ring would be taken for the part.
/// </summary>
internal sealed class OpenLines(Drawing drawing, LayerRoles roles, DrawingFindings findings)
{
    /// <summary>Faults of one kind named one by one; the rest are counted.</summary>
    private const int MostNamed = 5;

    /// <summary>Nearly closed rings outside the part that are smaller than this share of it are marks and letters.</summary>
    private const double MarkShare = 0.01;

    /// <summary>An open line that would enclose this share of the part, closed by a straight line, may be the real edge.</summary>
    private const double EnclosingShare = 0.3;

    /// <summary>Lines outside the part longer in all than this share of its edge may be the real edge, if they lie around it.</summary>
    private const double OutsideShare = 0.3;

    /// <summary>Lines that lead away from the outline's corners, longer in all than this share of its edge, may belong to it.</summary>
    private const double TailShare = 0.1;

    /// <summary>A line outside the part that adds this share to it, from one point of its edge to another, may be the edge of a tenon or an ear.</summary>
    private const double EarShare = 0.001;

    /// <summary>Lines around the part are seen from its middle over more than this angle, degrees.</summary>
    private const int AroundDeg = 150;

    /// <summary>Lines whose points are looked at one by one; of more, some are left out evenly.</summary>
    private const int MostSamples = 1000;

    /// <summary>The lines that were left out with a warning, as far as they are shown.</summary>
    public ImmutableArray<ImmutableArray<Point2>> LeftOut { get; private set; } = [];

    private bool Counts(string layer) => roles.RoleOf(layer) is not (LayerRole.Ignore or LayerRole.Cut);

    private List<OpenContour> Counting => [.. drawing.OpenContours.Where(c => Counts(c.Layer))];

    /// <summary>Refuses for want of any ring that could be the outline.</summary>
    public void RefuseAll()
    {
        var open = Counting;
        var own = open.GroupBy(c => c.Layer, StringComparer.OrdinalIgnoreCase).MaxBy(g => g.Sum(c => Length(c)))?.Key;
        foreach (var near in NearlyClosed.Of(open).OrderByDescending(n => n.Ring.AreaMm2).Take(1))
            Refuse(near);
        if (!findings.HasRefusal)
            RefuseContours(open, own);
    }

    /// <summary>Leaves out what is no edge of the part, with warnings; refuses where an edge of the part itself is open.</summary>
    public void Settle(RoledRing outline, bool isChosen)
    {
        var open = Counting;
        if (open.Count == 0 || findings.HasRefusal)
            return;
        if (open.Where(c => roles.RoleOf(c.Layer) == LayerRole.Hole).ToList() is { Count: > 0 } holes)
            RefuseContours(holes, outline.Layer);
        foreach (var near in NearlyClosed.Of(open))
        {
            var isInside = Containment.IsInside(near.Ring, outline.Ring);
            if (isInside || (!isChosen && MayBeOutline(near.Layer) && near.Ring.AreaMm2 >= MarkShare * outline.AreaMm2))
                Refuse(near);
        }

        var doubtful = isChosen ? [] : open.Where(c => MayBeOutline(c.Layer)).ToList();
        if (!findings.HasRefusal && doubtful.Where(c => Encloses(c, outline)).ToList() is { Count: > 0 } enclosing)
            RefuseContours(enclosing, outline.Layer);
        if (!findings.HasRefusal && LieAround(doubtful.Where(c => !LayerWords.SaysRemark(c.Layer)).ToList(), outline) is { Count: > 0 } around)
            RefuseContours(around, outline.Layer);
        if (!findings.HasRefusal && doubtful.Where(c => c.IsTail && !LayerWords.SaysRemark(c.Layer) && !outline.Ring.Contains(Middle(c))).ToList() is { Count: > 0 } tails
            && tails.Sum(Length) > TailShare * outline.Ring.PerimeterMm)
            RefuseTails(tails, outline.Layer);
        if (!findings.HasRefusal && doubtful.Where(c => !LayerWords.SaysRemark(c.Layer) && IsEar(c, outline)).ToList() is { Count: > 0 } ears)
            RefuseEars(ears, outline.Layer);
        if (!findings.HasRefusal)
            LeaveOut(open);
    }

    private static Point2 Middle(OpenContour c) => (c.Points[(c.Points.Length - 1) / 2] + c.Points[c.Points.Length / 2]) * 0.5;

    private void RefuseTails(List<OpenContour> tails, string ownLayer) => Named(
        tails, "ring-branch",
        c => (c.Points[0], $"A line of {findings.Lengths.Length(Length(c))} on layer {c.Layer} leads away from the outline, from {findings.Lengths.At(c.Points[0])} to {findings.Lengths.At(c.Points[^1])}, and ends there: the outline may go on along it.", Remedy(c.Layer, ownLayer, "Delete the line that is too many, or close the outline")));

    private void RefuseEars(List<OpenContour> ears, string ownLayer) => Named(
        ears, "ring-branch",
        c => (c.Points[0], $"A line of {findings.Lengths.Length(Length(c))} on layer {c.Layer} runs outside the outline and begins and ends on it, at {findings.Lengths.At(c.Points[0])} and {findings.Lengths.At(c.Points[^1])}: the outline may go along it.", Remedy(c.Layer, ownLayer, "Delete the line that is too many there")));

    /// <summary>Whether a line leads from the outline to the outline, outside it, and encloses something there.</summary>
    private bool IsEar(OpenContour c, RoledRing outline) =>
        c.Points.Length > 2 && new Ring(c.Points).AreaMm2 >= EarShare * outline.AreaMm2
        && DistanceMm(outline.Ring, c.Points[0]) <= drawing.JoinGapMm && DistanceMm(outline.Ring, c.Points[^1]) <= drawing.JoinGapMm
        && !c.Points.Skip(1).Zip(c.Points, (b, a) => (a + b) * 0.5).Any(outline.Ring.Contains);

    private static double DistanceMm(Ring ring, Point2 p)
    {
        var least = double.PositiveInfinity;
        for (var i = 0; i < ring.Points.Length; i++)
        {
            Point2 a = ring.Points[i], way = ring.Points[(i + 1) % ring.Points.Length] - a;
            var share = Math.Clamp((p - a).Dot(way) / Math.Max(way.Dot(way), double.Epsilon), 0, 1);
            least = Math.Min(least, (p - a - way * share).Length);
        }

        return least;
    }

    private bool MayBeOutline(string layer) => roles.NamesOutline ? roles.RoleOf(layer) == LayerRole.Outline : roles.RoleOf(layer) is null;

    private static double Length(OpenContour c) => LinesForShow.LengthMm(c.Points);

    private static bool Encloses(OpenContour contour, RoledRing outline) =>
        contour.Points.Length > 2 && new Ring(contour.Points) is var closed && closed.AreaMm2 >= EnclosingShare * outline.AreaMm2
        && !outline.Bounds.Grow(1).Contains(closed.Bounds);

    /// <summary>The lines outside the part, where they may be its real edge: long, and on several sides of it.</summary>
    private static List<OpenContour> LieAround(List<OpenContour> contours, RoledRing outline)
    {
        if (contours.Count == 0)
            return [];
        var inside = new RegionIndex(Region.Inside(outline.Ring));
        var step = 1 + contours.Sum(c => c.Points.Length) / MostSamples;
        var seen = new bool[360];
        var outside = new List<OpenContour>();
        double length = 0;
        var middle = outline.Bounds.Centre;
        foreach (var c in contours)
        {
            var isOutside = false;
            for (var i = 0; i + 1 < c.Points.Length; i += step)
            {
                Point2 a = c.Points[i], b = c.Points[Math.Min(i + step, c.Points.Length - 1)];
                // A long line may pass through the part: in pieces as long as a twentieth of it.
                var pieces = (int)Math.Clamp((b - a).Length / (0.05 * outline.Bounds.Width + 1e-9), 1, 20);
                for (var k = 0; k < pieces; k++)
                {
                    var p = a + (b - a) * ((k + 0.5) / pieces);
                    if (inside.Contains(p))
                        continue;
                    isOutside = true;
                    length += (b - a).Length / pieces;
                    Point2 from = a + (b - a) * ((double)k / pieces) - middle, to = a + (b - a) * ((k + 1.0) / pieces) - middle;
                    Mark(seen, Math.Atan2(from.Y, from.X), Math.Atan2(to.Y, to.X));
                }
            }

            if (isOutside)
                outside.Add(c);
        }

        return length > OutsideShare * outline.Ring.PerimeterMm && seen.Count(s => s) >= AroundDeg ? outside : [];
    }

    private static void Mark(bool[] seen, double from, double to)
    {
        var span = Math.IEEERemainder(to - from, Math.Tau) * 180 / Math.PI;
        var start = (int)Math.Floor(from * 180 / Math.PI) + 720;
        for (var d = 0; d <= Math.Abs(span); d++)
            seen[(start + Math.Sign(span) * d) % 360] = true;
    }

    private void Refuse(NearlyClosed near)
    {
        var l = findings.Lengths;
        findings.AddAt(
            Severity.Refused, "ring-open",
            $"A line on layer {near.Layer} of {l.Size(near.Ring.Bounds)} does not close: between its ends {l.At(near.From)} and {l.At(near.To)} {l.Unit} is a gap of {l.Length(near.GapMm)}.",
            near.From, near.GapMm <= 10 ? $"Close it in the drawing, or join it: {JoinGap(near.GapMm)}." : "Close it in the drawing.");
    }

    /// <summary>The option that closes a gap; rounded up, since the gap itself would be left open by a hair.</summary>
    private static string JoinGap(double gapMm) => string.Create(
        CultureInfo.InvariantCulture, $"--join-gap {Math.Ceiling(gapMm * 1.01 * 100) / 100:0.##} (joinGapMm in a job)");

    private void RefuseContours(List<OpenContour> open, string? ownLayer)
    {
        Named(
            drawing.Branches.Where(b => Counts(b.Layer)).ToList(), "ring-branch",
            b => (b.Point, $"{b.Ends} line ends on layer {b.Layer} meet in one point; two were expected.", Remedy(b.Layer, ownLayer, "Delete the line that is too many")));
        Named(open, "ring-open", c => Describe(c, ownLayer));
    }

    private static string Remedy(string layer, string? ownLayer, string first) => ownLayer is null || layer.Equals(ownLayer, StringComparison.OrdinalIgnoreCase)
        ? $"{first}." : $"{first}, or leave its layer out: --layer \"{layer}=ignore\".";

    private (Point2, string, string) Describe(OpenContour contour, string? ownLayer)
    {
        var l = findings.Lengths;
        Point2 a = contour.Points[0], b = contour.Points[^1];
        double gapA = Distance(a, contour.NearestToStart), gapB = Distance(b, contour.NearestToEnd);
        var message = $"A line on layer {contour.Layer} does not close: it ends at {l.At(a)}{Nearest(contour.NearestToStart, gapA)} and at {l.At(b)}{Nearest(contour.NearestToEnd, gapB)}.";
        var slip = Math.Max(gapA, gapB) <= NearlyClosed.WidestSlipMm ? Math.Max(gapA, gapB) : Math.Min(gapA, gapB);
        var widen = slip > drawing.JoinGapMm && slip <= NearlyClosed.WidestSlipMm
            ? $"Close it in the drawing, or join it: {JoinGap(slip)}." : Remedy(contour.Layer, ownLayer, "Close it in the drawing");
        return (a, message, widen);
    }

    private static double Distance(Point2 p, Point2? other) => other is { } o ? (o - p).Length : double.PositiveInfinity;

    private string Nearest(Point2? other, double gap) => other is { } o ? $" (nearest other end {findings.Lengths.At(o)}, {findings.Lengths.Length(gap)} away)" : "";

    private void Named<T>(List<T> faults, string code, Func<T, (Point2 At, string Message, string Remedy)> describe)
    {
        foreach (var fault in faults.Take(MostNamed))
        {
            var (at, message, remedy) = describe(fault);
            findings.AddAt(Severity.Refused, code, message, at, remedy);
        }

        if (faults.Count > MostNamed)
            findings.Refuse(code, $"{faults.Count - MostNamed} more of this kind; podlayout inspect lists every open line.", "Mend the drawing, or leave out layers that are no edge of the part: --layer NAME=ignore.");
    }

    private void LeaveOut(List<OpenContour> open)
    {
        LeftOut = LinesForShow.Of(open.Select(c => c.Points));
        foreach (var layer in open.GroupBy(c => c.Layer, StringComparer.OrdinalIgnoreCase))
        {
            var first = layer.MaxBy(Length)!;
            var l = findings.Lengths;
            findings.AddAt(
                Severity.Warning, "open-left-out",
                $"{Counted.Of(layer.Count(), "open line")} on layer {layer.Key} {(layer.Count() == 1 ? "is no edge of the part and was" : "are no edges of the part and were")} left out; {(layer.Count() == 1 ? "it" : "the longest")} runs from {l.At(first.Points[0])} to {l.At(first.Points[^1])} {l.Unit}.",
                first.Points[0], "Close it in the drawing if it is an edge of the part.");
        }
    }
}

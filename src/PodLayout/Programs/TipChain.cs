using PodLayout.Geometry;

namespace PodLayout.Programs;

/// <summary>Moves that follow one another below the height, as one line in X and Y.</summary>
/// <param name="ToolNumber">The tool.</param>
/// <param name="RadiusMm">What the tool sweeps beside the line.</param>
internal sealed record TipChain(int ToolNumber, double RadiusMm)
{
    // Chains of fewer points are swept as they are.
    private const int ManyPoints = 1000;

    // Greatest distance of a left-out point from the simplified line, mm: a tenth of the chord tolerance of drawings.
    private const double SimplifiedMm = 0.001;

    // The same where there is much to sweep, mm.
    private const double CoarselySimplifiedMm = 0.003;

    public List<Point2> Points { get; } = [];

    /// <summary>Radius of the circle, when the line is a whole one about its only point; null for any other line.</summary>
    public double? CircleMm { get; init; }

    /// <summary>Distance that the true path may leave the line, mm.</summary>
    public double DeviationMm { get; set; }

    /// <summary>What the tool sweeps: never too small, since what the line misses is added to the radius.</summary>
    /// <param name="isOneOfMany">Whether there is so much to sweep that it may come out larger by up to two hundredths of a millimetre.</param>
    public Region Swept(bool isOneOfMany)
    {
        if (CircleMm is { } circle)
        {
            return Region.AlongCircle(Points[0], circle, RadiusMm + DeviationMm, isOneOfMany);
        }

        if (Points.Count <= ManyPoints && !isOneOfMany)
        {
            return Region.AlongPath(Points, RadiusMm + DeviationMm);
        }

        var (simple, off) = Simplified(Points, isOneOfMany ? CoarselySimplifiedMm : SimplifiedMm);
        return Region.AlongPath(simple, RadiusMm + DeviationMm + off, isOneOfMany);
    }

    /// <summary>The line for showing, with fewer points.</summary>
    public IEnumerable<Point2> Shown(double allowedMm)
    {
        const int Chords = 96;
        return CircleMm is { } circle
            ? Enumerable.Range(0, Chords + 1).Select(i => Points[0] + Turn.FromDegrees(360.0 * i / Chords).Apply(new(circle, 0)))
            : Simplified(Points, allowedMm).Points;
    }

    /// <summary>Whether both sweep the same: passes at several depths do.</summary>
    public bool IsSameAs(TipChain other) => ToolNumber == other.ToolNumber && RadiusMm == other.RadiusMm
        && CircleMm == other.CircleMm && DeviationMm == other.DeviationMm && Points.SequenceEqual(other.Points);

    /// <summary>
    /// A line through some of the points from which none of the others is farther than allowed, and how far the farthest is.
    /// </summary>
    /// <remarks>
    /// From each kept point a cone holds the directions in which a straight step passes all points since within the allowed
    /// distance (Imai and Iri 1986 call it a fan); the step ends before the first point that leaves it. Time grows with the
    /// number of points only, where halving (Douglas and Peucker 1973) may take its square.
    /// </remarks>
    internal static (List<Point2> Points, double FarthestMm) Simplified(IReadOnlyList<Point2> points, double allowedMm)
    {
        List<Point2> kept = [points[0]];
        double farthest = 0;
        var anchor = 0;
        while (anchor < points.Count - 1)
        {
            var end = FarthestStep(points, anchor, allowedMm);
            for (var i = anchor + 1; i < end; i++)
            {
                farthest = Math.Max(farthest, DistanceToStep(points[anchor], points[end], points[i]));
            }

            kept.Add(points[end]);
            anchor = end;
        }

        return (kept, farthest);
    }

    private static int FarthestStep(IReadOnlyList<Point2> points, int anchor, double allowed)
    {
        var from = points[anchor];
        Point2? middle = null;
        double low = 0, high = 0, reached = 0;
        for (var i = anchor + 1; i < points.Count; i++)
        {
            var way = points[i] - from;
            var distance = way.Length;
            // Turning back would leave points beyond the end of the step.
            if (distance < reached)
            {
                return Math.Max(anchor + 1, i - 1);
            }

            reached = distance;
            if (distance <= allowed)
            {
                continue;
            }

            middle ??= way;
            var angle = Math.Atan2(middle.Value.Cross(way), middle.Value.Dot(way));
            var half = Math.Asin(Math.Min(1, allowed / distance));
            if (middle.Value == way)
            {
                (low, high) = (-half, half);
                continue;
            }

            if (angle < low || angle > high)
            {
                return Math.Max(anchor + 1, i - 1);
            }

            (low, high) = (Math.Max(low, angle - half), Math.Min(high, angle + half));
        }

        return points.Count - 1;
    }

    private static double DistanceToStep(Point2 a, Point2 b, Point2 p)
    {
        var way = b - a;
        var square = way.Dot(way);
        var share = square == 0 ? 0 : Math.Clamp((p - a).Dot(way) / square, 0, 1);
        return (p - (a + way * share)).Length;
    }
}

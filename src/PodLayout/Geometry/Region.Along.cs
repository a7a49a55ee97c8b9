using NetTopologySuite.Geometries;

namespace PodLayout.Geometry;

// What a disc sweeps along a line.
public sealed partial class Region
{
    // Arcs become chords that leave the true arc by at most this, mm, and as a share of its radius where that is less: what a cutter sweeps is
    // known to a hundredth of a millimetre at best, and the area should be right to a ten-thousandth.
    private const double SweptArcMm = 0.0005;
    private const double SweptArcShare = 2e-5;

    // The same where thousands of moves are swept: what is swept is grown by a hundredth of a millimetre or two, never shrunk.
    private const double CoarseArcMm = 0.003;

    /// <summary>
    /// All points within a distance of an open line (what a disc sweeps along it): never too small, and where the exact edge is
    /// an arc its chords lie on or outside the arc.
    /// </summary>
    /// <param name="points">The line's points; one point gives a disc.</param>
    /// <param name="radiusMm">The distance.</param>
    /// <param name="isCoarse">Whether it may be larger by up to two hundredths of a millimetre, to be quicker where there is much of it.</param>
    public static Region AlongPath(IReadOnlyList<Point2> points, double radiusMm, bool isCoarse = false)
    {
        if (radiusMm <= 0)
        {
            return Empty;
        }

        var arcMm = SweptArc(radiusMm, isCoarse);
        var hasStrips = !isCoarse && PathPieces.AreFew(points);
        var pieces = new List<NetTopologySuite.Geometries.Geometry>();
        foreach (var (first, last) in PathPieces.Of(points))
        {
            pieces.Add(AlongPiece(points, first, last, Swept(radiusMm, hasStrips ? 0 : PathPieces.MissedShare(points, first, last), arcMm), arcMm, hasStrips));
        }

        if (hasStrips)
        {
            var grown = Swept(radiusMm, 0, arcMm);
            pieces.AddRange(OffsetStrips.Beside([.. points], Outside(grown, arcMm), ChordsOfQuarter(grown, arcMm)).Select(ToPolygon));
        }

        return pieces.Count == 1 ? new(pieces[0]) : new(SureOverlay.Union(Factory.BuildGeometry(pieces)));
    }

    /// <summary>
    /// What a disc sweeps along a whole circle: a ring, or a disc where the circle is no larger. Never too small.
    /// </summary>
    /// <param name="centre">The circle's centre.</param>
    /// <param name="circleMm">The circle's radius.</param>
    /// <param name="radiusMm">The disc's radius.</param>
    /// <param name="isCoarse">As for <see cref="AlongPath"/>.</param>
    public static Region AlongCircle(Point2 centre, double circleMm, double radiusMm, bool isCoarse = false)
    {
        var outer = circleMm + radiusMm;
        var inner = circleMm - radiusMm;
        var arcMm = SweptArc(outer, isCoarse);
        var chords = 4 * ChordsOfQuarter(outer, arcMm);
        var around = Polygon(Outside(outer, arcMm));
        // The corners of the inner edge lie on its circle, so that the hole is never too large.
        return inner <= 0 ? Inside(around) : Inside(around, Polygon(inner));

        Ring Polygon(double radius) => new([.. Enumerable.Range(0, chords).Select(i =>
            centre + new Point2(Math.Cos(2 * Math.PI * i / chords), Math.Sin(2 * Math.PI * i / chords)) * radius)]);
    }

    private static NetTopologySuite.Geometries.Geometry AlongPiece(
        IReadOnlyList<Point2> points, int first, int last, double grown, double arcMm, bool hasStrips)
    {
        var line = new Coordinate[Math.Max(2, last - first + 1)];
        for (var i = 0; i < line.Length; i++)
        {
            var p = points[Math.Min(first + i, last)];
            line[i] = new(p.X, p.Y);
        }

        NetTopologySuite.Geometries.Geometry path = first == last ? Factory.CreatePoint(line[0]) : Factory.CreateLineString(line);

        // Without a corner that the engine left out, its next arc would be missing farther along than the strips reach.
        var parameters = Round(grown, arcMm);
        parameters.SimplifyFactor = hasStrips ? 0 : parameters.SimplifyFactor;
        return path.Buffer(Outside(grown, arcMm), parameters);
    }

    // The engine rounds the number of an arc's chords to the nearest, so that one may be half as long again as asked for.
    private static double Swept(double radius, double missedShare, double arcMm) => radius + radius * (DetailShare + missedShare) + 1.3 * arcMm;

    private static double SweptArc(double radius, bool isCoarse) => isCoarse ? CoarseArcMm : Math.Min(SweptArcMm, SweptArcShare * radius);
}

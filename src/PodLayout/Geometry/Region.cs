using System.Collections.Immutable;
using NetTopologySuite.Algorithm.Construct;
using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Utilities;
using NetTopologySuite.Operation.Buffer;
using NetTopologySuite.Operation.Overlay;

namespace PodLayout.Geometry;

/// <summary>
/// An area of the plane bounded by straight edges: any number of polygons with holes. Millimetres. Immutable.
/// </summary>
/// <remarks>The polygon engine is NetTopologySuite; nothing outside this folder sees it.</remarks>
public sealed partial class Region
{
    // Where a region is grown or shrunk, arcs become chords that leave the true arc by at most this, mm.
    private const double ArcMm = 0.0002;

    // The engine may leave out concave detail smaller than this share of the distance; its default of a hundredth would be a
    // tenth of a millimetre on a margin of ten.
    private const double DetailShare = 1e-5;

    // From here on fewer corners are worth a hundredth of a millimetre: whatever asks for a region's edge goes through them all.
    private const int ManyCorners = 600;

    // Fewer shapes than this are united as they come.
    private const int FewShapes = 16;

    private static readonly GeometryFactory Factory = new();

    private readonly NetTopologySuite.Geometries.Geometry _shape;

    // Where shapes touch, the engine may hand back the line of touch beside the areas, and refuses such a mixture afterwards.
    private Region(NetTopologySuite.Geometries.Geometry shape) => _shape = shape is Polygon or MultiPolygon ? shape
        : Factory.BuildGeometry(PolygonExtracter.GetPolygons(shape)) is var areas and (Polygon or MultiPolygon) ? areas : Factory.CreatePolygon();

    /// <summary>The region without area.</summary>
    public static Region Empty { get; } = new(Factory.CreatePolygon());

    /// <summary>Area, mm².</summary>
    public double AreaMm2 => _shape.Area;

    /// <summary>Whether it has no area.</summary>
    public bool IsEmpty => _shape.IsEmpty;

    /// <summary>Whether it has so many corners that each step that follows becomes slow.</summary>
    public bool IsIntricate => _shape.NumPoints > ManyCorners;

    /// <summary>The smallest box around it; throws when empty.</summary>
    public Box2 Bounds
    {
        get
        {
            var e = _shape.EnvelopeInternal;
            return IsEmpty ? throw new InvalidOperationException("An empty region has no bounds.")
                : new(e.MinX, e.MinY, e.MaxX, e.MaxY);
        }
    }

    /// <summary>The middle of its area; not a number when it has none.</summary>
    public Point2 Centroid => new(_shape.Centroid.X, _shape.Centroid.Y);

    /// <summary>All boundary rings: outer ones counter-clockwise, holes clockwise.</summary>
    public ImmutableArray<Ring> Boundary =>
        [.. Polygons.SelectMany(p => p.Holes.Prepend(p.Shell).Select((r, i) => FromLine(r, counterClockwise: i == 0)))];

    private IEnumerable<Polygon> Polygons => Enumerable.Range(0, _shape.NumGeometries)
        .Select(_shape.GetGeometryN).OfType<Polygon>().Where(p => !p.IsEmpty);

    /// <summary>The region whose boundary these rings are, in the order of <see cref="Boundary"/>: each outer ring, then its holes.</summary>
    public static Region Bounded(IEnumerable<Ring> boundary)
    {
        var parts = new List<(LinearRing Shell, List<LinearRing> Holes)>();
        foreach (var ring in boundary)
        {
            var line = ToPolygon(ring).Shell;
            if (ring.SignedAreaMm2 > 0)
            {
                parts.Add((line, []));
            }
            else if (parts.Count > 0)
            {
                parts[^1].Holes.Add(line);
            }
        }

        Polygon[] polygons = [.. parts.Select(p => Factory.CreatePolygon(p.Shell, [.. p.Holes]))];
        return polygons.Length == 0 ? Empty : new(Factory.BuildGeometry(polygons));
    }

    /// <summary>
    /// Whether rings are the boundary of a region, in the order that <see cref="Bounded"/> takes, but for what rounding does to
    /// them: what the rings enclose, in all, is what lies in the outer ones and not in the holes.
    /// </summary>
    public static bool CanBeBounded(ImmutableArray<Ring> boundary)
    {
        if (boundary.IsEmpty || (boundary[0].SignedAreaMm2 > 0 && (boundary.Length == 1 || Bounded(boundary)._shape.IsValid)))
        {
            return true;
        }

        Region Whole(bool isOuter) => UnionOf(boundary.Where(r => r.SignedAreaMm2 > 0 == isOuter)
            .Select(r => new Region(GeometryFixer.Fix(ToPolygon(r)))));
        var enclosed = boundary.Sum(r => r.SignedAreaMm2);
        var length = boundary.Sum(r => r.Points.Select((p, i) => (r.Points[(i + 1) % r.Points.Length] - p).Length).Sum());
        return Math.Abs(Whole(isOuter: true).Minus(Whole(isOuter: false)).AreaMm2 - enclosed) <= Tolerances.CoordinateMm * length;
    }

    /// <summary>The inside of a simple ring, less the insides of other rings.</summary>
    public static Region Inside(Ring outline, params IEnumerable<Ring> holes)
    {
        var whole = new Region(ToPolygon(outline));
        var gone = holes.Select(h => new Region(ToPolygon(h))).ToList();
        return gone.Count == 0 ? whole : whole.Minus(UnionOf(gone));
    }

    /// <summary>The inside of a box.</summary>
    public static Region Inside(Box2 box) => new(ToPolygon(new([
        new(box.MinX, box.MinY), new(box.MaxX, box.MinY), new(box.MaxX, box.MaxY), new(box.MinX, box.MaxY)])));

    /// <summary>Everything that lies in at least one of the regions.</summary>
    public static Region UnionOf(IEnumerable<Region> regions)
    {
        var shapes = regions.Where(r => !r.IsEmpty).Select(r => r._shape).ToArray();
        return shapes.Length == 0 ? Empty : new(shapes.Sum(s => s.NumGeometries) > FewShapes
            ? ClusteredUnion.Of([.. shapes.SelectMany(s => Enumerable.Range(0, s.NumGeometries).Select(s.GetGeometryN))], Factory) : SureOverlay.Union(Factory.BuildGeometry(shapes)));
    }

    /// <summary>What lies in this region and not in the other.</summary>
    public Region Minus(Region other) => Overlay(other, SpatialFunction.Difference);

    /// <summary>What lies in both.</summary>
    public Region Intersect(Region other) =>
        Overlay(other, SpatialFunction.Intersection);

    /// <summary>
    /// All points within a distance of the region. Where the exact edge is an arc its chords lie on or outside the arc, so
    /// that the result is never too small.
    /// </summary>
    /// <param name="byMm">The distance.</param>
    /// <param name="isCoarse">Whether it may be larger by up to a hundredth of a millimetre, to have a tenth of the corners.</param>
    public Region Grow(double byMm, bool isCoarse = false)
    {
        var arcMm = isCoarse ? CoarseArcMm : ArcMm;
        return byMm <= 0 || IsEmpty ? this
            : UnionOf([new(_shape.Buffer(Outside(byMm, arcMm), Round(byMm, arcMm))), .. Strips(Outside(byMm, arcMm), byMm, arcMm)]);
    }

    /// <summary>
    /// All points at least a distance inside the region: never too large, for the reason given at <see cref="Grow"/>.
    /// </summary>
    public Region Shrink(double byMm) => byMm <= 0 || IsEmpty ? this
        : new Region(_shape.Buffer(-Outside(byMm), Round(byMm))).Minus(UnionOf(Strips(-Outside(byMm), byMm)));

    /// <summary>Radius of the largest disc that lies within the region, to a tolerance, never too large; 0 when it is empty.</summary>
    public double LargestDiscMm(double toleranceMm) => Polygons
        .Select(p => new MaximumInscribedCircle(p, toleranceMm).GetRadiusLine().Length).DefaultIfEmpty(0).Max();

    /// <summary>
    /// A region with fewer corners that contains this one and reaches at most twice the distance beyond it.
    /// </summary>
    public Region SimplifiedOutward(double byMm) => UnionOf(Polygons.Select(p => Simplified(p, byMm, outward: true)));

    /// <summary>
    /// A region with fewer corners that lies within this one and leaves out at most twice the distance along its edge.
    /// </summary>
    public Region SimplifiedInward(double byMm) => UnionOf(Polygons.Select(p => Simplified(p, byMm, outward: false)));

    /// <summary>The pieces whose boxes touch a box.</summary>
    public Region Near(Box2 box)
    {
        var around = new Envelope(box.MinX, box.MaxX, box.MinY, box.MaxY);
        return around.Contains(_shape.EnvelopeInternal) ? this
            : new(Factory.BuildGeometry([.. Polygons.Where(p => p.EnvelopeInternal.Intersects(around))]));
    }

    /// <summary>The region with its corners in whole steps: the same when written to a file and read again.</summary>
    public Region Rounded(double stepMm) => Bounded(Boundary.Select(ring => new Ring([.. ring.Points.Select(p => new Point2(
        Math.Round(Math.Round(p.X / stepMm, MidpointRounding.AwayFromZero) * stepMm, 6) + 0.0,
        Math.Round(Math.Round(p.Y / stepMm, MidpointRounding.AwayFromZero) * stepMm, 6) + 0.0))])));

    /// <summary>The separate pieces that the region consists of.</summary>
    public ImmutableArray<Region> Pieces => [.. Polygons.Select(p => new Region(p))];

    /// <summary>The region turned about the origin, then moved.</summary>
    public Region Laid(Turn turn, Point2 offset)
    {
        var copy = _shape.Copy();
        copy.Apply(new NetTopologySuite.Geometries.Utilities.AffineTransformation(
            turn.Cos, -turn.Sin, offset.X, turn.Sin, turn.Cos, offset.Y));
        return new(copy);
    }

    /// <summary>The region moved.</summary>
    public Region Moved(Point2 by)
    {
        var copy = _shape.Copy();
        copy.Apply(new NetTopologySuite.Geometries.Utilities.AffineTransformation().Translate(by.X, by.Y));
        return new(copy);
    }

    /// <summary>The region turned about a point, which becomes the zero.</summary>
    public Region Turned(Turn turn, Point2 pivot)
    {
        var copy = _shape.Copy();
        copy.Apply(new NetTopologySuite.Geometries.Utilities.AffineTransformation(
            turn.Cos, -turn.Sin, -turn.Cos * pivot.X + turn.Sin * pivot.Y,
            turn.Sin, turn.Cos, -turn.Sin * pivot.X - turn.Cos * pivot.Y));
        return new(copy);
    }

    /// <summary>
    /// Where the centre of a rectangle along the axes may be so that it lies wholly inside the region (Minkowski erosion).
    /// </summary>
    public Region ErodeByRectangle(double widthMm, double heightMm) =>
        Minus(UnionOf(Sweep.OfRectangle(Boundary, widthMm / 2, heightMm / 2).Select(r => new Region(ToPolygon(r)))));

    /// <summary>All points that a rectangle along the axes covers when its centre is in the region (Minkowski sum).</summary>
    public Region DilateByRectangle(double widthMm, double heightMm) =>
        UnionOf(Sweep.OfRectangle(Boundary, widthMm / 2, heightMm / 2).Select(r => new Region(ToPolygon(r))).Append(this));

    /// <summary>Some point well inside the region; null when it is empty.</summary>
    public Point2? PointInside()
    {
        var largest = Polygons.OrderByDescending(p => p.Area).FirstOrDefault();
        if (largest is null)
        {
            return null;
        }

        // The centroid is the best place when it is inside; a concave region has an interior point all the same.
        var centre = largest.Centroid;
        var point = largest.Contains(centre) ? centre : largest.InteriorPoint;
        return new(point.X, point.Y);
    }

    private static Region Simplified(Polygon piece, double byMm, bool outward)
    {
        // Inward, what lies beyond the edge grows: the same with the ring run through the other way.
        var rings = piece.Holes.Prepend(piece.Shell)
            .Select((r, i) => FewerCorners.Of(FromLine(r, counterClockwise: (i == 0) == outward), 2 * byMm))
            .Select(r => ToPolygon(r).Shell).ToList();
        var simple = Factory.CreatePolygon(rings[0], [.. rings.Skip(1)]);
        if (simple.IsValid)
        {
            return new(simple);
        }

        // Where two stretches of an edge lie that near to each other, the engine's own way, which takes many times as long.
        var moved = outward ? new Region(piece).Grow(byMm) : new Region(piece).Shrink(byMm);
        var kept = NetTopologySuite.Simplify.TopologyPreservingSimplifier.Simplify(moved._shape, byMm);
        return kept.IsValid ? new(kept) : new(piece);
    }

    private IEnumerable<Region> Strips(double distance, double radius, double arcMm = ArcMm) =>
        OffsetStrips.Of(Boundary, distance, ChordsOfQuarter(radius, arcMm)).Select(r => new Region(ToPolygon(r)));

    private Region Overlay(Region other, SpatialFunction function) => new(SureOverlay.Of(_shape, other._shape, function));

    private static int ChordsOfQuarter(double radius, double arcMm = ArcMm) =>
        Math.Max(8, (int)Math.Ceiling(Math.PI / 4 / Math.Acos(radius / (radius + arcMm))));

    // A polygon with n chords to the quarter whose chords touch the circle has this radius.
    private static double Outside(double radius, double arcMm = ArcMm) =>
        radius / Math.Cos(Math.PI / (4 * ChordsOfQuarter(radius, arcMm)));

    private static BufferParameters Round(double radius, double arcMm = ArcMm) =>
        new(ChordsOfQuarter(radius, arcMm), EndCapStyle.Round, JoinStyle.Round, 5) { SimplifyFactor = DetailShare };

    private static Polygon ToPolygon(Ring ring)
    {
        var coordinates = new Coordinate[ring.Points.Length + 1];
        for (var i = 0; i < ring.Points.Length; i++)
        {
            coordinates[i] = new(ring.Points[i].X, ring.Points[i].Y);
        }

        coordinates[^1] = coordinates[0].Copy();
        return Factory.CreatePolygon(coordinates);
    }

    private static Ring FromLine(LineString line, bool counterClockwise)
    {
        var points = line.Coordinates.Take(line.NumPoints - 1).Select(c => new Point2(c.X, c.Y)).ToImmutableArray();
        var ring = new Ring(points);
        return ring.SignedAreaMm2 > 0 == counterClockwise ? ring : new([.. points.Reverse()]);
    }
}

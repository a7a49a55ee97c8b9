using System.Collections.Immutable;
using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Buffer;
using NetTopologySuite.Operation.Overlay;
using NetTopologySuite.Operation.OverlayNG;

namespace PodLayout.Geometry;

/// <summary>
/// An area of the plane bounded by straight edges: any number of polygons with holes. Millimetres. Immutable.
/// </summary>
/// <remarks>The polygon engine is NetTopologySuite; nothing outside this folder sees it.</remarks>
public sealed class Region
{
    // Where a region is grown or shrunk, arcs become chords that leave the true arc by at most this, mm.
    private const double ArcMm = 0.0002;

    // The engine may leave out concave detail smaller than this share of the distance; its default of a hundredth would be a
    // tenth of a millimetre on a margin of ten.
    private const double DetailShare = 1e-5;

    private static readonly GeometryFactory Factory = new();

    private readonly NetTopologySuite.Geometries.Geometry _shape;

    private Region(NetTopologySuite.Geometries.Geometry shape) => _shape = shape;

    /// <summary>The region without area.</summary>
    public static Region Empty { get; } = new(Factory.CreatePolygon());

    /// <summary>Area, mm².</summary>
    public double AreaMm2 => _shape.Area;

    /// <summary>Whether it has no area.</summary>
    public bool IsEmpty => _shape.IsEmpty;

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

    /// <summary>All boundary rings: outer ones counter-clockwise, holes clockwise.</summary>
    public ImmutableArray<Ring> Boundary =>
        [.. Polygons.SelectMany(p => p.Holes.Prepend(p.Shell).Select((r, i) => FromLine(r, counterClockwise: i == 0)))];

    private IEnumerable<Polygon> Polygons => Enumerable.Range(0, _shape.NumGeometries)
        .Select(_shape.GetGeometryN).OfType<Polygon>().Where(p => !p.IsEmpty);

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
        return shapes.Length == 0 ? Empty : new(OverlayNGRobust.Union(Factory.BuildGeometry(shapes)));
    }

    /// <summary>What lies in this region and not in the other.</summary>
    public Region Minus(Region other) => new(OverlayNGRobust.Overlay(_shape, other._shape, SpatialFunction.Difference));

    /// <summary>What lies in both.</summary>
    public Region Intersect(Region other) =>
        new(OverlayNGRobust.Overlay(_shape, other._shape, SpatialFunction.Intersection));

    /// <summary>
    /// All points within a distance of the region. Where the exact edge is an arc its chords lie on or outside the arc, so
    /// that the result is never too small.
    /// </summary>
    public Region Grow(double byMm) => byMm <= 0 || IsEmpty ? this
        : UnionOf([new(_shape.Buffer(Outside(byMm), Round(byMm))), .. Strips(Outside(byMm), byMm)]);

    /// <summary>
    /// All points at least a distance inside the region: never too large, for the reason given at <see cref="Grow"/>.
    /// </summary>
    public Region Shrink(double byMm) => byMm <= 0 || IsEmpty ? this
        : new Region(_shape.Buffer(-Outside(byMm), Round(byMm))).Minus(UnionOf(Strips(-Outside(byMm), byMm)));

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

    private IEnumerable<Region> Strips(double distance, double radius) =>
        OffsetStrips.Of(Boundary, distance, ChordsOfQuarter(radius)).Select(r => new Region(ToPolygon(r)));

    private static int ChordsOfQuarter(double radius) =>
        Math.Max(8, (int)Math.Ceiling(Math.PI / 4 / Math.Acos(radius / (radius + ArcMm))));

    // A polygon with n chords to the quarter whose chords touch the circle has this radius.
    private static double Outside(double radius) => radius / Math.Cos(Math.PI / (4 * ChordsOfQuarter(radius)));

    private static BufferParameters Round(double radius) =>
        new(ChordsOfQuarter(radius), EndCapStyle.Round, JoinStyle.Round, 5) { SimplifyFactor = DetailShare };

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

using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Parts;

namespace PodLayout.Support;

/// <summary>Which points of a part must be supported.</summary>
public static class PointSampling
{
    // A vertex that turns more than this is a corner of the part, not a joint between two chords of a curve.
    private const double CornerDeg = 10;

    /// <summary>
    /// The edge points: on the outline and every hole, from corner to corner (or from the ring's first vertex where there is
    /// no corner) at equal steps of at most the edge step, every corner included. Then the interior points: the lattice of
    /// whole multiples of the interior step in the drawing's coordinates, strictly inside the wood (what lies on an edge is an edge's).
    /// Last the points of each thin floor: at equal steps along its edges, and the lattice of the floor step inside it.
    /// </summary>
    public static ImmutableArray<PointToSupport> Of(PartShape shape, SupportRules rules) =>
    [
        .. shape.Holes.Prepend(shape.Outline)
            .SelectMany((ring, i) => OnRing(ring, rules.EdgeStepMm).Select(p => new PointToSupport(p, SupportLimit.Edge, i))),
        .. rules.InteriorSpanMm is null ? [] : Lattice(Region.Inside(shape.Outline, shape.Holes), rules.InteriorStepMm)
            .Select(p => new PointToSupport(p, SupportLimit.Interior, -1)),
        .. shape.Floors.SelectMany((floor, i) => OnFloor(floor.Area, rules.FloorStepMm)
            .Select(p => new PointToSupport(p, SupportLimit.ThinFloor, -2 - i))),
    ];

    // The corners of a floor are no corners of the part: what is left by a raster of passes has hundreds.
    private static IEnumerable<Point2> OnFloor(Region floor, double stepMm) =>
        floor.Boundary.SelectMany(ring => Along(ring.Points, 0, ring.Points.Length, stepMm)).Concat(Lattice(floor, stepMm));

    private static IEnumerable<Point2> OnRing(Ring ring, double stepMm)
    {
        var points = ring.Points;
        var corners = Enumerable.Range(0, points.Length).Where(i => IsCorner(points, i)).ToList();
        if (corners.Count == 0)
        {
            corners.Add(0);
        }

        for (var c = 0; c < corners.Count; c++)
        {
            var from = corners[c];
            var to = c + 1 < corners.Count ? corners[c + 1] : corners[0] + points.Length;
            foreach (var p in Along(points, from, to, stepMm))
            {
                yield return p;
            }
        }
    }

    private static bool IsCorner(ImmutableArray<Point2> points, int i)
    {
        var arriving = points[i] - points[(i + points.Length - 1) % points.Length];
        var leaving = points[(i + 1) % points.Length] - points[i];
        return Math.Abs(Math.Atan2(arriving.Cross(leaving), arriving.Dot(leaving))) > CornerDeg * Math.PI / 180;
    }

    // Points at equal steps along the vertices from..to, the last one left to the next stretch.
    private static IEnumerable<Point2> Along(ImmutableArray<Point2> points, int from, int to, double stepMm)
    {
        var n = points.Length;
        double length = 0;
        for (var i = from; i < to; i++)
        {
            length += (points[(i + 1) % n] - points[i % n]).Length;
        }

        // A hair less than a whole number of steps must not become one step more by rounding.
        var count = Math.Max(1, (int)Math.Ceiling(length / stepMm - 1e-9));
        var segment = from;
        double before = 0;
        for (var k = 0; k < count; k++)
        {
            var target = length * k / count;
            var step = points[(segment + 1) % n] - points[segment % n];
            while (segment + 1 < to && before + step.Length < target)
            {
                before += step.Length;
                segment++;
                step = points[(segment + 1) % n] - points[segment % n];
            }

            yield return step.Length == 0 ? points[segment % n]
                : points[segment % n] + step * Math.Clamp((target - before) / step.Length, 0, 1);
        }
    }

    private static IEnumerable<Point2> Lattice(Region area, double stepMm)
    {
        if (area.IsEmpty)
        {
            yield break;
        }

        var inside = new RegionIndex(area);
        var bounds = inside.Bounds;
        for (var j = (long)Math.Ceiling(bounds.MinY / stepMm); j * stepMm <= bounds.MaxY; j++)
        {
            for (var i = (long)Math.Ceiling(bounds.MinX / stepMm); i * stepMm <= bounds.MaxX; i++)
            {
                var p = new Point2(i * stepMm, j * stepMm);
                if (inside.ContainsClear(p, Tolerances.SamePointMm))
                {
                    yield return p;
                }
            }
        }
    }
}

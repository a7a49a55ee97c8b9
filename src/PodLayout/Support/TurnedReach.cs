using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using PodLayout.Geometry;
using PodLayout.Layouts;

namespace PodLayout.Support;

/// <summary>
/// The reach map of a part turned into the board's directions: answers whether a pod supports a point. Centres of pods are
/// given in the frame of the turned part (board coordinates about the pivot).
/// </summary>
public sealed class TurnedReach
{
    // Shares of a limit are compared with this much grace: a nanometre on a limit of a metre.
    private const double Rounding = 1e-9;

    private readonly Lookout[][] _lookouts;
    private readonly BlindFan?[][] _fans;
    private readonly Point2[] _points;
    private readonly LimitMetric[] _metrics;
    private readonly (double XMm, double YMm)[] _boxes;
    private readonly bool[] _isEdge;

    /// <summary>Turns a reach map about a point of the drawing, which becomes the zero of the frame.</summary>
    public TurnedReach(ReachMap map, Turn turn, Point2 pivot)
    {
        LimitMetric[] metrics = [.. Enum.GetValues<SupportLimit>().Select(l => map.MetricOf(l).Turned(turn))];
        _points = [.. map.Points.Select(p => Laid(p.OnPart))];
        _metrics = [.. map.Points.Select(p => metrics[(int)p.Limit])];
        // Asked for every pair of a seat and a point: the roots are taken once.
        (double XMm, double YMm)[] boxes = [.. metrics.Select(m => (m.ReachXMm + 1e-6, m.ReachYMm + 1e-6))];
        _boxes = [.. map.Points.Select(p => boxes[(int)p.Limit])];
        _isEdge = [.. map.Points.Select(p => p.IsEdge)];
        // Many points share their lookouts; the edges that blind each are turned once.
        var blinds = Array.ConvertAll(metrics, _ => new Dictionary<Point2, (ImmutableArray<Blind> Blinds, BlindFan? Fan)>());
        _lookouts = new Lookout[_points.Length][];
        _fans = new BlindFan?[_points.Length][];
        for (var i = 0; i < _points.Length; i++)
        {
            var known = blinds[(int)map.Points[i].Limit];
            _lookouts[i] = [.. map.Lookouts[i].Select(l => new Lookout(Laid(l.At), l.Spent, Turned(l, known).Blinds))];
            _fans[i] = [.. map.Lookouts[i].Select(l => Turned(l, known).Fan)];
        }

        Point2 Laid(Point2 p) => turn.Apply(p - pivot);

        (ImmutableArray<Blind> Blinds, BlindFan? Fan) Turned(Lookout lookout, Dictionary<Point2, (ImmutableArray<Blind> Blinds, BlindFan? Fan)> known)
        {
            if (lookout.Blinds.IsEmpty)
            {
                return ([], null);
            }

            if (!known.TryGetValue(lookout.At, out var turned))
            {
                turned.Blinds = [.. lookout.Blinds.Select(b => new Blind(Laid(b.A), Laid(b.B)))];
                turned.Fan = BlindFan.Of(Laid(lookout.At), turned.Blinds);
                known.Add(lookout.At, turned);
            }

            return turned;
        }
    }

    private TurnedReach(TurnedReach other, ImmutableArray<int> points)
    {
        T[] Some<T>(T[] of) => [.. points.Select(p => of[p])];
        (_lookouts, _fans, _points) = (Some(other._lookouts), Some(other._fans), Some(other._points));
        (_metrics, _boxes, _isEdge) = (Some(other._metrics), Some(other._boxes), Some(other._isEdge));
    }

    /// <summary>The same for some of the points only.</summary>
    public TurnedReach Of(ImmutableArray<int> points) => new(this, points);

    /// <summary>Number of points.</summary>
    public int PointCount => _points.Length;

    /// <summary>Whether a point lies on an edge.</summary>
    public bool IsEdge(int point) => _isEdge[point];

    /// <summary>A point in the turned part's frame.</summary>
    public Point2 Point(int point) => _points[point];

    /// <summary>Whether a face could be near enough by its box alone; false means it surely is not.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public bool MayReach(int point, PodFace face, Point2 centre)
    {
        var p = _points[point];
        var (x, y) = _boxes[point];
        return Math.Abs(p.X - centre.X) <= face.HalfXMm + x && Math.Abs(p.Y - centre.Y) <= face.HalfYMm + y;
    }

    /// <summary>
    /// Distance through the wood from a point to a pod's face as a share of the limit: at most 1 when the pod supports it;
    /// infinite when it is out of reach. The face must lie in the wood.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double Share(int point, PodFace face, Point2 centre)
    {
        var best = double.PositiveInfinity;
        var metric = _metrics[point];
        var lookouts = _lookouts[point];
        for (var i = 0; i < lookouts.Length; i++)
        {
            ref readonly var lookout = ref lookouts[i];
            if (lookout.Spent >= best)
            {
                break;
            }

            var nearest = face.Nearest(lookout.At - centre, metric) + centre;
            var share = lookout.Spent + metric.Length(nearest - lookout.At);
            if (lookout.Spent == 0 && share > 1 + Rounding)
            {
                // No path is shorter than the straight line.
                break;
            }

            if (share < best && share <= 1 + Rounding && !IsCut(lookout, _fans[point][i], nearest))
            {
                best = Math.Min(share, 1);
            }
        }

        return best;
    }

    /// <summary>
    /// Whether a pod could support a point from somewhere in a box of places: never false when it can from one of them.
    /// </summary>
    /// <param name="point">The point.</param>
    /// <param name="swept">The face with the box of places added to it.</param>
    /// <param name="centre">Middle of the box of centres.</param>
    /// <remarks>
    /// The path to the nearest point of the swept face is no longer than that to any face in it: a sound lower bound. Where
    /// the straight leg is cut, the face may still be seen past the edge that cuts it; only when all of it within the limit
    /// lies in the shadow of edges wholly outside it is this lookout given up. As the box shrinks to a point the answer
    /// becomes that of <see cref="Share"/>, for then the face lies in the wood and no edge reaches into it.
    /// </remarks>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public bool CouldReach(int point, PodFace swept, Point2 centre)
    {
        var cut = 0;
        var metric = _metrics[point];
        var lookouts = _lookouts[point];
        for (var i = 0; i < lookouts.Length; i++)
        {
            ref readonly var lookout = ref lookouts[i];
            var left = 1 + Rounding - lookout.Spent;
            var nearest = swept.Nearest(lookout.At - centre, metric) + centre;
            if (metric.Length(nearest - lookout.At) > left)
            {
                if (lookout.Spent == 0)
                {
                    // No path is shorter than the straight line.
                    return false;
                }

                continue;
            }

            if (!IsCut(lookout, _fans[point][i], nearest))
            {
                return true;
            }

            cut++;
        }

        return cut > 0 && IsSeenPastEdges(point, swept, centre);
    }

    // The dear question is asked last: most pairs are settled by some lookout's straight line.
    private bool IsSeenPastEdges(int point, PodFace swept, Point2 centre)
    {
        var metric = _metrics[point];
        foreach (var lookout in _lookouts[point])
        {
            var left = 1 + Rounding - lookout.Spent;
            if (metric.Length(swept.Nearest(lookout.At - centre, metric) + centre - lookout.At) <= left
                && Shadow.LeavesInSight(lookout, swept.Corners, centre, metric, left))
            {
                return true;
            }
        }

        return false;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static bool IsCut(in Lookout lookout, BlindFan? fan, Point2 target)
    {
        if (fan is not null)
        {
            return fan.Cuts(lookout.At, target);
        }

        foreach (ref readonly var blind in lookout.Blinds.AsSpan())
        {
            if (blind.Cuts(lookout.At, target))
            {
                return true;
            }
        }

        return false;
    }
}

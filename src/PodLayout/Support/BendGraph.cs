using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Support;

/// <summary>
/// The re-entrant vertices of a part, joined where one sees another through the wood within the limit and a shortest path
/// could bend at both. Joined only where asked for, and then remembered. May be asked from several threads at once: what two of them
/// find for the same vertex is the same.
/// </summary>
internal sealed class BendGraph
{
    // Flat joints between chords of a straight line are no bends.
    private const double NoBend = 1e-9;

    private readonly EdgeGrid _edges;
    private readonly LimitMetric _metric;
    private readonly bool[] _isBend;
    private readonly ImmutableArray<Blind>[] _blinds;
    private readonly List<(int Vertex, double Length)>?[] _links;

    public BendGraph(EdgeGrid edges, LimitMetric metric)
    {
        _edges = edges;
        _metric = metric;
        var n = edges.Starts.Length;
        _isBend = [.. Enumerable.Range(0, n).Select(IsBend)];
        _blinds = new ImmutableArray<Blind>[n];
        _links = new List<(int, double)>?[n];
    }

    /// <summary>The lookouts of one point: itself, then every bend within the limit, by length of path.</summary>
    public ImmutableArray<Lookout> LookoutsOf(Point2 p)
    {
        var near = _edges.Touching(Around(p));
        var blinds = BlindsOf(p, near);
        if (blinds.IsEmpty)
        {
            return [new(p, 0, [])];
        }

        var length = new SortedDictionary<int, double>();
        var queue = new PriorityQueue<int, (double, int)>();
        foreach (var (vertex, step) in Seen(p, near, blinds))
        {
            length[vertex] = step;
            queue.Enqueue(vertex, (step, vertex));
        }

        var lookouts = ImmutableArray.CreateBuilder<Lookout>();
        lookouts.Add(new(p, 0, blinds));
        var done = new HashSet<int>();
        while (queue.TryDequeue(out var vertex, out var priority))
        {
            if (!done.Add(vertex))
            {
                continue;
            }

            lookouts.Add(new(_edges.Starts[vertex], priority.Item1, BlindsOfVertex(vertex)));
            foreach (var (next, step) in Links(vertex))
            {
                var total = priority.Item1 + step;
                if (total <= 1 && (!length.TryGetValue(next, out var known) || total < known))
                {
                    length[next] = total;
                    queue.Enqueue(next, (total, next));
                }
            }
        }

        return lookouts.ToImmutable();
    }

    private bool IsBend(int vertex)
    {
        Point2 at = _edges.Starts[vertex], arriving = at - _edges.Starts[_edges.Previous[vertex]];
        var leaving = _edges.Starts[_edges.Next[vertex]] - at;
        return arriving.Cross(leaving) < -NoBend * arriving.Length * leaving.Length;
    }

    private Box2 Around(Point2 p) =>
        new(p.X - _metric.ReachXMm, p.Y - _metric.ReachYMm, p.X + _metric.ReachXMm, p.Y + _metric.ReachYMm);

    private Blind Edge(int i) => new(_edges.Starts[i], _edges.Starts[_edges.Next[i]]);

    private ImmutableArray<Blind> BlindsOf(Point2 p, ImmutableArray<int> near) =>
        [.. near.Select(Edge).Where(e => e.FacesAwayFrom(p) && IsWithinLimit(p, e))];

    private bool IsWithinLimit(Point2 p, Blind edge)
    {
        Point2 side = edge.B - edge.A, toPoint = p - edge.A;
        var along = _metric.Xx * side.X * toPoint.X + _metric.Yy * side.Y * toPoint.Y
            + _metric.Xy * (side.X * toPoint.Y + side.Y * toPoint.X);
        var whole = _metric.Length(side);
        return _metric.Length(edge.A + side * Math.Clamp(along / (whole * whole), 0, 1) - p) <= 1;
    }

    private ImmutableArray<Blind> BlindsOfVertex(int vertex)
    {
        // A reference is read and written at once, where a nullable would be in two steps.
        var known = _blinds[vertex];
        return known.IsDefault ? _blinds[vertex] = BlindsOf(_edges.Starts[vertex], _edges.Touching(Around(_edges.Starts[vertex]))) : known;
    }

    private List<(int Vertex, double Length)> Links(int vertex)
    {
        if (_links[vertex] is { } known)
        {
            return known;
        }

        var at = _edges.Starts[vertex];
        Blind arriving = Edge(_edges.Previous[vertex]), leaving = Edge(vertex);
        // Seen from the other end, the path must bend here too.
        var links = Seen(at, _edges.Touching(Around(at)), BlindsOfVertex(vertex))
            .Where(link => link.Vertex != vertex && CanBend(_edges.Starts[link.Vertex], arriving, leaving)).ToList();
        _links[vertex] = links;
        return links;
    }

    // The bends that a point sees through the wood, at which a path from it could bend.
    private IEnumerable<(int Vertex, double Length)> Seen(Point2 p, ImmutableArray<int> near, ImmutableArray<Blind> blinds)
    {
        foreach (var vertex in near.Concat(near.Select(i => _edges.Next[i])).Distinct().Where(i => _isBend[i]).Order())
        {
            var at = _edges.Starts[vertex];
            var step = _metric.Length(at - p);
            if (step <= 1 && CanBend(p, Edge(_edges.Previous[vertex]), Edge(vertex)) && !blinds.Any(b => b.Cuts(p, at)))
            {
                yield return (vertex, step);
            }
        }
    }

    // A shortest path from p bends at a vertex only where the line of sight passes it: one of its edges is turned to p, the
    // other away (or in line). With both turned away the line arrives through the void.
    private static bool CanBend(Point2 p, Blind arriving, Blind leaving)
    {
        bool a = arriving.FacesAwayFrom(p), b = leaving.FacesAwayFrom(p);
        return a != b || (!a && (IsInLine(p, arriving) || IsInLine(p, leaving)));
    }

    private static bool IsInLine(Point2 p, Blind edge) => new Blind(edge.B, edge.A).FacesAwayFrom(p) == false;
}

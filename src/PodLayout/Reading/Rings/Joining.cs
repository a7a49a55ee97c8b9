using PodLayout.Geometry;

namespace PodLayout.Reading.Rings;

/// <summary>
/// Joins lines into rings: first ends that are the same point, then free ends across gaps, the narrowest gap first.
/// In this order a finely drawn line, whose points lie nearer together than the gap, keeps its shape.
/// </summary>
internal sealed class Joining
{
    private readonly List<DrawnPath> _paths;
    private readonly string _layer;

    /// <summary>For each end (2 i: start of path i; 2 i + 1: its end) the end it is joined to; -1 when free.</summary>
    private readonly int[] _mate;
    private readonly List<Branch> _branches = [];

    /// <summary>Ends that meet in threes and more, before it is known which of them go on.</summary>
    private readonly List<List<int>> _nodes = [];

    /// <summary>Paths of lines that hang on a branch by one end.</summary>
    private readonly HashSet<int> _tails = [];

    private Joining(List<DrawnPath> paths, string layer)
    {
        _paths = paths;
        _layer = layer;
        _mate = new int[2 * paths.Count];
        Array.Fill(_mate, -1);
    }

    /// <summary>Joins the open lines of one layer; bridged gaps are added to the list.</summary>
    public static Joined Join(List<DrawnPath> open, string layer, double gapMm, List<Gap> gaps)
    {
        var joining = new Joining(open, layer);
        var branched = joining.JoinSamePoints();
        joining.BridgeGaps(gapMm, gaps, branched);
        joining.PassBranches();
        return joining.Follow();
    }

    private Point2 EndPoint(int end) => (end & 1) == 0 ? _paths[end >> 1].Points[0] : _paths[end >> 1].Points[^1];

    /// <summary>Joins pairs of ends at the same point; three or more stay apart and are a branch. Returns the ends at branches.</summary>
    private HashSet<int> JoinSamePoints()
    {
        var grid = new PointGrid(Tolerances.SamePointMm);
        for (var end = 0; end < _mate.Length; end++)
            grid.Add(EndPoint(end), end);
        var seen = new bool[_mate.Length];
        var branched = new HashSet<int>();
        for (var end = 0; end < _mate.Length; end++)
        {
            if (seen[end])
                continue;
            var group = GroupAt(end, grid, seen);
            if (group.Count == 2)
            {
                _mate[group[0]] = group[1];
                _mate[group[1]] = group[0];
            }
            else if (group.Count > 2)
            {
                branched.UnionWith(group);
                _nodes.Add(group);
            }
        }

        return branched;
    }

    private List<int> GroupAt(int end, PointGrid grid, bool[] seen)
    {
        var group = new List<int> { end };
        seen[end] = true;
        for (var i = 0; i < group.Count; i++)
        {
            var at = EndPoint(group[i]);
            foreach (var other in grid.Near(at))
            {
                if (seen[other] || (EndPoint(other) - at).Length > Tolerances.SamePointMm)
                    continue;
                seen[other] = true;
                group.Add(other);
            }
        }

        return group;
    }

    private void BridgeGaps(double gapMm, List<Gap> gaps, HashSet<int> branched)
    {
        if (!(gapMm > 0))
            return;
        var free = Enumerable.Range(0, _mate.Length).Where(e => _mate[e] < 0 && !branched.Contains(e)).ToList();
        var grid = new PointGrid(gapMm);
        foreach (var end in free)
            grid.Add(EndPoint(end), end);
        var pairs = new List<(double Width, Point2 Low, Point2 High, int A, int B)>();
        foreach (var a in free)
        {
            foreach (var b in grid.Near(EndPoint(a)))
            {
                var width = (EndPoint(a) - EndPoint(b)).Length;
                if (a < b && width <= gapMm)
                {
                    var low = Lower(EndPoint(a), EndPoint(b));
                    pairs.Add((width, low, EndPoint(a) == low ? EndPoint(b) : EndPoint(a), a, b));
                }
            }
        }

        // By place, not by index, where widths are equal: the order of lines in the file must not matter.
        foreach (var (_, _, _, a, b) in pairs.OrderBy(p => p.Width)
            .ThenBy(p => p.Low.X).ThenBy(p => p.Low.Y).ThenBy(p => p.High.X).ThenBy(p => p.High.Y))
        {
            if (_mate[a] >= 0 || _mate[b] >= 0 || (OtherEnd(a) == b && ChainLength(a) <= 2 * gapMm))
                continue;
            _mate[a] = b;
            _mate[b] = a;
            gaps.Add(new(EndPoint(a), EndPoint(b)));
        }
    }

    /// <summary>
    /// Where more than two ends meet, lines that lead nowhere are taken away, end by end; two ends that are left go on into each
    /// other, and a line that comes back to the same point closes there. What is left in threes stays a branch.
    /// </summary>
    private void PassBranches()
    {
        var nodeOf = new Dictionary<int, int>();
        for (var n = 0; n < _nodes.Count; n++)
        {
            foreach (var end in _nodes[n])
                nodeOf[end] = n;
        }

        var alive = _nodes.ConvertAll(n => n.ToHashSet());
        var open = new Stack<int>(nodeOf.Keys.Where(e => !nodeOf.ContainsKey(OtherEnd(e))));
        while (open.TryPop(out var end))
        {
            var node = nodeOf[end];
            if (!alive[node].Remove(end))
                continue;
            MarkTail(end);
            if (nodeOf.TryGetValue(OtherEnd(end), out var far) && alive[far].Remove(OtherEnd(end)) && alive[far].Count == 1)
                open.Push(alive[far].First());
            if (alive[node].Count == 1)
                open.Push(alive[node].First());
        }

        for (var n = 0; n < _nodes.Count; n++)
        {
            foreach (var end in _nodes[n].Where(e => alive[n].Contains(e) && alive[n].Contains(OtherEnd(e))).ToList())
            {
                if (_mate[end] < 0 && OtherEnd(end) is var other && other != end)
                    (_mate[end], _mate[other]) = (other, end);
            }

            var left = _nodes[n].Where(e => alive[n].Contains(e) && _mate[e] < 0).ToList();
            if (left.Count == 2)
                (_mate[left[0]], _mate[left[1]]) = (left[1], left[0]);
            else if (left.Count > 2)
                _branches.Add(new(_layer, _nodes[n].Select(EndPoint).OrderBy(p => p.X).ThenBy(p => p.Y).First(), _nodes[n].Count));
        }
    }

    private void MarkTail(int end)
    {
        for (var at = end; at >= 0; at = _mate[at ^ 1])
        {
            if (!_tails.Add(at >> 1))
                return;
        }
    }

    /// <summary>Of two points the left (then lower) one, whichever comes first in the file.</summary>
    private static Point2 Lower(Point2 p, Point2 q) => p.X < q.X || (p.X == q.X && p.Y <= q.Y) ? p : q;

    /// <summary>The other free end of the chain that begins at a free end.</summary>
    private int OtherEnd(int end)
    {
        var at = end ^ 1;
        while (_mate[at] >= 0)
            at = _mate[at] ^ 1;
        return at;
    }

    private double ChainLength(int end)
    {
        double sum = 0;
        var at = end;
        while (true)
        {
            var points = _paths[at >> 1].Points;
            for (var i = 1; i < points.Length; i++)
                sum += (points[i] - points[i - 1]).Length;
            at ^= 1;
            if (_mate[at] < 0)
                return sum;
            at = _mate[at];
        }
    }

    private Joined Follow()
    {
        var joined = new Joined([], [], [], [], _branches);
        var done = new bool[_paths.Count];
        for (var end = 0; end < _mate.Length; end++)
        {
            if (_mate[end] < 0 && !done[end >> 1])
            {
                var members = new List<DrawnPath>();
                var isTail = _tails.Contains(end >> 1);
                joined.Open.Add(Run(end, done, members, closed: false) with { IsTail = isTail });
                joined.OpenMembers.Add(members);
            }
        }

        for (var path = 0; path < _paths.Count; path++)
        {
            if (done[path])
                continue;
            var members = new List<DrawnPath>();
            var ring = Run(2 * path, done, members, closed: true);
            if (ring.Points.Length > 2)
            {
                joined.Rings.Add(ring);
                joined.Members.Add(members);
            }
            else
            {
                joined.Open.Add(ring with { Closed = false });
                joined.OpenMembers.Add(members);
            }
        }

        return joined;
    }

    private DrawnPath Run(int start, bool[] done, List<DrawnPath> members, bool closed)
    {
        var points = new List<Point2>();
        double area = 0, length = 0;
        for (var at = start; at >= 0 && !done[at >> 1]; at = _mate[at ^ 1])
        {
            done[at >> 1] = true;
            members.Add(_paths[at >> 1]);
            var piece = _paths[at >> 1].Points;
            var forward = (at & 1) == 0;
            area += forward ? _paths[at >> 1].CurveAreaMm2 : -_paths[at >> 1].CurveAreaMm2;
            length += _paths[at >> 1].CurveLengthMm;
            for (var i = 0; i < piece.Length; i++)
            {
                var p = piece[forward ? i : piece.Length - 1 - i];
                if (points.Count == 0 || (p - points[^1]).Length > Tolerances.SamePointMm)
                    points.Add(p);
                else if (i == 0)
                    points[^1] = Lower(p, points[^1]);
            }
        }

        if (closed && points.Count > 1 && (points[^1] - points[0]).Length <= Tolerances.SamePointMm)
        {
            points[0] = Lower(points[0], points[^1]);
            points.RemoveAt(points.Count - 1);
        }

        return new(_layer, [.. points], closed, _paths[start >> 1].Origin) { CurveAreaMm2 = area, CurveLengthMm = length };
    }
}

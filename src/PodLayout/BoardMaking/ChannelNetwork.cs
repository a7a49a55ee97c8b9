using System.Collections.Immutable;
using PodLayout.Air;
using PodLayout.Geometry;
using PodLayout.Shops;

namespace PodLayout.BoardMaking;

/// <summary>Channels as ways for air: which ports they join to the table's vacuum, and what is lost on the way.</summary>
/// <param name="Joined">Ports joined to the table's vacuum.</param>
/// <param name="Unjoined">Ports that are not.</param>
/// <param name="WorstLossPa">Greatest loss from the table's vacuum to a port.</param>
/// <param name="WorstPort">That port; null when there is none.</param>
/// <param name="MostFlowLPerMin">Greatest flow in any stretch.</param>
public sealed record ChannelNetwork(
    ImmutableArray<Port> Joined, ImmutableArray<Port> Unjoined, double WorstLossPa, Port? WorstPort, double MostFlowLPerMin)
{
    private readonly record struct Way(int To, double LengthMm);

    private readonly record struct Step(int Node, int Parent, double LengthMm);

    /// <summary>
    /// Works the network out. Each channel over the table's grooves is taken to draw its vacuum at one place, nearest to their
    /// middle, and each port to draw on the nearest such place: where the table's grooves run is not known, and more ways in
    /// only lose less.
    /// </summary>
    public static ChannelNetwork Of(
        ImmutableArray<Run> runs, ImmutableArray<Port> ports, Box2 vacuum, double widthMm, double depthMm, double flowPerPort, int openAtOnce)
    {
        var entries = Entries(runs, vacuum);
        var (nodes, ways) = Ways(runs, [.. ports.Select(p => p.Centre).Concat(entries)]);
        var order = NearestFirst(ways, entries.Select(e => nodes[Key(e)]));

        // Flow is gathered from the far ends towards the entries, loss summed up outwards again.
        var beyond = new int[nodes.Count];
        foreach (var port in ports.Where(p => nodes.ContainsKey(Key(p.Centre))))
        {
            beyond[nodes[Key(port.Centre)]]++;
        }

        foreach (var step in order.Reverse().Where(s => s.Parent >= 0))
        {
            beyond[step.Parent] += beyond[step.Node];
        }

        var loss = Enumerable.Repeat(double.NaN, nodes.Count).ToArray();
        double mostFlow = 0;
        foreach (var (node, parent, length) in order)
        {
            var flow = parent < 0 ? 0 : flowPerPort * Math.Min(openAtOnce, beyond[node]);
            loss[node] = parent < 0 ? 0 : loss[parent] + DuctFlow.LossPa(widthMm, depthMm, length, flow);
            mostFlow = Math.Max(mostFlow, flow);
        }

        ImmutableArray<Port> joined = [.. ports.Where(p => nodes.TryGetValue(Key(p.Centre), out var n) && !double.IsNaN(loss[n]))];
        var worst = joined.MaxBy(p => loss[nodes[Key(p.Centre)]]);
        return new(joined, [.. ports.Except(joined)], worst is null ? 0 : loss[nodes[Key(worst.Centre)]], worst, mostFlow);
    }

    // Shortest ways from the entries (Dijkstra 1959), each node after the one it is reached from.
    private static ImmutableArray<Step> NearestFirst(List<List<Way>> ways, IEnumerable<int> starts)
    {
        PriorityQueue<Step, (double LengthMm, int Order)> waiting = new();
        var reached = new bool[ways.Count];
        var steps = ImmutableArray.CreateBuilder<Step>();
        foreach (var start in starts)
        {
            waiting.Enqueue(new(start, -1, 0), (0, waiting.Count));
        }

        var asked = waiting.Count;
        while (waiting.TryDequeue(out var step, out var at))
        {
            if (reached[step.Node])
            {
                continue;
            }

            reached[step.Node] = true;
            steps.Add(step);
            foreach (var way in ways[step.Node].Where(w => !reached[w.To]))
            {
                waiting.Enqueue(new(way.To, step.Node, way.LengthMm), (at.LengthMm + way.LengthMm, asked++));
            }
        }

        return steps.ToImmutable();
    }

    // One for each run over the vacuum.
    private static ImmutableArray<Point2> Entries(ImmutableArray<Run> runs, Box2 vacuum) =>
    [
        .. runs.Where(r => r.Box.Touches(vacuum))
            .Select(r => new Point2(
                Math.Clamp(vacuum.Centre.X, Math.Max(r.From.X, vacuum.MinX), Math.Min(r.To.X, vacuum.MaxX)),
                Math.Clamp(vacuum.Centre.Y, Math.Max(r.From.Y, vacuum.MinY), Math.Min(r.To.Y, vacuum.MaxY))))
            .OrderBy(p => (p - vacuum.Centre).Length).ThenBy(p => p.Y).ThenBy(p => p.X),
    ];

    private static (Dictionary<(long, long), int> Nodes, List<List<Way>> Ways) Ways(ImmutableArray<Run> runs, ImmutableArray<Point2> wanted)
    {
        Dictionary<(long, long), int> nodes = [];
        List<List<Way>> ways = [];
        for (var i = 0; i < runs.Length; i++)
        {
            var run = runs[i];
            var onRun = wanted.Where(p => run.DistanceTo(p) < 1e-6)
                .Concat([run.From, run.To])
                .Concat(runs.Where((other, j) => j != i && run.DistanceTo(other) < 1e-6).SelectMany(other => Meeting(run, other)))
                .OrderBy(p => (p - run.From).Length).ToList();
            for (var k = 0; k < onRun.Count; k++)
            {
                var node = NodeOf(onRun[k]);
                if (k > 0 && NodeOf(onRun[k - 1]) is var before && before != node)
                {
                    var length = (onRun[k] - onRun[k - 1]).Length;
                    ways[before].Add(new(node, length));
                    ways[node].Add(new(before, length));
                }
            }
        }

        return (nodes, ways);

        int NodeOf(Point2 p)
        {
            if (!nodes.TryGetValue(Key(p), out var node))
            {
                nodes[Key(p)] = node = ways.Count;
                ways.Add([]);
            }

            return node;
        }
    }

    private static IEnumerable<Point2> Meeting(Run a, Run b) => a.IsAlongX != b.IsAlongX
        ? [a.IsAlongX ? new(b.From.X, a.From.Y) : new(a.From.X, b.From.Y)]
        : new[] { b.From, b.To }.Where(p => a.DistanceTo(p) < 1e-6);

    // Squares of about a ten-thousandth of a millimetre, whose edges fall on no round number of mm or inches: sums of pitches
    // that should be equal are then never parted.
    private static (long, long) Key(Point2 p) => ((long)Math.Floor(p.X * 9973.1 + 0.317), (long)Math.Floor(p.Y * 9973.1 + 0.317));
}

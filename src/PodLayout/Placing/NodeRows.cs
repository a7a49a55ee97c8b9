using System.Collections.Immutable;

namespace PodLayout.Placing;

/// <summary>The support rows of a node: made from those of the larger set where it has them.</summary>
internal sealed class NodeRows
{
    private readonly ImmutableArray<int> _roots;
    private readonly BoxReach _reach;
    private readonly Dictionary<int, SeatList?> _larger;
    private readonly int[] _number;
    private readonly SortedDictionary<int, int[]> _made = [];

    /// <summary>Prepares the rows.</summary>
    /// <param name="node">The node.</param>
    /// <param name="roots">The seats that are alive in it, as indices of the ground's seats, rising.</param>
    /// <param name="reach">The reach of those seats.</param>
    public NodeRows(SearchNode node, ImmutableArray<int> roots, BoxReach reach)
    {
        _roots = roots;
        _reach = reach;
        _larger = node.Rows.ToDictionary(r => r.Point, r => r.Seats);
        _number = new int[node.Ground.Seats.Length];
        Array.Fill(_number, -1);
        for (var i = 0; i < roots.Length; i++)
        {
            _number[roots[i]] = i;
        }
    }

    /// <summary>The seats, numbered within the node, that could support a point.</summary>
    public int[] SupportersOf(int point)
    {
        if (!_made.TryGetValue(point, out var row))
        {
            row = _larger.TryGetValue(point, out var seats) && seats is not null
                ? [.. seats.Seats().Select(s => _number[s]).Where(s => s >= 0 && _reach.Supports(s, point))]
                : _reach.SupportersOf(point);
            _made.Add(point, row);
        }

        return row;
    }

    /// <summary>What it took so far.</summary>
    public SearchWork Work => new(_made.Count, _reach.Asked);

    /// <summary>All rows made so far, in the seats of the ground, for the parts of this set.</summary>
    public ImmutableArray<PointRow> InGround() =>
        [.. _made.Select(row => new PointRow(row.Key, SeatList.Of(row.Value.Select(s => _roots[s]))))];
}

using System.Collections.Immutable;

namespace PodLayout.Geometry;

/// <summary>The directed edges of some rings, found by place. Wood lies to the left of every edge.</summary>
public sealed class EdgeGrid
{
    private readonly double _cellMm;
    private readonly Box2 _bounds;
    private readonly ImmutableArray<Box2> _boxes;
    private readonly int _columns;
    private readonly int _rows;
    private readonly List<int>?[] _cells;

    /// <summary>Sorts the edges into square cells.</summary>
    /// <param name="rings">Outer rings counter-clockwise, holes clockwise.</param>
    /// <param name="cellMm">Side of a cell; a quarter of a usual query's extent serves well.</param>
    public EdgeGrid(IEnumerable<Ring> rings, double cellMm)
    {
        var starts = ImmutableArray.CreateBuilder<Point2>();
        var next = ImmutableArray.CreateBuilder<int>();
        var previous = ImmutableArray.CreateBuilder<int>();
        foreach (var ring in rings)
        {
            int first = starts.Count, n = ring.Points.Length;
            starts.AddRange(ring.Points);
            next.AddRange(Enumerable.Range(0, n).Select(i => first + (i + 1) % n));
            previous.AddRange(Enumerable.Range(0, n).Select(i => first + (i + n - 1) % n));
        }

        Starts = starts.ToImmutable();
        Next = next.ToImmutable();
        Previous = previous.ToImmutable();
        _bounds = Box2.Around(Starts);
        _boxes = [.. Enumerable.Range(0, Starts.Length).Select(i => Box2.Around([Starts[i], Starts[Next[i]]]))];
        // No more cells than a few for each edge, however large the part.
        _cellMm = Math.Max(cellMm, Math.Sqrt(_bounds.Width * _bounds.Height / (4.0 * Starts.Length + 64)) / 4);
        _columns = (int)(_bounds.Width / _cellMm) + 1;
        _rows = (int)(_bounds.Height / _cellMm) + 1;
        _cells = new List<int>?[_columns * _rows];
        for (var i = 0; i < Starts.Length; i++)
        {
            foreach (var cell in Cells(_boxes[i]))
            {
                (_cells[cell] ??= []).Add(i);
            }
        }
    }

    /// <summary>Where edge i starts. It ends where edge <see cref="Next"/>[i] starts.</summary>
    public ImmutableArray<Point2> Starts { get; }

    /// <summary>The edge that follows in the ring.</summary>
    public ImmutableArray<int> Next { get; }

    /// <summary>The edge that comes before in the ring.</summary>
    public ImmutableArray<int> Previous { get; }

    /// <summary>Indices of the edges whose boxes touch a box, each once, in rising order.</summary>
    public ImmutableArray<int> Touching(Box2 box)
    {
        List<int> found = [];
        if (_bounds.Touches(box))
        {
            foreach (var cell in Cells(box))
            {
                foreach (var edge in _cells[cell] ?? [])
                {
                    if (_boxes[edge].Touches(box))
                    {
                        found.Add(edge);
                    }
                }
            }
        }

        // A long edge lies in many cells.
        found.Sort();
        return [.. found.Where((edge, i) => i == 0 || found[i - 1] != edge)];
    }

    private IEnumerable<int> Cells(Box2 box)
    {
        var toColumn = Math.Min(_columns - 1, (int)((box.MaxX - _bounds.MinX) / _cellMm));
        var toRow = Math.Min(_rows - 1, (int)((box.MaxY - _bounds.MinY) / _cellMm));
        for (var row = Math.Max(0, (int)((box.MinY - _bounds.MinY) / _cellMm)); row <= toRow; row++)
        {
            for (var column = Math.Max(0, (int)((box.MinX - _bounds.MinX) / _cellMm)); column <= toColumn; column++)
            {
                yield return row * _columns + column;
            }
        }
    }
}

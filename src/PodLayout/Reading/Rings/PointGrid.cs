using PodLayout.Geometry;

namespace PodLayout.Reading.Rings;

/// <summary>Finds points near a point without looking at all of them.</summary>
internal sealed class PointGrid(double cellMm)
{
    private readonly Dictionary<(long X, long Y), List<int>> _cells = [];

    private (long X, long Y) CellOf(Point2 p) => ((long)Math.Floor(p.X / cellMm), (long)Math.Floor(p.Y / cellMm));

    public void Add(Point2 p, int index)
    {
        var cell = CellOf(p);
        if (!_cells.TryGetValue(cell, out var list))
            _cells[cell] = list = [];
        list.Add(index);
    }

    /// <summary>Indices in the cell of the point and the eight around it: all points within one cell's size, and some more.</summary>
    public IEnumerable<int> Near(Point2 p)
    {
        var (x, y) = CellOf(p);
        for (var dx = -1; dx <= 1; dx++)
        {
            for (var dy = -1; dy <= 1; dy++)
            {
                if (!_cells.TryGetValue((x + dx, y + dy), out var list))
                    continue;
                foreach (var i in list)
                    yield return i;
            }
        }
    }
}

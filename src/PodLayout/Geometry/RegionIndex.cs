using System.Runtime.CompilerServices;

namespace PodLayout.Geometry;

/// <summary>
/// Fast questions about one region: is this point in it, does this box touch it? Edges are sorted into bands along Y.
/// </summary>
public sealed class RegionIndex
{
    private const double BandMm = 8;

    private readonly double[] _ax, _ay, _bx, _by;
    private readonly int[][] _bands;
    private readonly Box2 _bounds;

    /// <summary>Indexes a region; an empty one answers no to everything.</summary>
    public RegionIndex(Region region)
    {
        var edges = region.Boundary.SelectMany(r => r.Points.Select((p, i) => (A: p, B: r.Points[(i + 1) % r.Points.Length])))
            .ToArray();
        _ax = [.. edges.Select(e => e.A.X)];
        _ay = [.. edges.Select(e => e.A.Y)];
        _bx = [.. edges.Select(e => e.B.X)];
        _by = [.. edges.Select(e => e.B.Y)];
        IsEmpty = edges.Length == 0;
        _bounds = IsEmpty ? default : region.Bounds;
        var bands = new List<int>[IsEmpty ? 0 : Band(_bounds.MaxY) + 1];
        for (var i = 0; i < edges.Length; i++)
        {
            var last = Band(Math.Max(_ay[i], _by[i]));
            for (var band = Band(Math.Min(_ay[i], _by[i])); band <= last; band++)
            {
                (bands[band] ??= []).Add(i);
            }
        }

        _bands = [.. bands.Select(b => b?.ToArray() ?? [])];
    }

    /// <summary>Whether the region has no area.</summary>
    public bool IsEmpty { get; }

    /// <summary>The smallest box around the region; all zero when it is empty.</summary>
    public Box2 Bounds => _bounds;

    /// <summary>Whether the point lies in the region (points of the boundary: either answer).</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public bool Contains(Point2 p)
    {
        if (IsEmpty || !_bounds.Contains(p))
        {
            return false;
        }

        var inside = false;
        foreach (var i in _bands[Band(p.Y)])
        {
            // Half-open in Y, so that a ray through a corner counts it once.
            if (_ay[i] > p.Y != _by[i] > p.Y
                && p.X < _ax[i] + (p.Y - _ay[i]) / (_by[i] - _ay[i]) * (_bx[i] - _ax[i]))
            {
                inside = !inside;
            }
        }

        return inside;
    }

    /// <summary>Whether the point lies in the region and no edge comes as near to it as a distance along either axis.</summary>
    public bool ContainsClear(Point2 p, double byMm)
    {
        if (!Contains(p))
        {
            return false;
        }

        var around = new Box2(p.X, p.Y, p.X, p.Y).Grow(byMm);
        var last = Band(Math.Min(around.MaxY, _bounds.MaxY));
        for (var band = Band(Math.Max(around.MinY, _bounds.MinY)); band <= last; band++)
        {
            if (Array.Exists(_bands[band], i => EdgeTouches(i, around)))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Whether the point lies in the region or no farther from it than a distance.</summary>
    public bool IsWithin(Point2 p, double byMm)
    {
        var around = new Box2(p.X, p.Y, p.X, p.Y).Grow(byMm);
        if (IsEmpty || !_bounds.Touches(around))
        {
            return false;
        }

        var last = Band(Math.Min(around.MaxY, _bounds.MaxY));
        for (var band = Band(Math.Max(around.MinY, _bounds.MinY)); band <= last; band++)
        {
            if (Array.Exists(_bands[band], i => SquareToEdge(i, p) <= byMm * byMm))
            {
                return true;
            }
        }

        return Contains(p);
    }

    /// <summary>Whether some point of the closed box lies in the region.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public bool Touches(Box2 box)
    {
        if (IsEmpty || !_bounds.Touches(box))
        {
            return false;
        }

        var last = Band(Math.Min(box.MaxY, _bounds.MaxY));
        for (var band = Band(Math.Max(box.MinY, _bounds.MinY)); band <= last; band++)
        {
            foreach (var i in _bands[band])
            {
                if (EdgeTouches(i, box))
                {
                    return true;
                }
            }
        }

        return Contains(box.Centre);
    }

    private int Band(double y) => (int)((y - _bounds.MinY) / BandMm);

    private double SquareToEdge(int i, Point2 p)
    {
        Point2 a = new(_ax[i], _ay[i]), way = new Point2(_bx[i], _by[i]) - a;
        var square = way.Dot(way);
        var off = p - (a + way * (square == 0 ? 0 : Math.Clamp((p - a).Dot(way) / square, 0, 1)));
        return off.Dot(off);
    }

    private bool EdgeTouches(int i, Box2 box)
    {
        double ax = _ax[i], ay = _ay[i], bx = _bx[i], by = _by[i];
        if (Math.Max(ax, bx) < box.MinX || Math.Min(ax, bx) > box.MaxX
            || Math.Max(ay, by) < box.MinY || Math.Min(ay, by) > box.MaxY)
        {
            return false;
        }

        // The line through the edge misses the box when all four corners lie strictly on one side of it.
        double nx = by - ay, ny = ax - bx;
        var middle = nx * (box.Centre.X - ax) + ny * (box.Centre.Y - ay);
        var reach = Math.Abs(nx) * box.Width / 2 + Math.Abs(ny) * box.Height / 2;
        return Math.Abs(middle) <= reach;
    }
}

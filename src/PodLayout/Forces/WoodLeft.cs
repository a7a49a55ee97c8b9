using PodLayout.Geometry;

namespace PodLayout.Forces;

/// <summary>How high the wood still stands at each place of the blank, while a program takes it away.</summary>
internal sealed class WoodLeft
{
    private const double CoarsestMm = 2;
    private const double FinestMm = 0.5;
    private const int MostCells = 4_000_000;

    // A cell is as wide as this share of the smallest tool.
    private const double ShareOfTool = 8;

    private readonly double _cell;
    private readonly Box2 _bounds;
    private readonly int _columns, _rows;
    private readonly float[] _levels;

    /// <summary>Untouched wood.</summary>
    /// <param name="blank">Where there is wood.</param>
    /// <param name="faceMm">How high it stands above the underside.</param>
    /// <param name="smallestToolMm">Diameter of the smallest tool.</param>
    public WoodLeft(Region blank, double faceMm, double smallestToolMm)
    {
        _bounds = blank.IsEmpty ? default : blank.Bounds;
        _cell = Math.Max(
            Math.Clamp(smallestToolMm / ShareOfTool, FinestMm, CoarsestMm), Math.Sqrt(_bounds.Width * _bounds.Height / MostCells));
        _columns = blank.IsEmpty ? 0 : (int)(_bounds.Width / _cell) + 1;
        _rows = blank.IsEmpty ? 0 : (int)(_bounds.Height / _cell) + 1;
        _levels = new float[_columns * _rows];
        var wood = new RegionIndex(blank);
        for (var row = 0; row < _rows; row++)
        {
            for (var column = 0; column < _columns; column++)
            {
                _levels[row * _columns + column] = wood.Contains(Middle(column, row)) ? (float)faceMm : float.NegativeInfinity;
            }
        }
    }

    /// <summary>
    /// The highest wood under a disc, mm above the underside; negative infinity where there is none. The outermost hair of the
    /// disc is left out, where a tool that has been here before may have left part of a cell.
    /// </summary>
    public double HighestUnder(Point2 centre, double radiusMm)
    {
        var highest = float.NegativeInfinity;
        var reach = Math.Max(0, radiusMm - 0.75 * _cell);
        foreach (var (row, first, last) in Rows(centre, reach))
        {
            for (var i = first; i <= last; i++)
            {
                highest = Math.Max(highest, _levels[row * _columns + i]);
            }
        }

        return Math.Max(highest, LevelAt(centre));
    }

    /// <summary>How wide the wood is that a disc meets along its leading half, mm; of what stands lower than a height nothing counts.</summary>
    /// <param name="centre">The disc's centre.</param>
    /// <param name="way">Unit vector of its way.</param>
    /// <param name="radiusMm">Its radius.</param>
    /// <param name="aboveMm">The height.</param>
    public double WidthAhead(Point2 centre, Point2 way, double radiusMm, double aboveMm)
    {
        const int Places = 24;
        var reach = Math.Max(0, radiusMm - 0.75 * _cell);
        Point2 across = new(-way.Y, way.X);
        var met = 0;
        for (var i = 0; i < Places; i++)
        {
            var aside = reach * ((2 * i + 1.0) / Places - 1);
            met += LevelAt(centre + across * aside + way * Math.Sqrt(reach * reach - aside * aside)) > aboveMm ? 1 : 0;
        }

        return 2 * radiusMm * met / Places;
    }

    /// <summary>Takes away the wood under a disc above a height.</summary>
    public void Take(Point2 centre, double radiusMm, double heightMm)
    {
        foreach (var (row, first, last) in Rows(centre, radiusMm))
        {
            for (var i = row * _columns + first; i <= row * _columns + last; i++)
            {
                _levels[i] = Math.Min(_levels[i], (float)heightMm);
            }
        }
    }

    private float LevelAt(Point2 p)
    {
        var (column, row) = ((int)Math.Floor((p.X - _bounds.MinX) / _cell), (int)Math.Floor((p.Y - _bounds.MinY) / _cell));
        return column < 0 || row < 0 || column >= _columns || row >= _rows ? float.NegativeInfinity : _levels[row * _columns + column];
    }

    private Point2 Middle(int column, int row) => new(_bounds.MinX + (column + 0.5) * _cell, _bounds.MinY + (row + 0.5) * _cell);

    // Cells whose middles lie in a disc, row by row.
    private IEnumerable<(int Row, int First, int Last)> Rows(Point2 centre, double radius)
    {
        var from = Math.Max(0, (int)Math.Ceiling((centre.Y - radius - _bounds.MinY) / _cell - 0.5));
        var to = Math.Min(_rows - 1, (int)Math.Floor((centre.Y + radius - _bounds.MinY) / _cell - 0.5));
        for (var row = from; row <= to; row++)
        {
            var off = Middle(0, row).Y - centre.Y;
            var half = Math.Sqrt(Math.Max(0, radius * radius - off * off));
            var first = Math.Max(0, (int)Math.Ceiling((centre.X - half - _bounds.MinX) / _cell - 0.5));
            var last = Math.Min(_columns - 1, (int)Math.Floor((centre.X + half - _bounds.MinX) / _cell - 0.5));
            if (first <= last)
            {
                yield return (row, first, last);
            }
        }
    }
}

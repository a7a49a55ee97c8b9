using System.Runtime.CompilerServices;

namespace PodLayout.Holding;

/// <summary>As many columns of the programme as it has rows, the inverse of their matrix, and how much of each is in use.</summary>
internal sealed class Basis
{
    /// <summary>Rows of equilibrium: three forces, three moments. Those that limit friction follow them.</summary>
    public const int Balances = 6;
    public const int OfContact = 1;
    public const int OfLoad = 2;
    public const int OfSlack = 3;
    private const int OfNothing = 0;
    private const double Tiny = 1e-11;

    private readonly double[] _inverse;
    private readonly double[] _amounts;
    private readonly int[] _kinds;
    private readonly double[] _way;

    // To begin with, what is missing to the right side of a balance, and all that a limit allows: a column of its own for each row.
    public Basis(double[] right)
        : this(right.Length)
    {
        for (var i = 0; i < Rows; i++)
        {
            _inverse[i * Rows + i] = right[i] < 0 ? -1 : 1;
            _amounts[i] = Math.Abs(right[i]);
            _kinds[i] = i < Balances ? OfNothing : OfSlack;
        }
    }

    private Basis(int rows)
    {
        Rows = rows;
        _inverse = new double[rows * rows];
        _amounts = new double[rows];
        _kinds = new int[rows];
        _way = new double[rows];
    }

    public int Rows { get; }

    public double Missing => _amounts.Where((_, i) => _kinds[i] == OfNothing).Sum();

    public Basis Copy()
    {
        var copy = new Basis(Rows);
        copy.CopyFrom(this);
        return copy;
    }

    public void CopyFrom(Basis other)
    {
        other._inverse.CopyTo(_inverse, 0);
        other._amounts.CopyTo(_amounts, 0);
        other._kinds.CopyTo(_kinds, 0);
    }

    public double Amount(int row) => _amounts[row];

    public ReadOnlySpan<double> Prices(int row) => _inverse.AsSpan(row * Rows, Rows);

    public void PricesOfMissing(Span<double> prices)
    {
        prices.Clear();
        for (var r = 0; r < Rows; r++)
        {
            for (var i = 0; i < Rows && _kinds[r] == OfNothing; i++)
            {
                prices[i] -= _inverse[r * Rows + i];
            }
        }
    }

    /// <summary>Brings a column in; returns the row of the one that leaves for it, -1 when none has to.</summary>
    public int Enter(double[] column, int kind)
    {
        Follow(column);
        int leaving = -1;
        var least = double.PositiveInfinity;
        for (var i = 0; i < Rows; i++)
        {
            // What is missing from nothing must not grow again, either way.
            var hinders = _way[i] > Tiny || (_kinds[i] == OfNothing && _way[i] < -Tiny && _amounts[i] <= Tiny);
            var most = hinders ? Math.Abs(_amounts[i] / _way[i]) : double.PositiveInfinity;
            if (hinders && (most < least || (most == least && Math.Abs(_way[i]) > Math.Abs(_way[leaving]))))
            {
                (leaving, least) = (i, most);
            }
        }

        if (leaving >= 0)
        {
            Pivot(leaving, kind);
        }

        return leaving;
    }

    /// <summary>How much of a load in the place of another these columns bear; 0 when they do not balance it.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public double Borne(double[] load, int row)
    {
        Follow(load);
        if (_way[row] < 1e-9)
        {
            return 0;
        }

        var amount = _amounts[row] / _way[row];
        for (var i = 0; i < Rows; i++)
        {
            if (i != row && (_amounts[i] < _way[i] * amount || (_kinds[i] == OfNothing && Math.Abs(_way[i] * amount) > _amounts[i] + Tiny)))
            {
                return 0;
            }
        }

        return amount;
    }

    /// <summary>Puts a column in the place of another; false, and nothing done, when that would make an amount negative.</summary>
    public bool TryReplace(double[] column, int row)
    {
        Follow(column);
        if (Math.Abs(_way[row]) < 1e-9)
        {
            return false;
        }

        var amount = _amounts[row] / _way[row];
        for (var i = 0; i < Rows; i++)
        {
            if ((i == row ? amount : _amounts[i] - _way[i] * amount) < 0)
            {
                return false;
            }
        }

        Pivot(row, OfLoad);
        return true;
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Follow(double[] column)
    {
        // Columns of contacts are 0 in most rows that limit friction.
        Array.Clear(_way);
        for (var j = 0; j < Rows; j++)
        {
            var amount = column[j];
            for (var i = 0; amount != 0 && i < Rows; i++)
            {
                _way[i] += _inverse[i * Rows + j] * amount;
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Pivot(int row, int kind)
    {
        var by = 1 / _way[row];
        for (var j = 0; j < Rows; j++)
        {
            _inverse[row * Rows + j] *= by;
        }

        _amounts[row] = Math.Max(0, _amounts[row] * by);
        for (var i = 0; i < Rows; i++)
        {
            if (i != row && _way[i] != 0)
            {
                for (var j = 0; j < Rows; j++)
                {
                    _inverse[i * Rows + j] -= _way[i] * _inverse[row * Rows + j];
                }

                _amounts[i] = Math.Max(0, _amounts[i] - _way[i] * _amounts[row]);
            }
        }

        _kinds[row] = kind;
    }
}

using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace PodLayout.Holding;

/// <summary>
/// The largest multiple of a load under which a part that is borne at some spots still has an equilibrium: a linear programme of
/// six rows (three forces, three moments) and one for each limit of friction, solved for one load after another.
/// </summary>
/// <remarks>
/// Largest s such that pushes n &gt;= 0 and friction |t| &lt;= mu n at the spots balance the resting load and s times the load,
/// while the friction of all spots of a pod together keeps its limit: <see cref="HoldingReport"/> says why there is one.
/// The friction cones are round: facets of them are made where a motion asks for them (column generation), always inscribed, so
/// that the factor is approached from below. Solved by the revised simplex method on these few rows. The next load starts from the
/// basis of the last where that still serves. The dual solution is the motion that the part makes when the load grows further
/// (the virtual work of all forces on it balances). Not for two threads at once.
/// </remarks>
public sealed class Equilibrium
{
    private const int MostPivots = 400;
    private const int LoadsBetweenRestarts = 64;

    // Ends of earlier loads that are tried on a new one.
    private const int MostEnds = 24;

    // Relative gap at which the factor counts as found. Far below what any of the figures that go in is known to.
    private const double Gap = 1e-4;

    private readonly Contact[] _contacts;
    private readonly int[] _limitOf;
    private readonly double[] _limitsN;
    private readonly double[] _load;
    private readonly double[] _right;
    private readonly double[] _step;
    private readonly double _length;
    private readonly Basis _rest;
    private readonly Basis _now;
    private readonly double _pushN;
    private readonly List<(Basis End, int LoadRow)> _ends = [];
    private int _sinceRestart;
    private int _loadRow = -1;

    /// <summary>Prepares a part at rest.</summary>
    /// <param name="contacts">Where it is borne.</param>
    /// <param name="resting">What acts on it all the time: weight and vacuum.</param>
    /// <param name="lengthMm">A length of the size of the part, for scaling.</param>
    /// <param name="limitOf">For each contact the index of the limit that its friction counts towards, -1 for none; empty for none at all.</param>
    /// <param name="limitsN">The most friction that the contacts of each limit bring together, N.</param>
    public Equilibrium(
        ImmutableArray<Contact> contacts, Wrench resting, double lengthMm, ImmutableArray<int> limitOf = default, ImmutableArray<double> limitsN = default)
    {
        _contacts = [.. contacts];
        _limitOf = limitOf.IsDefaultOrEmpty ? [.. Enumerable.Repeat(-1, contacts.Length)] : [.. limitOf];
        _limitsN = limitsN.IsDefault ? [] : [.. limitsN];
        _length = lengthMm;
        _right = new double[Basis.Balances + _limitsN.Length];
        _load = new double[_right.Length];
        _step = new double[_right.Length];
        Put(resting * -1, _right);
        _pushN = _right.Sum(Math.Abs) + 1e-9;
        _limitsN.CopyTo(_right, Basis.Balances);
        for (var i = 0; i < _right.Length; i++)
        {
            // A hair beside the resting load keeps the programme from standing still at corners where many rows meet.
            _right[i] += _pushN * 1e-10 * (1 + Math.Sqrt(i + 2.0) % 1);
        }

        _rest = new(_right);
        CanRest = Rest();
        _now = _rest.Copy();
    }

    /// <summary>Whether the part rests without any further load.</summary>
    public bool CanRest { get; }

    /// <summary>How far a load can grow.</summary>
    /// <param name="load">The load.</param>
    /// <param name="enough">
    /// When it is quickly seen that the load can grow to at least this, the answer is a factor of at least this that may be less
    /// than the largest, without a motion.
    /// </param>
    public Limit Of(Wrench load, double enough = double.PositiveInfinity)
    {
        if (!CanRest)
        {
            return new(0, default);
        }

        Put(load, _load);
        // Pushes that balance an earlier load mostly balance this one too, at some factor: whatever they bear can be borne.
        for (var e = _ends.Count - 1; e >= 0 && !double.IsPositiveInfinity(enough); e--)
        {
            var borne = _ends[e].End.Borne(_load, _ends[e].LoadRow);
            if (borne >= enough)
            {
                return new(borne, default);
            }
        }

        if (!Resume() && !Begin())
        {
            return new(double.PositiveInfinity, default);
        }

        return Climb(load);
    }

    // Pushes at the spots that balance the resting load.
    private bool Rest()
    {
        var prices = new double[_right.Length];
        for (var pivots = 0; pivots < MostPivots; pivots++)
        {
            // Cost of what is still unbalanced.
            _rest.PricesOfMissing(prices);
            var worst = MostInTheWay(ToMotion(prices), prices, _pushN);
            if (worst.Gain <= 1e-9 * _pushN || Enter(_rest, worst) < 0)
            {
                break;
            }
        }

        return _rest.Missing <= _pushN * 1e-7;
    }

    // From the basis of the last load: serves when the new load in place of the old keeps all pushes at 0 or more.
    private bool Resume()
    {
        if (_loadRow < 0 || ++_sinceRestart >= LoadsBetweenRestarts)
        {
            return false;
        }

        return _now.TryReplace(_load, _loadRow);
    }

    private bool Begin()
    {
        _sinceRestart = 0;
        _now.CopyFrom(_rest);
        _loadRow = _now.Enter(_load, Basis.OfLoad);
        return _loadRow >= 0;
    }

    private Limit Climb(Wrench load)
    {
        var motion = default(Motion);
        for (var pivots = 0; pivots < MostPivots; pivots++)
        {
            var prices = _now.Prices(_loadRow);
            motion = ToMotion(prices);
            var factor = _now.Amount(_loadRow);
            var worst = MostInTheWay(motion, prices, _pushN + factor * Math.Abs(load.Fz));
            if (worst.Gain <= Gap * factor + 1e-9)
            {
                Remember();
                break;
            }

            var row = Enter(_now, worst);
            if (row < 0)
            {
                // No end to it.
                _loadRow = -1;
                return new(double.PositiveInfinity, default);
            }

            if (row == _loadRow)
            {
                // The load left the basis: it is borne not at all.
                _loadRow = -1;
                return new(0, motion);
            }
        }

        return new(Math.Max(0, _now.Amount(_loadRow)), motion);
    }

    private void Remember()
    {
        if (_ends.Count < MostEnds)
        {
            _ends.Add((_now.Copy(), _loadRow));
            return;
        }

        // The oldest makes room, and its arrays are used again.
        var (oldest, _) = _ends[0];
        _ends.RemoveAt(0);
        oldest.CopyFrom(_now);
        _ends.Add((oldest, _loadRow));
    }

    // What gains most: a contact pushed, with or without friction (an index of 0 or more), or a limit not made full use of (its
    // complement). How free a spot is counts for all the push there is, and the price of a limit for all of it.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private (int Index, double Gain, Motion Motion, bool Rubs) MostInTheWay(Motion motion, ReadOnlySpan<double> prices, double pushN)
    {
        var (index, gain, rubs) = (0, 0.0, false);
        for (var c = 0; c < _contacts.Length; c++)
        {
            var price = _limitOf[c] < 0 ? 0 : prices[Basis.Balances + _limitOf[c]];
            var (freedom, slides) = _contacts[c].Freedom(motion, price);
            if (-freedom * pushN > gain)
            {
                (index, gain, rubs) = (c, -freedom * pushN, slides);
            }
        }

        for (var l = 0; l < _limitsN.Length; l++)
        {
            if (-prices[Basis.Balances + l] * _limitsN[l] > gain)
            {
                (index, gain) = (~l, -prices[Basis.Balances + l] * _limitsN[l]);
            }
        }

        return (index, gain, motion, rubs);
    }

    private int Enter(Basis basis, (int Index, double Gain, Motion Motion, bool Rubs) chosen)
    {
        Array.Clear(_step);
        if (chosen.Index < 0)
        {
            _step[Basis.Balances + ~chosen.Index] = 1;
            return basis.Enter(_step, Basis.OfSlack);
        }

        var contact = _contacts[chosen.Index];
        Put(chosen.Rubs ? contact.Hardest(chosen.Motion) : contact.Normal, _step);
        if (chosen.Rubs && _limitOf[chosen.Index] >= 0)
        {
            _step[Basis.Balances + _limitOf[chosen.Index]] = contact.Friction;
        }

        return basis.Enter(_step, Basis.OfContact);
    }

    // Moments in units of the length, so that all rows are of one size.
    private void Put(Wrench w, double[] into)
    {
        (into[0], into[1], into[2]) = (w.Fx, w.Fy, w.Fz);
        (into[3], into[4], into[5]) = (w.Mx / _length, w.My / _length, w.Mz / _length);
    }

    private Motion ToMotion(ReadOnlySpan<double> prices) =>
        new(prices[0], prices[1], prices[2], prices[3] / _length, prices[4] / _length, prices[5] / _length);
}

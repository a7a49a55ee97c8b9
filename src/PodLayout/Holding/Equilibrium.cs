using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace PodLayout.Holding;

/// <summary>
/// The largest multiple of a load under which a part that is borne at some spots still has an equilibrium: a linear programme of
/// six rows (three forces, three moments), solved for one load after another.
/// </summary>
/// <remarks>
/// Largest s such that pushes n &gt;= 0 and friction |t| &lt;= mu n at the spots balance the resting load and s times the load.
/// The friction cones are round: facets of them are made where a motion asks for them (column generation), always inscribed, so
/// that the factor is approached from below. Solved by the revised simplex method on the six rows. The next load starts from the
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
    private readonly double[] _load = new double[Basis.Rows];
    private readonly double[] _right = new double[Basis.Rows];
    private readonly double[] _step = new double[Basis.Rows];
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
    public Equilibrium(ImmutableArray<Contact> contacts, Wrench resting, double lengthMm)
    {
        _contacts = [.. contacts];
        _length = lengthMm;
        Put(resting * -1, _right);
        _pushN = _right.Sum(Math.Abs) + 1e-9;
        for (var i = 0; i < Basis.Rows; i++)
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
        Span<double> prices = stackalloc double[Basis.Rows];
        for (var pivots = 0; pivots < MostPivots; pivots++)
        {
            // Cost of what is still unbalanced.
            _rest.PricesOfMissing(prices);
            var motion = ToMotion(prices);
            var (contact, freedom) = MostInTheWay(motion);
            if (freedom >= -1e-9)
            {
                break;
            }

            Put(_contacts[contact].Hardest(motion), _step);
            if (_rest.Enter(_step, Basis.OfContact) < 0)
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
            motion = ToMotion(_now.Prices(_loadRow));
            var (contact, freedom) = MostInTheWay(motion);
            var factor = _now.Amount(_loadRow);
            var pushes = _pushN + factor * Math.Abs(load.Fz);
            if (-freedom * pushes <= Gap * factor + 1e-9)
            {
                Remember();
                break;
            }

            Put(_contacts[contact].Hardest(motion), _step);
            var row = _now.Enter(_step, Basis.OfContact);
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

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private (int Contact, double Freedom) MostInTheWay(Motion motion)
    {
        (int Contact, double Freedom) worst = (-1, double.PositiveInfinity);
        for (var c = 0; c < _contacts.Length; c++)
        {
            var freedom = _contacts[c].Freedom(motion);
            if (freedom < worst.Freedom)
            {
                worst = (c, freedom);
            }
        }

        return worst;
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

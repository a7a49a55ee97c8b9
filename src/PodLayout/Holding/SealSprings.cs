using System.Collections.Immutable;

namespace PodLayout.Holding;

/// <summary>
/// A stiff part on the seals of its pods as on springs that push and never pull: how it presses on each, and how far a load can
/// grow before friction, at most the coefficient times that press, no longer bears it, or the part tips.
/// </summary>
/// <remarks>
/// The part sinks and tilts until the springs balance what presses and lifts (pulls, weight, the load); a spring that would have
/// to pull lets go. While the load grows the springs' pushes are linear in it from one such event to the next, so that its way is
/// followed from event to event. The friction of each spot is at most the coefficient times its push there; whether the spots bear
/// the load's push in the plane is asked of <see cref="SlideAndTwist"/>. Between two events what they bear is concave in the
/// load's size, so that a size at which they bear it, after one at which they did, leaves none between at which they do not.
/// Not for two threads at once.
/// </remarks>
public sealed class SealSprings
{
    // Larger multiples of a load are as good as any.
    private const double Largest = 1e4;

    // Relative to the stiffness of all springs: what is less is held by nothing.
    private const double Loose = 1e-9;

    private const double Close = 1e-5;
    private const int MostEvents = 2000;

    private readonly double[] _x;
    private readonly double[] _y;
    private readonly double[] _stiffness;
    private readonly double[] _friction;
    private readonly int[] _pod;
    private readonly bool[] _isCorner;
    private readonly bool[] _bears;
    private readonly bool[] _atRest;
    private readonly double[] _now;
    private readonly double[] _grows;
    private readonly double[] _caps;
    private readonly double[] _pulls;
    private readonly double _length;
    private readonly SlideAndTwist _plane;
    private readonly (double Z, double X, double Y) _resting;
    private readonly double[] _pushesAtRest;
    private Foot _restFoot;

    /// <summary>Prepares a part at rest.</summary>
    /// <param name="pods">Its pods.</param>
    /// <param name="resting">What acts on it all the time: weight and vacuum; no force in the plane.</param>
    /// <param name="lengthMm">A length of the size of the part, for scaling.</param>
    public SealSprings(ImmutableArray<HeldPod> pods, Wrench resting, double lengthMm)
    {
        var springs = pods.SelectMany((pod, p) => pod.Grip.Seal.Select((s, i) => (
            At: pod.Centre + pod.Turn.Apply(new(s.X, s.Y)), Rubs: pod.Centre + pod.Turn.Apply(new(s.FrictionX, s.FrictionY)),
            s.StiffnessNPerMm, pod.Grip.Friction, Pod: p, IsCorner: i < pod.Grip.Corners))).ToArray();
        _length = lengthMm;
        _x = [.. springs.Select(s => s.At.X / lengthMm)];
        _y = [.. springs.Select(s => s.At.Y / lengthMm)];
        _stiffness = [.. springs.Select(s => s.StiffnessNPerMm)];
        _friction = [.. springs.Select(s => s.Friction)];
        _pod = [.. springs.Select(s => s.Pod)];
        _isCorner = [.. springs.Select(s => s.IsCorner)];
        _plane = new([.. springs.Select(s => s.Rubs.X / lengthMm)], [.. springs.Select(s => s.Rubs.Y / lengthMm)]);
        _pulls = [.. pods.Select(p => p.PullN)];
        (_bears, _atRest) = (new bool[springs.Length], new bool[springs.Length]);
        (_now, _grows, _caps) = (new double[springs.Length], new double[springs.Length], new double[springs.Length]);
        _pushesAtRest = new double[springs.Length];
        _resting = (resting.Fz, resting.Mx / lengthMm, resting.My / lengthMm);
        CanRest = Settle();
    }

    /// <summary>Whether the part rests without any load.</summary>
    public bool CanRest { get; }

    /// <summary>
    /// Whether a load of some size is surely borne, also where the friction of each pod is at most the coefficient times its own
    /// pull: quickly seen, and not always seen where it is so.
    /// </summary>
    public bool SurelyBear(Wrench load, double factor)
    {
        if (!CanRest)
        {
            return false;
        }

        Span<double> presses = stackalloc double[_pulls.Length];
        presses.Clear();
        var (u, p, q) = _restFoot.Rise(load.Fz * factor, load.Mx * factor / _length, load.My * factor / _length);
        for (var i = 0; i < _x.Length; i++)
        {
            // Where springs let go or bear again on the way, this says nothing.
            var push = _pushesAtRest[i] - _stiffness[i] * (u + p * _x[i] + q * _y[i]);
            if (_atRest[i] ? push < 0 : push > 0)
            {
                return false;
            }

            _caps[i] = _atRest[i] ? push : 0;
            presses[_pod[i]] += _caps[i];
        }

        for (var pod = 0; pod < presses.Length; pod++)
        {
            presses[pod] = presses[pod] > _pulls[pod] ? _pulls[pod] / presses[pod] : 1;
        }

        for (var i = 0; i < _x.Length; i++)
        {
            _caps[i] *= _friction[i] * presses[_pod[i]];
        }

        return _plane.SurelyBears(_caps, Push(load), factor);
    }

    /// <summary>How far a load can grow, and the motion that then sets in: slides and turns, none where the part tips.</summary>
    /// <param name="load">The load.</param>
    /// <param name="enough">When it can grow to at least this, the answer may be any such figure.</param>
    public Limit Of(Wrench load, double enough = double.PositiveInfinity)
    {
        if (!CanRest)
        {
            return new(0, default);
        }

        var until = Math.Min(Largest, enough);
        var factor = 0.0;
        for (var events = 0; Begin(load, isFirst: events == 0) && events < MostEvents; events++)
        {
            var next = Next(factor, until, out var lets);
            if (Slips(load, factor, next) is { } limit)
            {
                return limit;
            }

            if (next >= until)
            {
                return new(until >= Largest ? double.PositiveInfinity : until, default);
            }

            factor = next;
            foreach (var spring in lets)
            {
                _bears[spring] = !_bears[spring];
            }
        }

        return new(factor, default);
    }

    /// <summary>The least factor at which a corner of a seal bears nothing any more; infinite when none ever does.</summary>
    public double Unloading(Wrench load)
    {
        if (!CanRest)
        {
            return 0;
        }

        var least = double.PositiveInfinity;
        var (u, p, q) = _restFoot.Rise(load.Fz, load.Mx / _length, load.My / _length);
        for (var i = 0; i < _x.Length; i++)
        {
            var less = _stiffness[i] * (u + p * _x[i] + q * _y[i]);
            least = !_isCorner[i] ? least : !_atRest[i] ? 0 : less > 0 ? Math.Min(least, _pushesAtRest[i] / less) : least;
        }

        return least;
    }

    /// <summary>What the part presses on each pod with under a load as it is, N; what it does at rest where it tips under it.</summary>
    public double[] Presses(Wrench load)
    {
        var presses = new double[_pulls.Length];
        var factor = 0.0;
        for (var events = 0; CanRest && events < MostEvents; events++)
        {
            if (!Begin(load, isFirst: events == 0))
            {
                Begin(load);
                factor = 0;
                break;
            }

            var next = Next(factor, 1, out var lets);
            factor = next;
            if (next >= 1)
            {
                break;
            }

            foreach (var spring in lets)
            {
                _bears[spring] = !_bears[spring];
            }
        }

        for (var i = 0; CanRest && i < _x.Length; i++)
        {
            presses[_pod[i]] += _bears[i] ? Math.Max(0, _now[i] + factor * _grows[i]) : 0;
        }

        return presses;
    }

    // Springs that would pull let go, those that are reached again bear, until nothing changes.
    private bool Settle()
    {
        Array.Fill(_bears, true);
        for (var round = 0; round < 100; round++)
        {
            if (FootOfBearing() is not { } foot)
            {
                return false;
            }

            Springs(foot, _resting, _now);

            var changed = false;
            for (var i = 0; i < _x.Length; i++)
            {
                if (_bears[i] != _now[i] > 0)
                {
                    (_bears[i], changed) = (_now[i] > 0, true);
                }
            }

            if (!changed)
            {
                _bears.CopyTo(_atRest, 0);
                _now.CopyTo(_pushesAtRest, 0);
                _restFoot = foot;
                return true;
            }
        }

        return false;
    }

    // What the springs that bear push with at rest, and what that grows by with the load; false where too few bear.
    private bool Begin(Wrench load, bool isFirst = true)
    {
        if (isFirst)
        {
            _atRest.CopyTo(_bears, 0);
        }

        if ((isFirst ? _restFoot : FootOfBearing()) is not { } foot)
        {
            return false;
        }

        Springs(foot, _resting, _now);
        Springs(foot, (load.Fz, load.Mx / _length, load.My / _length), _grows);
        return true;
    }

    // What the springs that bear push with together as the part sinks and tilts; null where too few bear.
    private Foot? FootOfBearing()
    {
        double k = 0, kx = 0, ky = 0, kxx = 0, kxy = 0, kyy = 0;
        for (var i = 0; i < _x.Length; i++)
        {
            if (_bears[i])
            {
                double s = _stiffness[i], x = _x[i], y = _y[i];
                k += s;
                kx += s * x;
                ky += s * y;
                kxx += s * x * x;
                kxy += s * x * y;
                kyy += s * y * y;
            }
        }

        if (k <= 0)
        {
            return null;
        }

        // About the middle of the stiffness, sinking and tilting part.
        double mx = kx / k, my = ky / k;
        double xx = kxx - k * mx * mx, xy = kxy - k * mx * my, yy = kyy - k * my * my;
        var det = xx * yy - xy * xy;
        return det <= Loose * Loose * k * k || det <= Loose * (xx + yy) * (xx + yy) ? null : new(k, mx, my, xx / det, xy / det, yy / det);
    }

    // The push of each spring, also of those that do not bear: that would be its push if it could pull.
    private void Springs(Foot foot, (double Z, double X, double Y) acts, double[] pushes)
    {
        var (u, p, q) = foot.Rise(acts.Z, acts.X, acts.Y);
        for (var i = 0; i < _x.Length; i++)
        {
            pushes[i] = -_stiffness[i] * (u + p * _x[i] + q * _y[i]);
        }
    }

    // The next size of the load at which springs let go or bear again, and which.
    private double Next(double factor, double until, out List<int> lets)
    {
        var next = until;
        lets = [];
        for (var i = 0; i < _x.Length; i++)
        {
            // One that lets go while the load grows, or one that is reached: its push becomes 0 from the right side.
            if (_bears[i] ? _grows[i] < 0 : _grows[i] > 0)
            {
                var at = Math.Max(factor, -_now[i] / _grows[i]);
                if (at < next - 1e-12 * (1 + next))
                {
                    (next, lets) = (at, [i]);
                }
                else if (at <= next + 1e-12 * (1 + next) && lets.Count > 0)
                {
                    lets.Add(i);
                }
            }
        }

        return next;
    }

    // Where between two sizes of the load friction no longer bears it; null where it does all the way.
    private Limit? Slips(Wrench load, double from, double to)
    {
        var push = Push(load);
        if (push == default || (Bears(to) && _plane.SurelyBears(_caps, push, to)))
        {
            return null;
        }

        // Dinkelbach's method (1967): the motion that is worst at one size tells a smaller one, until it is the worst there too.
        var factor = to;
        for (var round = 0; round < 60; round++)
        {
            Bears(factor);
            var (borne, x, y, turn) = _plane.Largest(_caps, push);
            if (borne >= factor * (1 - Close))
            {
                return round == 0 ? null : new(Math.Min(borne, factor), new(x, y, 0, 0, 0, turn / _length));
            }

            var (atRest, growing) = Taken(x, y, turn);
            var less = growing >= 1 ? from : atRest / (1 - growing);
            if (less <= from || less >= factor * (1 - 1e-9))
            {
                return new(Math.Max(from, Math.Min(borne, factor)), new(x, y, 0, 0, 0, turn / _length));
            }

            factor = less;
        }

        return new(factor * (1 - Close), default);
    }

    private bool Bears(double factor)
    {
        for (var i = 0; i < _x.Length; i++)
        {
            _caps[i] = _bears[i] ? Math.Max(0, _friction[i] * (_now[i] + factor * _grows[i])) : 0;
        }

        return true;
    }

    // What friction takes up in a motion at rest, and what that grows by with the load.
    private (double AtRest, double Growing) Taken(double x, double y, double turn)
    {
        double atRest = 0, growing = 0;
        for (var i = 0; i < _x.Length; i++)
        {
            if (_bears[i])
            {
                var (vx, vy) = _plane.At(i, x, y, turn);
                var way = _friction[i] * Math.Sqrt(vx * vx + vy * vy);
                atRest += way * _now[i];
                growing += way * _grows[i];
            }
        }

        return (atRest, growing);
    }

    private (double X, double Y, double Z) Push(Wrench load) => (load.Fx, load.Fy, load.Mz / _length);

    // Stiffness of the springs that bear: all of it, its middle, and the inverse of what resists tilting about that.
    private readonly record struct Foot(double Stiffness, double MiddleX, double MiddleY, double XX, double XY, double YY)
    {
        // How high the part rises, u + p x + q y, under a force upwards and moments about X and Y: the sums of the pushes, and of
        // the pushes times x and y, balance what acts.
        public (double U, double P, double Q) Rise(double force, double aboutX, double aboutY)
        {
            double alongX = -aboutY - MiddleX * force, alongY = aboutX - MiddleY * force;
            double p = YY * alongX - XY * alongY, q = XX * alongY - XY * alongX;
            return (force / Stiffness - p * MiddleX - q * MiddleY, p, q);
        }
    }
}

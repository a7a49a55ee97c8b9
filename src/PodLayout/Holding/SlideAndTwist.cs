namespace PodLayout.Holding;

/// <summary>
/// The largest multiple of a push in the plane that spots of friction bear, each with a limit of its own: limit analysis in the
/// worst combination of slide and twist.
/// </summary>
/// <remarks>
/// By the kinematic theorem of limit analysis it is the least of sum c |v| over all motions of the part in the plane in which the
/// push does work of 1 (v how far each spot slides, c the most friction there): a convex problem in three unknowns, as for the
/// limit surface of Goyal, Ruina and Papadopoulos (1991). Each |v| is rounded off at its tip, sqrt(v² + e²), and e made smaller
/// step by step, with Newton's method in the two unknowns that are left. At the end the frictions c v / sqrt(v² + e²) balance the
/// push as far as Newton's method converged: what is returned is what they bear, so that it is approached from below.
/// </remarks>
internal sealed class SlideAndTwist
{
    // The tip is rounded off within this share of the spots' way, to begin with and at the end.
    private const double FirstRound = 0.3;
    private const double LastRound = 2e-7;
    private const double RoundStep = 0.05;
    private const int MostSteps = 30;

    // For what is surely borne: where it is not seen by then it is near to not being borne.
    private const double LastSureRound = 1e-4;
    private const int MostSureSteps = 8;

    private readonly double[] _x;
    private readonly double[] _y;

    /// <param name="x">X of the spots, in units of the part's length.</param>
    /// <param name="y">Y of the spots, likewise.</param>
    public SlideAndTwist(double[] x, double[] y) => (_x, _y) = (x, y);

    /// <summary>
    /// A multiple that is surely borne, quickly found: each spot takes its share of a field of friction that is linear in its place.
    /// </summary>
    /// <param name="capsN">The most friction at each spot.</param>
    /// <param name="push">Force along X and Y, N, and moment about Z in units of the length.</param>
    public double AtLeast(ReadOnlySpan<double> capsN, (double X, double Y, double Z) push)
    {
        double sum = 0, sx = 0, sy = 0, polar = 0;
        for (var i = 0; i < capsN.Length; i++)
        {
            sum += capsN[i];
            sx += capsN[i] * _x[i];
            sy += capsN[i] * _y[i];
            polar += capsN[i] * (_x[i] * _x[i] + _y[i] * _y[i]);
        }

        if (sum <= 0)
        {
            return 0;
        }

        // About the middle of the friction forces and moment part.
        double middleX = sx / sum, middleY = sy / sum;
        var about = polar - sum * (middleX * middleX + middleY * middleY);
        var moment = push.Z - middleX * push.Y + middleY * push.X;
        if (about <= 1e-12 * polar)
        {
            return 0;
        }

        double turn = moment / about, alongX = push.X / sum, alongY = push.Y / sum, most = 0;
        for (var i = 0; i < capsN.Length; i++)
        {
            double vx = alongX - turn * (_y[i] - middleY), vy = alongY + turn * (_x[i] - middleX);
            most = capsN[i] > 0 ? Math.Max(most, vx * vx + vy * vy) : most;
        }

        return most == 0 ? double.PositiveInfinity : 1 / Math.Sqrt(most);
    }

    /// <summary>
    /// Whether a multiple is surely borne: by the quick bound, or by the frictions of some motion on the way to the worst one. What
    /// those leave unbalanced is taken up by a field that is linear in place, and all is made smaller until no spot bears too much.
    /// </summary>
    /// <param name="capsN">The most friction at each spot.</param>
    /// <param name="push">Force along X and Y, N, and moment about Z in units of the length.</param>
    /// <param name="factor">The multiple.</param>
    public bool SurelyBears(ReadOnlySpan<double> capsN, (double X, double Y, double Z) push, double factor)
    {
        if (AtLeast(capsN, push) >= factor)
        {
            return true;
        }

        var size = push.X * push.X + push.Y * push.Y + push.Z * push.Z;
        (double X, double Y, double Z) way = (push.X / size, push.Y / size, push.Z / size);
        var (p, q) = Across(push, Math.Sqrt(size));
        double a = 0, b = 0;
        var typical = Typical(capsN, way);
        for (var round = FirstRound; round >= LastSureRound; round *= RoundStep)
        {
            var tip = round * typical;
            for (var step = 0; step < MostSureSteps; step++)
            {
                var (value, borne, ga, gb, haa, hab, hbb) = Look(capsN, At(a, b), p, q, tip * tip);
                if (value < factor)
                {
                    // A motion in which friction takes up less: it is not borne.
                    return false;
                }

                var unbalanced = AtLeast(capsN, (ga * p.X + gb * q.X, ga * p.Y + gb * q.Y, ga * p.Z + gb * q.Z));
                if (unbalanced > 0 && (borne - a * ga - b * gb) / (1 + 1 / unbalanced) >= factor)
                {
                    return true;
                }

                var (da, db, slope) = Step(ga, gb, haa, hab, hbb);
                if (!(slope < -1e-9 * value))
                {
                    break;
                }

                var along = 1.0;
                while (along > 1e-6 && Value(capsN, At(a + along * da, b + along * db), tip * tip) > value + 0.25 * along * slope)
                {
                    along /= 2;
                }

                (a, b) = (a + along * da, b + along * db);
            }
        }

        return false;

        (double X, double Y, double Z) At(double along, double across) =>
            (way.X + along * p.X + across * q.X, way.Y + along * p.Y + across * q.Y, way.Z + along * p.Z + across * q.Z);
    }

    /// <summary>The largest multiple, and the motion that sets in beyond it (X, Y, turn in units of the length; work of the push 1).</summary>
    /// <param name="capsN">The most friction at each spot.</param>
    /// <param name="push">Force along X and Y, N, and moment about Z in units of the length; not all 0.</param>
    public (double Factor, double X, double Y, double Turn) Largest(ReadOnlySpan<double> capsN, (double X, double Y, double Z) push)
    {
        // Motions in which the push does work of 1: one of them, and two directions in which it does none.
        var size = push.X * push.X + push.Y * push.Y + push.Z * push.Z;
        (double X, double Y, double Z) way = (push.X / size, push.Y / size, push.Z / size);
        var (p, q) = Across(push, Math.Sqrt(size));
        double a = 0, b = 0, factor = 0;
        var typical = Typical(capsN, way);
        for (var round = FirstRound; round >= LastRound; round *= RoundStep)
        {
            var tip = round * typical;
            for (var step = 0; step < MostSteps; step++)
            {
                var at = At(a, b);
                var (value, borne, ga, gb, haa, hab, hbb) = Look(capsN, at, p, q, tip * tip);
                factor = borne;
                var (da, db, slope) = Step(ga, gb, haa, hab, hbb);
                if (!(slope < -1e-9 * value))
                {
                    break;
                }

                var along = 1.0;
                while (along > 1e-6 && Value(capsN, At(a + along * da, b + along * db), tip * tip) > value + 0.25 * along * slope)
                {
                    along /= 2;
                }

                (a, b) = (a + along * da, b + along * db);
            }
        }

        var end = At(a, b);
        return (factor, end.X, end.Y, end.Z);

        (double X, double Y, double Z) At(double along, double across) =>
            (way.X + along * p.X + across * q.X, way.Y + along * p.Y + across * q.Y, way.Z + along * p.Z + across * q.Z);
    }

    /// <summary>How far a spot slides in a motion.</summary>
    public (double X, double Y) At(int spot, double x, double y, double turn) => (x - turn * _y[spot], y + turn * _x[spot]);

    // Newton's step, and how the value changes along it.
    private static (double A, double B, double Slope) Step(double ga, double gb, double haa, double hab, double hbb)
    {
        var ridge = 1e-13 * (haa + hbb) + 1e-300;
        var (saa, sbb) = (haa + ridge, hbb + ridge);
        var det = saa * sbb - hab * hab;
        double da = -(sbb * ga - hab * gb) / det, db = -(saa * gb - hab * ga) / det;
        return (da, db, ga * da + gb * db);
    }

    private static ((double X, double Y, double Z) P, (double X, double Y, double Z) Q) Across((double X, double Y, double Z) push, double size)
    {
        double ux = push.X / size, uy = push.Y / size, uz = push.Z / size;
        // Against the axis that it goes along least.
        double ax = Math.Abs(ux), ay = Math.Abs(uy), az = Math.Abs(uz);
        (double X, double Y, double Z) p = ax <= ay && ax <= az ? (0, uz, -uy) : ay <= az ? (-uz, 0, ux) : (uy, -ux, 0);
        var length = Math.Sqrt(p.X * p.X + p.Y * p.Y + p.Z * p.Z);
        p = (p.X / length, p.Y / length, p.Z / length);
        return (p, (uy * p.Z - uz * p.Y, uz * p.X - ux * p.Z, ux * p.Y - uy * p.X));
    }

    private double Typical(ReadOnlySpan<double> capsN, (double X, double Y, double Z) m)
    {
        double sum = 0, ways = 0;
        for (var i = 0; i < capsN.Length; i++)
        {
            double vx = m.X - m.Z * _y[i], vy = m.Y + m.Z * _x[i];
            sum += capsN[i];
            ways += capsN[i] * Math.Sqrt(vx * vx + vy * vy);
        }

        return sum > 0 && ways > 0 ? ways / sum : 1;
    }

    private double Value(ReadOnlySpan<double> capsN, (double X, double Y, double Z) m, double tipSquared)
    {
        double value = 0;
        for (var i = 0; i < capsN.Length; i++)
        {
            double vx = m.X - m.Z * _y[i], vy = m.Y + m.Z * _x[i];
            value += capsN[i] * Math.Sqrt(vx * vx + vy * vy + tipSquared);
        }

        return value;
    }

    // The rounded sum, what the frictions bear, and both derivatives along p and q.
    private (double Value, double Borne, double A, double B, double AA, double AB, double BB) Look(
        ReadOnlySpan<double> capsN, (double X, double Y, double Z) m, (double X, double Y, double Z) p, (double X, double Y, double Z) q, double tipSquared)
    {
        double value = 0, borne = 0, a = 0, b = 0, aa = 0, ab = 0, bb = 0;
        for (var i = 0; i < capsN.Length; i++)
        {
            double vx = m.X - m.Z * _y[i], vy = m.Y + m.Z * _x[i];
            double px = p.X - p.Z * _y[i], py = p.Y + p.Z * _x[i], qx = q.X - q.Z * _y[i], qy = q.Y + q.Z * _x[i];
            double square = vx * vx + vy * vy, way = Math.Sqrt(square + tipSquared), c = capsN[i] / way;
            double alongP = (vx * px + vy * py) / way, alongQ = (vx * qx + vy * qy) / way;
            value += capsN[i] * way;
            borne += c * square;
            a += capsN[i] * alongP;
            b += capsN[i] * alongQ;
            aa += c * (px * px + py * py - alongP * alongP);
            ab += c * (px * qx + py * qy - alongP * alongQ);
            bb += c * (qx * qx + qy * qy - alongQ * alongQ);
        }

        return (value, borne, a, b, aa, ab, bb);
    }
}

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

        var motions = Motions.WithWorkOf(push);
        double a = 0, b = 0;
        var typical = Typical(capsN, motions.Way);
        for (var round = FirstRound; round >= LastSureRound; round *= RoundStep)
        {
            var tip = round * typical;
            for (var step = 0; step < MostSureSteps; step++)
            {
                var look = Look(capsN, motions, a, b, tip * tip);
                if (look.Value < factor)
                {
                    // A motion in which friction takes up less: it is not borne.
                    return false;
                }

                var unbalanced = AtLeast(capsN, motions.Along(look.A, look.B));
                if (unbalanced > 0 && (look.Borne - a * look.A - b * look.B) / (1 + 1 / unbalanced) >= factor)
                {
                    return true;
                }

                if (Downhill(capsN, motions, a, b, look, tip * tip) is not { } next)
                {
                    break;
                }

                (a, b) = next;
            }
        }

        return false;
    }

    /// <summary>The largest multiple, and the motion that sets in beyond it (X, Y, turn in units of the length; work of the push 1).</summary>
    /// <param name="capsN">The most friction at each spot.</param>
    /// <param name="push">Force along X and Y, N, and moment about Z in units of the length; not all 0.</param>
    public (double Factor, double X, double Y, double Turn) Largest(ReadOnlySpan<double> capsN, (double X, double Y, double Z) push)
    {
        var motions = Motions.WithWorkOf(push);
        double a = 0, b = 0, factor = 0;
        var typical = Typical(capsN, motions.Way);
        for (var round = FirstRound; round >= LastRound; round *= RoundStep)
        {
            var tip = round * typical;
            for (var step = 0; step < MostSteps; step++)
            {
                var look = Look(capsN, motions, a, b, tip * tip);
                factor = look.Borne;
                if (Downhill(capsN, motions, a, b, look, tip * tip) is not { } next)
                {
                    break;
                }

                (a, b) = next;
            }
        }

        var end = motions.At(a, b);
        return (factor, end.X, end.Y, end.Z);
    }

    /// <summary>How far a spot slides in a motion.</summary>
    public (double X, double Y) At(int spot, double x, double y, double turn) => (x - turn * _y[spot], y + turn * _x[spot]);

    // Newton's step, as far as the value falls along it; null where it is at its least.
    private (double A, double B)? Downhill(ReadOnlySpan<double> capsN, in Motions motions, double a, double b, in Slope look, double tipSquared)
    {
        var ridge = 1e-13 * (look.AA + look.BB) + 1e-300;
        var (saa, sbb) = (look.AA + ridge, look.BB + ridge);
        var det = saa * sbb - look.AB * look.AB;
        double da = -(sbb * look.A - look.AB * look.B) / det, db = -(saa * look.B - look.AB * look.A) / det;
        var slope = look.A * da + look.B * db;
        if (!(slope < -1e-9 * look.Value))
        {
            return null;
        }

        var along = 1.0;
        while (along > 1e-6 && Value(capsN, motions.At(a + along * da, b + along * db), tipSquared) > look.Value + 0.25 * along * slope)
        {
            along /= 2;
        }

        return (a + along * da, b + along * db);
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

    private Slope Look(ReadOnlySpan<double> capsN, in Motions motions, double alongP, double alongQ, double tipSquared)
    {
        var (m, p, q) = (motions.At(alongP, alongQ), motions.P, motions.Q);
        double value = 0, borne = 0, a = 0, b = 0, aa = 0, ab = 0, bb = 0;
        for (var i = 0; i < capsN.Length; i++)
        {
            double vx = m.X - m.Z * _y[i], vy = m.Y + m.Z * _x[i];
            double px = p.X - p.Z * _y[i], py = p.Y + p.Z * _x[i], qx = q.X - q.Z * _y[i], qy = q.Y + q.Z * _x[i];
            double square = vx * vx + vy * vy, way = Math.Sqrt(square + tipSquared), c = capsN[i] / way;
            double inP = (vx * px + vy * py) / way, inQ = (vx * qx + vy * qy) / way;
            value += capsN[i] * way;
            borne += c * square;
            a += capsN[i] * inP;
            b += capsN[i] * inQ;
            aa += c * (px * px + py * py - inP * inP);
            ab += c * (px * qx + py * qy - inP * inQ);
            bb += c * (qx * qx + qy * qy - inQ * inQ);
        }

        return new(value, borne, a, b, aa, ab, bb);
    }

    // The rounded sum, what the frictions bear, and both derivatives of the sum along P and Q.
    private readonly record struct Slope(double Value, double Borne, double A, double B, double AA, double AB, double BB);

    // Motions in which a push does work of 1: one of them, and two directions in which it does none.
    private readonly record struct Motions(
        (double X, double Y, double Z) Way, (double X, double Y, double Z) P, (double X, double Y, double Z) Q)
    {
        public static Motions WithWorkOf((double X, double Y, double Z) push)
        {
            var square = push.X * push.X + push.Y * push.Y + push.Z * push.Z;
            var size = Math.Sqrt(square);
            double ux = push.X / size, uy = push.Y / size, uz = push.Z / size;
            // Against the axis that it goes along least.
            double ax = Math.Abs(ux), ay = Math.Abs(uy), az = Math.Abs(uz);
            (double X, double Y, double Z) p = ax <= ay && ax <= az ? (0, uz, -uy) : ay <= az ? (-uz, 0, ux) : (uy, -ux, 0);
            var length = Math.Sqrt(p.X * p.X + p.Y * p.Y + p.Z * p.Z);
            p = (p.X / length, p.Y / length, p.Z / length);
            return new((push.X / square, push.Y / square, push.Z / square), p, (uy * p.Z - uz * p.Y, uz * p.X - ux * p.Z, ux * p.Y - uy * p.X));
        }

        public (double X, double Y, double Z) Along(double a, double b) => (a * P.X + b * Q.X, a * P.Y + b * Q.Y, a * P.Z + b * Q.Z);

        public (double X, double Y, double Z) At(double a, double b) =>
            (Way.X + a * P.X + b * Q.X, Way.Y + a * P.Y + b * Q.Y, Way.Z + a * P.Z + b * Q.Z);
    }
}

using System.Collections.Immutable;

namespace PodLayout.Reading.Curves;

/// <summary>A rational B-spline (The NURBS Book, Piegl and Tiller 1997, chapters 2 and 4).</summary>
internal sealed record SplineCurve(
    int Degree, ImmutableArray<double> Knots, ImmutableArray<Point3> Controls, ImmutableArray<double> Weights)
{
    private const int DeepestHalving = 18;

    /// <summary>Where the curve begins: for knots that are not clamped, not the first knot.</summary>
    public double From => Knots[Degree];

    public double To => Knots[Controls.Length];

    /// <summary>The Bézier curve of the given control points.</summary>
    public static SplineCurve Bezier(params Point3[] controls) => new(
        controls.Length - 1,
        [.. Enumerable.Repeat(0.0, controls.Length), .. Enumerable.Repeat(1.0, controls.Length)], [.. controls], []);

    public SplineCurve Mapped(Affine3 map) => this with { Controls = [.. Controls.Select(map.Apply)] };

    /// <summary>Points on the curve, halved between knots until no chord is farther than the tolerance; both ends included.</summary>
    public List<Point3> Chords(double tolerance, CurveExcess excess)
    {
        // Far outside what is read, the control points themselves are enough for the caller to refuse the curve.
        if (Controls.Any(c => !(Math.Abs(c.X) <= Tolerances.LargestCoordinateMm && Math.Abs(c.Y) <= Tolerances.LargestCoordinateMm)))
            return [.. Controls];
        var points = new List<Point3> { At(Degree, From) };
        for (var span = Degree; span < Controls.Length; span++)
        {
            if (!(Knots[span + 1] > Knots[span]))
                continue;
            var pieces = Degree == 1 ? 1 : Degree + 1;
            for (var i = 0; i < pieces; i++)
            {
                var a = Knots[span] + (Knots[span + 1] - Knots[span]) * i / pieces;
                var b = i + 1 == pieces ? Knots[span + 1] : Knots[span] + (Knots[span + 1] - Knots[span]) * (i + 1) / pieces;
                var pa = points[^1];
                Halve(span, a, pa, b, At(span, b), tolerance, Degree == 1 ? 0 : DeepestHalving, points, excess);
            }
        }

        return points;
    }

    private void Halve(
        int span, double a, Point3 pa, double b, Point3 pb, double tolerance, int depth, List<Point3> points, CurveExcess excess)
    {
        var middle = (a + b) / 2;
        var pm = depth > 0 ? At(span, middle) : default;
        if (depth > 0 && !IsFlat(span, a, pa, b, pb, pm, tolerance))
        {
            Halve(span, a, pa, middle, pm, tolerance, depth - 1, points, excess);
            Halve(span, middle, pm, b, pb, tolerance, depth - 1, points, excess);
            return;
        }

        if (depth > 0)
            excess.AddNearParabola(pa, pm, pb);
        points.Add(pb);
    }

    private bool IsFlat(int span, double a, Point3 pa, double b, Point3 pb, Point3 pm, double tolerance)
    {
        // The greatest deviation lies between the samples; a tenth is kept in hand for it.
        var limit = 0.9 * tolerance;
        return OffChord(pa, pb, pm) <= limit
            && OffChord(pa, pb, At(span, a + (b - a) / 4)) <= limit
            && OffChord(pa, pb, At(span, b - (b - a) / 4)) <= limit;
    }

    private static double OffChord(Point3 a, Point3 b, Point3 p)
    {
        double dx = b.X - a.X, dy = b.Y - a.Y, px = p.X - a.X, py = p.Y - a.Y;
        var squared = dx * dx + dy * dy;
        var t = squared > 0 ? Math.Clamp((px * dx + py * dy) / squared, 0, 1) : 0;
        return Math.Sqrt((px - t * dx) * (px - t * dx) + (py - t * dy) * (py - t * dy));
    }

    /// <summary>De Boor's algorithm in homogeneous coordinates, in the given knot span.</summary>
    private Point3 At(int span, double t)
    {
        Span<(Point3 P, double W)> d = stackalloc (Point3, double)[Degree + 1];
        for (var j = 0; j <= Degree; j++)
        {
            var w = Weights.IsEmpty ? 1 : Weights[span - Degree + j];
            d[j] = (Controls[span - Degree + j] * w, w);
        }

        for (var r = 1; r <= Degree; r++)
        {
            for (var j = Degree; j >= r; j--)
            {
                var low = Knots[j + span - Degree];
                var width = Knots[j + 1 + span - r] - low;
                var alpha = width > 0 ? (t - low) / width : 0;
                d[j] = (d[j - 1].P * (1 - alpha) + d[j].P * alpha, d[j - 1].W * (1 - alpha) + d[j].W * alpha);
            }
        }

        return d[Degree].P * (1 / d[Degree].W);
    }
}

using System.Collections.Immutable;

namespace PodLayout.Reading.Curves;

/// <summary>
/// The smooth curve through given points that drawing programs draw when a spline holds fit points only: a cubic with
/// continuous curvature, chord lengths as parameter (Piegl and Tiller 1997, section 9.2.1, eq. 9.4-9.5).
/// </summary>
internal static class FitSpline
{
    /// <summary>The curve; ends run straight out (second derivative zero) where no tangent is given, and meet smoothly when closed.</summary>
    public static SplineCurve Through(IReadOnlyList<Point3> fit, Point3? startTangent, Point3? endTangent, bool closed)
    {
        var p = new List<Point3>(fit.Count + 1);
        foreach (var point in fit)
        {
            if (p.Count == 0 || (point - p[^1]).Length > 0)
                p.Add(point);
        }

        if (closed && (p[^1] - p[0]).Length > 0)
            p.Add(p[0]);
        if (p.Count < 3)
            return new(1, [0, 0, 1, 1], [p[0], p[^1]], []);
        var h = new double[p.Count - 1];
        for (var i = 0; i < h.Length; i++)
            h[i] = (p[i + 1] - p[i]).Length;
        var slopes = closed && p.Count > 3 ? ClosedSlopes(p, h) : OpenSlopes(p, h, startTangent, endTangent);
        return AsBSpline(p, h, slopes);
    }

    private static Point3[] OpenSlopes(List<Point3> p, double[] h, Point3? start, Point3? end)
    {
        var n = p.Count;
        double[] lower = new double[n], diagonal = new double[n], upper = new double[n];
        var right = new Point3[n];
        for (var i = 1; i < n - 1; i++)
            Inner(p, h, i - 1, i, lower, diagonal, upper, right, i);
        (diagonal[0], upper[0], right[0]) = start is { Length: > 0 } s
            ? (1, 0, s * (1 / s.Length))
            : (2, 1, (p[1] - p[0]) * (3 / h[0]));
        (diagonal[n - 1], lower[n - 1], right[n - 1]) = end is { Length: > 0 } e
            ? (1, 0, e * (1 / e.Length))
            : (2, 1, (p[n - 1] - p[n - 2]) * (3 / h[n - 2]));
        return Solve(lower, diagonal, upper, right);
    }

    /// <summary>Continuity of the second derivative at the point between two spans, as a row for the slopes.</summary>
    private static void Inner(
        List<Point3> p, double[] h, int before, int after,
        double[] lower, double[] diagonal, double[] upper, Point3[] right, int row)
    {
        lower[row] = h[after];
        diagonal[row] = 2 * (h[before] + h[after]);
        upper[row] = h[before];
        right[row] = (p[before + 1] - p[before]) * (3 * h[after] / h[before])
            + (p[after + 1] - p[after]) * (3 * h[before] / h[after]);
    }

    /// <summary>The cyclic system by the Sherman-Morrison formula: two ordinary systems.</summary>
    private static Point3[] ClosedSlopes(List<Point3> p, double[] h)
    {
        var n = h.Length;
        double[] lower = new double[n], diagonal = new double[n], upper = new double[n];
        var right = new Point3[n];
        for (var i = 0; i < n; i++)
            Inner(p, h, (i + n - 1) % n, i, lower, diagonal, upper, right, i);
        double corner = lower[0], otherCorner = upper[n - 1], gamma = -diagonal[0];
        var mended = (double[])diagonal.Clone();
        mended[0] -= gamma;
        mended[n - 1] -= corner * otherCorner / gamma;
        var u = new Point3[n];
        u[0] = new(gamma, 0, 0);
        u[n - 1] = new(otherCorner, 0, 0);
        var x = Solve(lower, mended, upper, right);
        var z = Solve(lower, mended, upper, u);
        var scale = 1 / (1 + z[0].X + corner * z[n - 1].X / gamma);
        var factor = (x[0] + x[n - 1] * (corner / gamma)) * scale;
        var slopes = new Point3[n + 1];
        for (var i = 0; i < n; i++)
            slopes[i] = x[i] - factor * z[i].X;
        slopes[n] = slopes[0];
        return slopes;
    }

    private static Point3[] Solve(double[] lower, double[] diagonal, double[] upper, Point3[] right)
    {
        var n = right.Length;
        var d = (double[])diagonal.Clone();
        var x = (Point3[])right.Clone();
        for (var i = 1; i < n; i++)
        {
            var m = lower[i] / d[i - 1];
            d[i] -= m * upper[i - 1];
            x[i] -= x[i - 1] * m;
        }

        x[n - 1] *= 1 / d[n - 1];
        for (var i = n - 2; i >= 0; i--)
            x[i] = (x[i] - x[i + 1] * upper[i]) * (1 / d[i]);
        return x;
    }

    private static SplineCurve AsBSpline(List<Point3> p, double[] h, Point3[] slopes)
    {
        var controls = ImmutableArray.CreateBuilder<Point3>(3 * h.Length + 1);
        var knots = ImmutableArray.CreateBuilder<double>();
        double t = 0;
        knots.AddRange(0, 0, 0, 0);
        controls.Add(p[0]);
        for (var i = 0; i < h.Length; i++)
        {
            controls.Add(p[i] + slopes[i] * (h[i] / 3));
            controls.Add(p[i + 1] - slopes[i + 1] * (h[i] / 3));
            controls.Add(p[i + 1]);
            t += h[i];
            knots.AddRange(t, t, t);
        }

        knots.Add(t);
        return new(3, knots.ToImmutable(), controls.ToImmutable(), []);
    }
}

using PodLayout.Geometry;

namespace PodLayout.Support;

/// <summary>
/// Length measured in limits: 1 is as far as the part may reach in that direction. The points at length 1 are an ellipse.
/// </summary>
/// <param name="Xx">Quadratic form, 1/mm²: length² = Xx x² + 2 Xy x y + Yy y².</param>
/// <param name="Xy">See <paramref name="Xx"/>.</param>
/// <param name="Yy">See <paramref name="Xx"/>.</param>
public readonly record struct LimitMetric(double Xx, double Xy, double Yy)
{
    /// <summary>Greatest extent of the ellipse along X, mm.</summary>
    public double ReachXMm => Math.Sqrt(Yy / (Xx * Yy - Xy * Xy));

    /// <summary>Greatest extent of the ellipse along Y, mm.</summary>
    public double ReachYMm => Math.Sqrt(Xx / (Xx * Yy - Xy * Xy));

    /// <summary>An ellipse whose axes lie along and across a direction.</summary>
    /// <param name="alongMm">Half axis along it.</param>
    /// <param name="acrossMm">Half axis across it.</param>
    /// <param name="directionDeg">The direction, degrees from X.</param>
    public static LimitMetric Ellipse(double alongMm, double acrossMm, double directionDeg)
    {
        var turn = Turn.FromDegrees(directionDeg);
        double a = 1 / (alongMm * alongMm), b = 1 / (acrossMm * acrossMm);
        return new(
            a * turn.Cos * turn.Cos + b * turn.Sin * turn.Sin,
            (a - b) * turn.Cos * turn.Sin,
            a * turn.Sin * turn.Sin + b * turn.Cos * turn.Cos);
    }

    /// <summary>Length of a vector in limits.</summary>
    public double Length(Point2 v) => Math.Sqrt(Math.Max(0, Xx * v.X * v.X + 2 * Xy * v.X * v.Y + Yy * v.Y * v.Y));

    /// <summary>The metric of the same wood after it has been turned.</summary>
    public LimitMetric Turned(Turn turn)
    {
        double c = turn.Cos, s = turn.Sin;
        return new(
            c * c * Xx - 2 * c * s * Xy + s * s * Yy,
            c * s * (Xx - Yy) + (c * c - s * s) * Xy,
            s * s * Xx + 2 * c * s * Xy + c * c * Yy);
    }
}

namespace PodLayout.Reading.Curves;

/// <summary>Arcs written as a bulge between two vertices.</summary>
internal static class Bulge
{
    /// <summary>The arc from <paramref name="a"/> to <paramref name="b"/>: the bulge is the tangent of a quarter of its angle, negative when clockwise.</summary>
    public static EllipticArc Arc(Point3 a, Point3 b, double bulge)
    {
        var chord = b - a;
        // Centre: from the middle of the chord to the left by c (1 - bulge²) / (4 bulge).
        var shift = (1 - bulge * bulge) / (4 * bulge);
        var centre = (a + b) * 0.5 + new Point3(-chord.Y, chord.X, 0) * shift;
        var u = a - centre with { Z = a.Z };
        return new(centre with { Z = a.Z }, u with { Z = 0 }, new(-u.Y, u.X, 0), 0, 4 * Math.Atan(bulge));
    }
}

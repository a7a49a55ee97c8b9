using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Benchmarks.Corpus;

/// <summary>Shapes of our own, computed: their area can be chosen.</summary>
internal static class Families
{
    /// <summary>Each family by its name, as rings of any size with the outline first.</summary>
    public static ImmutableArray<(string Name, Func<double, ImmutableArray<Ring>> Make)> All { get; } =
    [
        ("super-ellipse", vary => [Polar(180, t => SuperEllipse(t, 1, 0.5 + 0.2 * vary, 2.2 + vary))]),
        ("ring", vary => [Polar(144, t => (Math.Cos(t), 0.8 * Math.Sin(t))), Polar(96, t => ((0.45 + 0.1 * vary) * Math.Cos(t), 0.36 * Math.Sin(t)))]),
        ("u-shape", vary => [U(0.34 + 0.08 * vary)]),
        ("s-shape", vary => [S(0.5 + 0.12 * vary)]),
        ("rail", vary => [Rail(0.3 + 0.08 * vary, 0.8 + 0.5 * vary)]),
        ("star", vary => [Polar(200, t => Star(t, 5 + (int)(3 * vary), 0.22 + 0.1 * vary))]),
        ("comb", vary => [Comb(3 + (int)(2 * vary))]),
    ];

    /// <summary>The rings grown or shrunk to an area of wood.</summary>
    public static ImmutableArray<Ring> OfArea(ImmutableArray<Ring> rings, double areaM2)
    {
        var scale = Math.Sqrt(areaM2 * 1e6 / (rings[0].AreaMm2 - rings.Skip(1).Sum(r => r.AreaMm2)));
        return Scaled(rings, scale);
    }

    /// <summary>The rings with every length multiplied.</summary>
    public static ImmutableArray<Ring> Scaled(ImmutableArray<Ring> rings, double scale) =>
        [.. rings.Select(r => new Ring([.. r.Points.Select(p => p * scale)]).CounterClockwise())];

    private static Ring Polar(int sides, Func<double, (double X, double Y)> at) => new(
        [.. Enumerable.Range(0, sides).Select(i => at(2 * Math.PI * i / sides)).Select(p => new Point2(p.X, p.Y))]);

    private static (double X, double Y) SuperEllipse(double t, double halfX, double halfY, double exponent)
    {
        var (s, c) = Math.SinCos(t);
        return (halfX * Math.Sign(c) * Math.Pow(Math.Abs(c), 2 / exponent), halfY * Math.Sign(s) * Math.Pow(Math.Abs(s), 2 / exponent));
    }

    private static (double X, double Y) Star(double t, int points, double depth)
    {
        var r = 1 - depth * (1 - Math.Cos(points * t));
        return (r * Math.Cos(t), r * Math.Sin(t));
    }

    // Two legs and a round bend, open at the top.
    private static Ring U(double leg)
    {
        var outer = Enumerable.Range(0, 49).Select(i => Math.PI + Math.PI * i / 48).Select(t => new Point2(Math.Cos(t), Math.Sin(t)));
        var inner = Enumerable.Range(0, 49).Select(i => -Math.PI * i / 48).Select(t => new Point2((1 - leg) * Math.Cos(t), (1 - leg) * Math.Sin(t)));
        return new([new(-1, 0.9), .. outer, new(1, 0.9), new(1 - leg, 0.9), .. inner, new(leg - 1, 0.9)]);
    }

    // Two half rings joined the other way round.
    private static Ring S(double width)
    {
        var half = width / 2;
        List<Point2> left = [], right = [];
        for (var i = 0; i <= 60; i++)
        {
            var t = 0.1 * Math.PI + 1.4 * Math.PI * i / 60;
            var (s, c) = Math.SinCos(t);
            left.Add(new((1 + half) * c, 1 + (1 + half) * s));
            right.Add(new((1 - half) * c, 1 + (1 - half) * s));
        }

        for (var i = 1; i <= 60; i++)
        {
            var t = 0.5 * Math.PI - 1.4 * Math.PI * i / 60;
            var (s, c) = Math.SinCos(t);
            left.Add(new((1 - half) * c, -1 + (1 - half) * s));
            right.Add(new((1 + half) * c, -1 + (1 + half) * s));
        }

        right.Reverse();
        return new([.. left, .. right]);
    }

    // A slice of a wide ring.
    private static Ring Rail(double width, double halfSpanRad)
    {
        Point2 At(double radius, double t) => new(radius * Math.Sin(t), radius * Math.Cos(t));
        var angles = Enumerable.Range(0, 61).Select(i => halfSpanRad * (i / 30.0 - 1)).ToArray();
        return new([.. angles.Select(t => At(1 + width / 2, t)), .. angles.Reverse().Select(t => At(1 - width / 2, t))]);
    }

    private static Ring Comb(int teeth)
    {
        List<Point2> points = [new(2 * teeth - 1, -1), new(0, -1)];
        for (var i = 0; i < teeth; i++)
        {
            points.AddRange([new(2 * i, 3), new(2 * i + 1, 3)]);
            if (i + 1 < teeth)
            {
                points.AddRange([new(2 * i + 1, 0), new(2 * i + 2, 0)]);
            }
        }

        return new([.. points]);
    }
}

using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Parts;

namespace PodLayout.Handover.Picture;

/// <summary>Lines along the edges of a part.</summary>
internal static class EdgePath
{
    /// <summary>The sides of a ring.</summary>
    public static IEnumerable<(Point2 A, Point2 B)> Sides(Ring ring) =>
        ring.Points.Select((p, i) => (p, ring.Points[(i + 1) % ring.Points.Length]));

    /// <summary>Points along a ring at most a step apart.</summary>
    public static IEnumerable<Point2> Points(Ring ring, double stepMm) => Sides(ring).SelectMany(s =>
    {
        var count = Math.Max(1, (int)Math.Ceiling((s.B - s.A).Length / stepMm));
        return Enumerable.Range(0, count).Select(i => s.A + (s.B - s.A) * ((double)i / count));
    });

    /// <summary>Distance from a side to a point.</summary>
    public static double Distance(Point2 a, Point2 b, Point2 p) => (p - Nearest(a, b, p)).Length;

    /// <summary>The point of a side that is nearest to a point.</summary>
    public static Point2 Nearest(Point2 a, Point2 b, Point2 p) => a + (b - a) * Along(a, b, p);

    /// <summary>Whether a straight line reaches into a box: what is left of it when it is clipped to the box (Liang and Barsky 1984).</summary>
    public static bool Touches(Box2 box, Point2 a, Point2 b) => Within(box, a, b) is not null;

    /// <summary>What is left of a straight line in a box, as shares of its length; null for nothing.</summary>
    public static (double From, double To)? Within(Box2 box, Point2 a, Point2 b)
    {
        if (Math.Max(a.X, b.X) < box.MinX || Math.Min(a.X, b.X) > box.MaxX || Math.Max(a.Y, b.Y) < box.MinY || Math.Min(a.Y, b.Y) > box.MaxY)
        {
            return null;
        }

        double from = 0, to = 1;
        var way = b - a;
        Clip(-way.X, a.X - box.MinX, ref from, ref to);
        Clip(way.X, box.MaxX - a.X, ref from, ref to);
        Clip(-way.Y, a.Y - box.MinY, ref from, ref to);
        Clip(way.Y, box.MaxY - a.Y, ref from, ref to);
        return from <= to ? (from, to) : null;
    }

    /// <summary>Whether two straight lines have a point in common.</summary>
    public static bool Cross(Point2 a, Point2 b, Point2 c, Point2 d)
    {
        static double Side(Point2 a, Point2 b, Point2 p) => (b - a).Cross(p - a);
        return Box2.Around([a, b]).Touches(Box2.Around([c, d]))
            && Side(a, b, c) * Side(a, b, d) <= 0 && Side(c, d, a) * Side(c, d, b) <= 0;
    }

    // What one side of the box leaves of a line, as shares of its length. A line along the side is kept: its bounds touch the box.
    private static void Clip(double speed, double room, ref double from, ref double to)
    {
        if (speed < 0)
        {
            from = Math.Max(from, room / speed);
        }
        else if (speed > 0)
        {
            to = Math.Min(to, room / speed);
        }
    }

    /// <summary>
    /// The way along an edge from one point to another whose length is nearest to the one given (there are two ways round
    /// each ring); null when no edge passes through both.
    /// </summary>
    public static ImmutableArray<Point2>? Between(PartShape shape, Point2 from, Point2 to, double lengthMm)
    {
        const double onEdgeMm = 0.5;
        var ways = shape.Holes.Prepend(shape.Outline)
            .Where(r => Sides(r).Any(s => Distance(s.A, s.B, from) < onEdgeMm) && Sides(r).Any(s => Distance(s.A, s.B, to) < onEdgeMm))
            .SelectMany(r => new[] { Way(r, from, to), Way(new([.. r.Points.Reverse()]), from, to) })
            .ToList();
        return ways.Count == 0 ? null : ways.MinBy(w => Math.Abs(Length(w) - lengthMm));
    }

    private static ImmutableArray<Point2> Way(Ring ring, Point2 from, Point2 to)
    {
        var sides = Sides(ring).ToList();
        var first = NearestSide(sides, from);
        var last = NearestSide(sides, to);
        double start = Along(sides[first].A, sides[first].B, from), end = Along(sides[last].A, sides[last].B, to);
        var path = ImmutableArray.CreateBuilder<Point2>();
        path.Add(from);
        for (var i = first; i != last || (i == first && path.Count == 1 && end <= start); i = (i + 1) % sides.Count)
        {
            path.Add(sides[i].B);
        }

        path.Add(to);
        return path.ToImmutable();
    }

    private static int NearestSide(List<(Point2 A, Point2 B)> sides, Point2 p) =>
        Enumerable.Range(0, sides.Count).MinBy(i => Distance(sides[i].A, sides[i].B, p));

    private static double Along(Point2 a, Point2 b, Point2 p)
    {
        var side = b - a;
        var square = side.Dot(side);
        return square == 0 ? 0 : Math.Clamp((p - a).Dot(side) / square, 0, 1);
    }

    private static double Length(ImmutableArray<Point2> path) =>
        Enumerable.Range(1, path.Length - 1).Sum(i => (path[i] - path[i - 1]).Length);
}

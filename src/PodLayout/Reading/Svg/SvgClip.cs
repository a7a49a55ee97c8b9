using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Reading.Curves;

namespace PodLayout.Reading.Svg;

/// <summary>
/// A region outside which nothing is seen (SVG 1.1, section 14.3): a clip path, or the viewport of a nested svg or symbol. Only a
/// convex one is resolved, and only for lines that lie wholly inside or clear of it.
/// </summary>
/// <param name="Name">How messages name it.</param>
/// <param name="Corners">Its corners, mm, counter-clockwise.</param>
internal sealed record SvgClip(string Name, ImmutableArray<Point2> Corners)
{
    /// <summary>Lines may lie on the edge of what they are clipped to, give or take what chords are off, mm.</summary>
    private const double EdgeMm = 2 * Tolerances.ChordMm;

    /// <summary>The convex region of some points in order; null when it is not convex.</summary>
    public static SvgClip? Of(string name, IEnumerable<Point3> outline)
    {
        var points = outline.Select(p => new Point2(p.X, p.Y)).ToList();
        for (var i = points.Count - 1; i > 0; i--)
        {
            if ((points[i] - points[i - 1]).Length <= Tolerances.SamePointMm || (points[i] - points[0]).Length <= Tolerances.SamePointMm)
                points.RemoveAt(i);
        }

        if (points.Count < 3)
            return null;
        var ring = new Ring([.. points]).CounterClockwise().Points;
        for (var i = 0; i < ring.Length; i++)
        {
            Point2 a = ring[i], b = ring[(i + 1) % ring.Length], c = ring[(i + 2) % ring.Length];
            if ((b - a).Cross(c - b) < -Tolerances.SamePointMm * (b - a).Length)
                return null;
        }

        return new(name, ring);
    }

    /// <summary>The viewport of a nested svg: a rectangle in its own units.</summary>
    public static SvgClip? Of(string name, Affine3 toMm, double x, double y, double width, double height) => Of(
        name, [toMm.Apply(new(x, y, 0)), toMm.Apply(new(x + width, y, 0)), toMm.Apply(new(x + width, y + height, 0)), toMm.Apply(new(x, y + height, 0))]);

    /// <summary>Whether all of a line is seen (true), none (false), or a part of it (null).</summary>
    public bool? Shows(IReadOnlyList<Point3> line)
    {
        var isInside = true;
        var clearOfAnEdge = false;
        for (var i = 0; i < Corners.Length; i++)
        {
            Point2 a = Corners[i], along = Corners[(i + 1) % Corners.Length] - a;
            var allBeyond = true;
            foreach (var p in line)
            {
                var inward = along.Cross(new Point2(p.X, p.Y) - a) / along.Length;
                isInside &= inward >= -EdgeMm;
                allBeyond &= inward <= EdgeMm;
            }

            clearOfAnEdge |= allBeyond;
        }

        return isInside ? true : clearOfAnEdge ? false : null;
    }
}

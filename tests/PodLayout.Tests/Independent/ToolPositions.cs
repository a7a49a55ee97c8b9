using PodLayout.Geometry;
using PodLayout.Layouts;
using PodLayout.Programs;

namespace PodLayout.Tests.Independent;

/// <summary>
/// Where tools are lower than they may be above pods, by stepping along the moves: no line is clipped, no area swept.
/// </summary>
public static class ToolPositions
{
    /// <summary>Positions at most a step apart, on the drawing, with the tool's radius; tools must be flat.</summary>
    public static List<(Point2 At, double RadiusMm, int Line)> Below(
        ToolPath path, IReadOnlyDictionary<int, Tool> tools, double heightMm, double stepMm)
    {
        var found = new List<(Point2, double, int)>();
        foreach (var stretch in path.Stretches)
        {
            var steps = Math.Max(1, (int)Math.Ceiling(stretch.LengthMm / stepMm));
            for (var i = 0; i <= steps; i++)
            {
                var tip = stretch.At((double)i / steps);
                if (tip.ZMm < heightMm - 1e-9)
                {
                    found.Add((new(tip.XMm, tip.YMm), tools[stretch.ToolNumber].DiameterMm / 2, stretch.Line));
                }
            }
        }

        return found;
    }

    /// <summary>The least distance from any pod's body to the edge of a tool at one of the positions, mm.</summary>
    public static double LeastClearance(Layout layout, IReadOnlyList<(Point2 At, double RadiusMm, int Line)> positions)
    {
        var least = double.PositiveInfinity;
        foreach (var body in layout.Pods.Select(Stand.BodyOf))
        {
            foreach (var (at, radius, _) in positions)
            {
                least = Math.Min(least, -body.Depth(Plane.Lay([at], layout.Placement.AngleDeg, layout.Placement.ZeroOnBoard)[0]) - radius);
            }
        }

        return least;
    }
}

using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Reading;

namespace PodLayout.Cuts;

/// <summary>The lines that an operation follows.</summary>
internal static class OperationLines
{
    /// <summary>The lines, each closed or open.</summary>
    public static List<(ImmutableArray<Point2> Points, bool IsClosed)> Of(CutLines lines, Drawing drawing, PartShape shape) => lines switch
    {
        CutLines.Outline => [(shape.Outline.Points, true)],
        CutLines.Holes => [.. shape.Holes.Select(h => (h.Points, true))],
        CutLines.OfLayer layer =>
        [
            .. drawing.Rings.Where(r => LayerRoles.Matches(layer.Name, r.Layer)).Select(r => (r.Ring.Points, true)),
            .. drawing.OpenContours.Where(c => LayerRoles.Matches(layer.Name, c.Layer)).Select(c => (c.Points, false)),
        ],
        _ => throw new ArgumentOutOfRangeException(nameof(lines), lines, "Unknown lines."),
    };

    /// <summary>Which they are, in words.</summary>
    public static string InWords(CutLines lines) => lines switch
    {
        CutLines.OfLayer layer => $"on layer {layer.Name}",
        CutLines.Holes => "of a hole",
        _ => "of the outline",
    };

    /// <summary>The edges of the part that they run along: 0 for the outline, 1.. for the holes.</summary>
    public static IEnumerable<int> EdgesAlong(CutLines lines, Drawing drawing, PartShape shape)
    {
        var rings = Of(lines, drawing, shape).Where(l => l.IsClosed).Select(l => new Ring(l.Points)).ToList();
        return Enumerable.Range(0, 1 + shape.Holes.Length)
            .Where(edge => rings.Exists(r => IsSame(r, edge == 0 ? shape.Outline : shape.Holes[edge - 1])));
    }

    // The same line, wherever it begins and whichever way it runs.
    private static bool IsSame(Ring a, Ring b) => a.Points.Length == b.Points.Length && a.Points.ToHashSet().SetEquals(b.Points);
}

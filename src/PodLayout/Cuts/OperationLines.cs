using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Reading;

namespace PodLayout.Cuts;

/// <summary>Which lines an operation follows.</summary>
internal static class OperationLines
{
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
        var rings = CutPaths.Lines(lines, drawing, shape).Where(l => l.IsClosed).Select(l => new Ring(l.Points)).ToList();
        return Enumerable.Range(0, 1 + shape.Holes.Length)
            .Where(edge => rings.Exists(r => IsSame(r, edge == 0 ? shape.Outline : shape.Holes[edge - 1])));
    }

    // The same line, wherever it begins and whichever way it runs.
    public static bool IsSame(Ring a, Ring b) => a.Points.Length == b.Points.Length && a.Points.ToHashSet().SetEquals(b.Points);
}

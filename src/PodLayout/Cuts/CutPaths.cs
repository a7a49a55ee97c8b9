using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Reading;

namespace PodLayout.Cuts;

/// <summary>Where the tools of operations run.</summary>
public static class CutPaths
{
    /// <summary>The lines that an operation follows.</summary>
    public static IReadOnlyList<CutLine> Lines(CutLines lines, Drawing drawing, PartShape shape) => lines switch
    {
        CutLines.Outline => [new(shape.Outline.Points, true)],
        CutLines.Holes => [.. shape.Holes.Select(h => new CutLine(h.Points, true))],
        CutLines.OfLayer layer =>
        [
            .. drawing.Rings.Where(r => LayerRoles.Matches(layer.Name, r.Layer)).Select(r => new CutLine(r.Ring.Points, true)),
            .. drawing.OpenContours.Where(c => LayerRoles.Matches(layer.Name, c.Layer)).Select(c => new CutLine(c.Points, false)),
        ],
        _ => throw new ArgumentOutOfRangeException(nameof(lines), lines, "Unknown lines."),
    };

    /// <summary>Where the tool's centre runs along finished lines, and on which side of its way the finished line lies.</summary>
    /// <param name="lines">The finished lines.</param>
    /// <param name="side">On which side of them the tool runs.</param>
    /// <param name="radiusMm">The tool's radius.</param>
    /// <returns>For each way: the line, and 1 where the finished line lies to the left, -1 to the right, 0 under the tool.</returns>
    public static IEnumerable<(CutLine Line, int FinishedSide)> Centres(IEnumerable<CutLine> lines, CutSide side, double radiusMm)
    {
        foreach (var line in lines)
        {
            if (side == CutSide.On)
            {
                yield return (line, 0);
                continue;
            }

            // Boundaries run with their region to the left.
            var inside = Region.Inside(new Ring(line.Points));
            foreach (var ring in (side == CutSide.Outside ? inside.Grow(radiusMm) : inside.Shrink(radiusMm)).Boundary)
            {
                yield return (new(ring.Points, true), side == CutSide.Outside ? 1 : -1);
            }
        }
    }

    /// <summary>What an operation is called that has no name.</summary>
    public static string NameOf(CutKind kind) => kind switch
    {
        CutKind.ThroughProfile => "through cut",
        CutKind.Drill => "drilled hole",
        CutKind.PocketFromFace => "pocket from the face",
        CutKind.PocketInUnderside => "pocket in the underside",
        CutKind.GrooveInUnderside => "groove in the underside",
        CutKind.EdgeProfile => "edge profile",
        _ => "defect",
    };
}

using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Parts;

/// <summary>Lines that are shown and not reckoned with: as drawn as long as they are few, else the longest of them, and coarser.</summary>
internal static class LinesForShow
{
    /// <summary>A drawing with more lines than this has engraved letters or hatching; more of them would only make the picture grey.</summary>
    public const int MostLines = 500;

    /// <summary>Points of all lines together: some 100 kB of layout.json.</summary>
    public const int MostPoints = 4000;

    /// <summary>What first goes where there are too many points, mm: less than the width of a line in a picture of a part.</summary>
    private const double FinestMm = 0.05;

    /// <summary>The lines to show, in the order in which they were drawn.</summary>
    public static ImmutableArray<ImmutableArray<Point2>> Of(IEnumerable<ImmutableArray<Point2>> lines)
    {
        // Ordering is stable: of lines of one length the first drawn stay.
        var longest = lines.Select((line, i) => (Line: line, Index: i)).OrderByDescending(l => LengthMm(l.Line)).Take(MostLines)
            .OrderBy(l => l.Index).Select(l => l.Line).ToList();
        for (var apartMm = FinestMm; longest.Sum(l => l.Length) > MostPoints; apartMm *= 2)
            longest = [.. longest.Select(l => Coarser(l, apartMm))];
        return [.. longest];
    }

    public static double LengthMm(ImmutableArray<Point2> line)
    {
        double sum = 0;
        for (var i = 1; i < line.Length; i++)
            sum += (line[i] - line[i - 1]).Length;
        return sum;
    }

    // What is dropped lies this near to a point that stays; both ends stay.
    private static ImmutableArray<Point2> Coarser(ImmutableArray<Point2> line, double apartMm)
    {
        var kept = ImmutableArray.CreateBuilder<Point2>();
        kept.Add(line[0]);
        foreach (var p in line.AsSpan(1, line.Length - 2))
        {
            if ((p - kept[^1]).Length > apartMm)
                kept.Add(p);
        }

        kept.Add(line[^1]);
        return kept.ToImmutable();
    }
}

using System.Collections.Immutable;
using System.Text.Json;
using PodLayout.Geometry;

namespace PodLayout.Benchmarks.Corpus;

/// <summary>Outlines from open data, as <c>benchmarks/corpus</c> keeps them: source and licence stand in each file.</summary>
internal static class Outlines
{
    /// <summary>The outlines of a file: their names, and their rings with the outline first, the longer side 1 mm.</summary>
    public static ImmutableArray<(string Name, ImmutableArray<Ring> Rings)> Read(string fileName)
    {
        using var file = JsonDocument.Parse(File.ReadAllText(Repository.Path("benchmarks", "corpus", fileName)));
        var side = file.RootElement.GetProperty("longerSide").GetDouble();
        return
        [
            .. file.RootElement.GetProperty("outlines").EnumerateArray().Select(outline => (
                outline.GetProperty("name").GetString()!,
                outline.GetProperty("rings").EnumerateArray().Select(ring => RingOf(ring, side)).ToImmutableArray())),
        ];
    }

    // Whole numbers, X and Y in turn.
    private static Ring RingOf(JsonElement ring, double side)
    {
        var numbers = ring.EnumerateArray().Select(n => n.GetInt32() / side).ToArray();
        return new Ring([.. numbers.Chunk(2).Select(p => new Point2(p[0], p[1]))]).CounterClockwise();
    }
}

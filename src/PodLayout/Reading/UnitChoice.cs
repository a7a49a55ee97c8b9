using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Geometry;

namespace PodLayout.Reading;

/// <summary>A drawing without a unit: its size in millimetres and in inches to choose by, and which of the two is likelier. Never a guess.</summary>
internal static class UnitChoice
{
    /// <summary>Parts that are held on pods are at least this long, mm.</summary>
    private const double ShortestMm = 100;

    /// <summary>And at most as long as the tables of such machines.</summary>
    private const double LongestMm = 4000;

    /// <summary>What was found and what to do.</summary>
    /// <param name="found">What is missing.</param>
    /// <param name="paths">The lines, read as if a unit were a millimetre.</param>
    /// <param name="measurement">The header's $MEASUREMENT: 0 for English, 1 for metric units (DXF reference, HEADER section); null when there is none.</param>
    public static (string Message, string Remedy) Words(string found, ImmutableArray<DrawnPath> paths, string? measurement)
    {
        if (paths.IsEmpty)
            return ($"{found}.", "Add --units mm or --units in.");
        var box = Box2.Around(paths.SelectMany(p => p.Points));
        var extent = Math.Max(box.Width, box.Height);
        bool isMm = extent is >= ShortestMm and <= LongestMm, isInch = extent * 25.4 is >= ShortestMm and <= LongestMm;
        var likelier = isMm != isInch ? (isMm ? "mm" : "in") : measurement switch { "0" => "in", "1" => "mm", _ => null };
        var message = string.Create(
            CultureInfo.InvariantCulture,
            $"{found}: all that it draws measures {box.Width:0.###} x {box.Height:0.###}, which would be {box.Width:0.#} x {box.Height:0.#} mm in millimetres or {box.Width * 25.4:0.#} x {box.Height * 25.4:0.#} mm in inches{(likelier is null ? "; either may be meant" : $"; {(likelier == "mm" ? "millimetres are" : "inches are")} likelier")}.");
        return (message, likelier == "in" ? "Add --units in, or --units mm." : "Add --units mm, or --units in.");
    }
}

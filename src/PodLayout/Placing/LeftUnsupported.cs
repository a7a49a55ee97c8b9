using System.Collections.Immutable;

namespace PodLayout.Placing;

/// <summary>Which points stay beyond their limit.</summary>
/// <param name="Points">The points, rising.</param>
/// <param name="Length">What they come to, in hundredths of a millimetre (see <see cref="Support.PointLengths"/>).</param>
/// <param name="LeastPossible">No layout of all placements asked for leaves less than this.</param>
/// <param name="At">A layout that supports all others; null where none was looked for.</param>
internal sealed record LeftUnsupported(ImmutableArray<int> Points, long Length, long LeastPossible, FoundLayout? At)
{
    /// <summary>Nothing.</summary>
    public static LeftUnsupported Nothing { get; } = new([], 0, 0, null);

    /// <summary>
    /// Side of the boxes that were left open although their bound does not exclude them, mm: layouts that exist only inside one of these
    /// are left out of the bound; 0 when there are none.
    /// </summary>
    public double OpenToleranceMm { get; init; }

    /// <summary>The points that are to be supported, of so many.</summary>
    public ImmutableArray<int> Others(int count) => [.. Enumerable.Range(0, count).Except(Points)];
}

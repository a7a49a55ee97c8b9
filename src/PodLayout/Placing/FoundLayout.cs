using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Placing;

/// <summary>A layout found on the way.</summary>
/// <param name="Frame">The part at its angle.</param>
/// <param name="Offset">Where the pivot lies within its pitch.</param>
/// <param name="Columns">Whole pitches along X.</param>
/// <param name="Rows">Whole pitches along Y.</param>
/// <param name="Seats">The filled seats.</param>
/// <param name="WorstShare">The worst overhang as a share of its limit.</param>
internal sealed record FoundLayout(
    PlacingFrame Frame, Point2 Offset, int Columns, int Rows, ImmutableArray<FrameSeat> Seats, double WorstShare)
{
    /// <summary>Fewer pods is better, then less overhang.</summary>
    public bool IsBetterThan(FoundLayout? other) =>
        other is null || Seats.Length < other.Seats.Length
        || (Seats.Length == other.Seats.Length && WorstShare < other.WorstShare - 1e-9);
}

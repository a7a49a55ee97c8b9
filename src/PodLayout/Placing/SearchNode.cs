using System.Collections.Immutable;
using PodLayout.Holding;

namespace PodLayout.Placing;

/// <summary>A set of placements still to be examined.</summary>
/// <param name="Ground">Seats and shifts, perhaps those of a larger span of angles.</param>
/// <param name="AngleDeg">The angle, or the middle of the span.</param>
/// <param name="HalfSpanDeg">Half the span of angles; 0 for one angle.</param>
/// <param name="Box">Offsets within a pitch.</param>
/// <param name="Classes">Indices of the shift classes.</param>
/// <param name="Rows">
/// Support rows to begin with: those that the larger set took. A seat that could not support a point there cannot here.
/// </param>
/// <param name="Bound">No layout of the set has fewer pods than this.</param>
internal sealed record SearchNode(
    WaitingGround Ground,
    double AngleDeg,
    double HalfSpanDeg,
    OffsetBox Box,
    ImmutableArray<int> Classes,
    ImmutableArray<PointRow> Rows,
    int Bound)
{
    /// <summary>Ways in which layouts of the larger set gave way.</summary>
    public ImmutableArray<Weakness> Weaknesses { get; init; } = [];
}

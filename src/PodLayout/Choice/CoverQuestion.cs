using System.Collections.Immutable;

namespace PodLayout.Choice;

/// <summary>
/// The layout model of a placement, or of a box of placements, whose support rows are made only when they are asked for: most
/// points are supported anyway by the pods that others need.
/// </summary>
/// <param name="SeatCount">Seats are numbered from 0.</param>
/// <param name="PointCount">Points are numbered from 0.</param>
/// <param name="SupportersOf">The seats that support a point, rising.</param>
/// <param name="Supports">Whether a seat (first) supports a point (second): the same relation, for one pair.</param>
/// <param name="Rooms">See <see cref="CoverProblem.Rooms"/>; made when first needed.</param>
/// <param name="Stocks">See <see cref="CoverProblem.Stocks"/>.</param>
public sealed record CoverQuestion(
    int SeatCount,
    int PointCount,
    Func<int, int[]> SupportersOf,
    Func<int, int, bool> Supports,
    Lazy<ImmutableArray<int[]>> Rooms,
    ImmutableArray<StockRow> Stocks)
{
    /// <summary>
    /// The rows of holding that a choice (rising, supporting every point) breaks; none when it holds, or when there is no more to
    /// say of it. Null where holding does not matter.
    /// </summary>
    public Func<ImmutableArray<int>, ImmutableArray<HoldRow>>? HoldsBrokenBy { get; init; }
}

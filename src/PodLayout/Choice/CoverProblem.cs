using System.Collections.Immutable;

namespace PodLayout.Choice;

/// <summary>Which seats to fill: the layout model of one placement, or of a box of placements, in counts only.</summary>
/// <param name="SeatCount">Seats are numbered from 0.</param>
/// <param name="Supporters">
/// For each point that must be supported, the seats that support it, rising. Row name: "point n is supported".
/// </param>
/// <param name="Rooms">
/// Groups of seats of which at most one can be filled, because their bodies share room. Row name: "one pod to each spot".
/// </param>
/// <param name="Stocks">Groups of seats of one pod type. Row name: "no more pods of a type than in stock".</param>
public sealed record CoverProblem(
    int SeatCount,
    ImmutableArray<int[]> Supporters,
    ImmutableArray<int[]> Rooms,
    ImmutableArray<StockRow> Stocks)
{
    /// <summary>What the filled seats must bring together. Row name: "the part is held against ...".</summary>
    public ImmutableArray<HoldRow> Holds { get; init; } = [];

    /// <summary>The first point that no seat supports; -1 when every point has one.</summary>
    public int FirstUnsupported => Supporters.IsDefaultOrEmpty ? -1 : Supporters.IndexOf(Supporters.FirstOrDefault(s => s.Length == 0)!);
}

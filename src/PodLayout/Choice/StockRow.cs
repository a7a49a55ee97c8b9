namespace PodLayout.Choice;

/// <summary>How many seats of a group may be filled.</summary>
/// <param name="Seats">The seats of one pod type, rising.</param>
/// <param name="Limit">Pods of the type in stock.</param>
public sealed record StockRow(int[] Seats, int Limit);

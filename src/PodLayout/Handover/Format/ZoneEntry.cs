namespace PodLayout.Handover.Format;

/// <summary>A part of the vacuum table with a valve of its own.</summary>
/// <param name="Name">What the shop calls it.</param>
/// <param name="Area">Its extent, from the board's datum.</param>
public sealed record ZoneEntry(string Name, BoxEntry Area);

using System.Collections.Immutable;

namespace PodLayout.Handover.Setup;

/// <summary>A row of a table on the card.</summary>
/// <param name="Key">What its box is remembered by, and what it is called in the picture.</param>
/// <param name="Cells">Its cells; the first names the row.</param>
internal sealed record CardRow(string Key, ImmutableArray<string> Cells);

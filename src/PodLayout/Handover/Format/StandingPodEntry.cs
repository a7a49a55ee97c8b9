namespace PodLayout.Handover.Format;

/// <summary>A pod that stood on the board before.</summary>
/// <param name="Type">Name of its type.</param>
/// <param name="Turned">Whether it stands turned by a quarter.</param>
/// <param name="ColumnFromDatum">The groove along its left edge, counted from 1.</param>
/// <param name="RowFromDatum">The groove along its lower edge, counted from 1.</param>
public sealed record StandingPodEntry(string Type, bool Turned, int ColumnFromDatum, int RowFromDatum);

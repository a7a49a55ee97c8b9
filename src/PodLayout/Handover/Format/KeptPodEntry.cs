namespace PodLayout.Handover.Format;

/// <summary>A pod that was to stand in the layout.</summary>
/// <param name="Pod">Name of its type.</param>
/// <param name="Turned">Whether it stands turned by a quarter.</param>
/// <param name="ColumnFromDatum">The groove along its left edge, counted from 1.</param>
/// <param name="RowFromDatum">The groove along its lower edge, counted from 1.</param>
public sealed record KeptPodEntry(string Pod, bool Turned, int ColumnFromDatum, int RowFromDatum);

namespace PodLayout.Woods;

/// <summary>A figure of a wood.</summary>
/// <param name="Value">The figure.</param>
/// <param name="IsFromMemory">Whether it was put down from memory and not read in its source: to be checked there before anything hangs on it.</param>
public readonly record struct Figure(double Value, bool IsFromMemory);

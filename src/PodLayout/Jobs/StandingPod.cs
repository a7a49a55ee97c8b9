namespace PodLayout.Jobs;

/// <summary>A pod at a place of the board, by its grooves.</summary>
/// <param name="Type">Name of the pod type.</param>
/// <param name="Turned">Whether it is turned by a quarter.</param>
/// <param name="Column">Index of the groove along its left edge; 0 is the first from the datum.</param>
/// <param name="Row">Index of the groove along its lower edge.</param>
public sealed record StandingPod(string Type, bool Turned, int Column, int Row);

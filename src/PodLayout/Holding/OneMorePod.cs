namespace PodLayout.Holding;

/// <summary>What one more pod would give, where it gives most.</summary>
/// <param name="Type">Kind of pod.</param>
/// <param name="Turned">Whether it stands turned by a quarter.</param>
/// <param name="Column">Index of the groove along its left edge.</param>
/// <param name="Row">Index of the groove along its lower edge.</param>
/// <param name="Factor">The holding factor with it.</param>
public sealed record OneMorePod(string Type, bool Turned, int Column, int Row, double Factor);

using PodLayout.Shops;

namespace PodLayout.Jobs;

/// <summary>A pod that must stand in the layout.</summary>
/// <param name="Type">Which kind.</param>
/// <param name="Turned">Whether it stands turned by a quarter; never for a body that looks the same turned.</param>
/// <param name="Column">Index of the groove along its left edge; 0 is the first groove from the datum.</param>
/// <param name="Row">Index of the groove along its lower edge; 0 is the first groove from the datum.</param>
public sealed record KeptPod(PodType Type, bool Turned, int Column, int Row);

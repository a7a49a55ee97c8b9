namespace PodLayout.Jobs;

/// <summary>A pod that must stand in the layout, as asked, before the shop is read.</summary>
/// <param name="Pod">Name of its type.</param>
/// <param name="Turned">Whether it stands turned by a quarter.</param>
/// <param name="Column">Index of the groove along its left edge; 0 is the first groove from the datum.</param>
/// <param name="Row">Index of the groove along its lower edge; 0 is the first groove from the datum.</param>
public sealed record RequestedPod(string Pod, bool Turned, int Column, int Row);

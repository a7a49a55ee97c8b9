namespace PodLayout.Handover.Format;

/// <summary>A tool that the program moves.</summary>
/// <param name="Number">Its number in the program.</param>
/// <param name="DiameterMm">Its diameter.</param>
/// <param name="DeepestZMm">The lowest Z that it is driven to, as the program writes it.</param>
public sealed record ProgramToolEntry(int Number, double DiameterMm, double DeepestZMm);

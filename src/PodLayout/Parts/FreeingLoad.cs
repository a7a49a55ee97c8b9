namespace PodLayout.Parts;

/// <summary>A load of a tool that goes through the last layer of wood there.</summary>
/// <param name="Load">The load; it acts where the tool's middle is.</param>
/// <param name="RadiusMm">Radius of the tool: wood nearer than this to its middle is touched.</param>
public sealed record FreeingLoad(PathLoad Load, double RadiusMm);

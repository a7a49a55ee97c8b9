using PodLayout.Geometry;

namespace PodLayout.Parts;

/// <summary>A spot of the part under which no pod's body may stand, in the part's coordinates.</summary>
/// <param name="Name">What it is called.</param>
/// <param name="Ring">Its extent, counter-clockwise.</param>
public sealed record AvoidedSpot(string Name, Ring Ring);

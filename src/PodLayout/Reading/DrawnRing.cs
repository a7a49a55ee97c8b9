using PodLayout.Geometry;

namespace PodLayout.Reading;

/// <summary>A closed line of a drawing.</summary>
/// <param name="Layer">Layer it is drawn on.</param>
/// <param name="Ring">The line, counter-clockwise, beginning at its leftmost point.</param>
public sealed record DrawnRing(string Layer, Ring Ring);

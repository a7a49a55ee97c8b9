using PodLayout.Geometry;

namespace PodLayout.Reading;

/// <summary>A closed line of a drawing.</summary>
/// <param name="Layer">Layer it is drawn on.</param>
/// <param name="Ring">The line, counter-clockwise, beginning at its leftmost point.</param>
public sealed record DrawnRing(string Layer, Ring Ring)
{
    /// <summary>Area inside the curves that were drawn, not inside their chords, mm².</summary>
    public double TrueAreaMm2 { get; init; } = Ring.AreaMm2;

    /// <summary>Length of the curves that were drawn, mm.</summary>
    public double TrueLengthMm { get; init; } = Ring.PerimeterMm;

    /// <summary>Whether it only fills the whole page of an SVG: a background, most likely.</summary>
    public bool CoversPage { get; init; }
}

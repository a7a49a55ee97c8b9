using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Reading;

/// <summary>One line or curve of a drawing as chords, in millimetres, before joining.</summary>
/// <param name="Layer">Layer it is drawn on.</param>
/// <param name="Points">Points on the curve; the first is not repeated when closed.</param>
/// <param name="Closed">Whether the last point joins the first.</param>
/// <param name="Origin">What it was, with its line, for messages.</param>
internal sealed record DrawnPath(string Layer, ImmutableArray<Point2> Points, bool Closed, string Origin)
{
    /// <summary>Area between its curves and their chords, mm²: positive where a counter-clockwise line bulges outwards.</summary>
    public double CurveAreaMm2 { get; init; }

    /// <summary>Length of its curves beyond that of their chords, mm.</summary>
    public double CurveLengthMm { get; init; }

    /// <summary>Radius of an arc or half the longer axis of an ellipse, mm; 0 for what is neither. However short the arc, it must not vanish.</summary>
    public double RadiusMm { get; init; }

    /// <summary>Whether it only fills the whole page of an SVG.</summary>
    public bool CoversPage { get; init; }

    /// <summary>Whether it hangs by one end on a point where other lines go on.</summary>
    public bool IsTail { get; init; }
}

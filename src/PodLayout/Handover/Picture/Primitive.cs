using System.Collections.Immutable;
using PodLayout.Geometry;

namespace PodLayout.Handover.Picture;

/// <summary>One thing on a sheet, in board millimetres.</summary>
/// <param name="Style">Name of its style in <see cref="PictureStyles"/>.</param>
public abstract record Primitive(string Style)
{
    /// <summary>What it belongs to, for instance pod P3, so that a reader can point at it; null for nothing in particular.</summary>
    public string? Of { get; init; }

    /// <summary>An open line through points.</summary>
    /// <param name="Style">Name of its style.</param>
    /// <param name="Points">At least two.</param>
    public sealed record Line(string Style, ImmutableArray<Point2> Points) : Primitive(Style);

    /// <summary>Separate straight strokes: from the first point to the second, from the third to the fourth, and so on.</summary>
    /// <param name="Style">Name of its style.</param>
    /// <param name="Ends">An even number of points.</param>
    public sealed record Strokes(string Style, ImmutableArray<Point2> Ends) : Primitive(Style);

    /// <summary>An area bounded by rings; rings inside others are holes (even-odd).</summary>
    /// <param name="Style">Name of its style.</param>
    /// <param name="Rings">At least one.</param>
    public sealed record Area(string Style, ImmutableArray<Ring> Rings) : Primitive(Style);

    /// <summary>A disc or circle.</summary>
    /// <param name="Style">Name of its style.</param>
    /// <param name="Centre">Centre.</param>
    /// <param name="RadiusMm">Radius.</param>
    public sealed record Disc(string Style, Point2 Centre, double RadiusMm) : Primitive(Style);

    /// <summary>An ellipse.</summary>
    /// <param name="Style">Name of its style.</param>
    /// <param name="Centre">Centre.</param>
    /// <param name="HalfAxisMm">The half axis in the direction of the angle.</param>
    /// <param name="OtherHalfAxisMm">The half axis across it.</param>
    /// <param name="AngleDeg">Degrees counter-clockwise from X.</param>
    public sealed record Ellipse(
        string Style, Point2 Centre, double HalfAxisMm, double OtherHalfAxisMm, double AngleDeg) : Primitive(Style);

    /// <summary>Parallel strokes that fill an area.</summary>
    /// <param name="Style">Name of its style.</param>
    /// <param name="Rings">The area (even-odd).</param>
    /// <param name="AngleDeg">Direction of the strokes.</param>
    /// <param name="SpacingMm">From stroke to stroke.</param>
    public sealed record Hatch(string Style, ImmutableArray<Ring> Rings, double AngleDeg, double SpacingMm) : Primitive(Style);

    /// <summary>One line of text.</summary>
    /// <param name="Style">Name of its style.</param>
    /// <param name="At">Half the height of a capital lies on this point's Y.</param>
    /// <param name="Words">The text.</param>
    /// <param name="SizeMm">Size of the type (em).</param>
    /// <param name="Anchor">Which point of the text lies there.</param>
    /// <param name="AngleDeg">Turn, degrees counter-clockwise.</param>
    public sealed record Text(
        string Style, Point2 At, string Words, double SizeMm, TextAnchor Anchor, double AngleDeg = 0) : Primitive(Style)
    {
        /// <summary>The width that the text is made narrower to; null for its own. In DXF it keeps its own.</summary>
        public double? WidthMm { get; init; }
    }
}

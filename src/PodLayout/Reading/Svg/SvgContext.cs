using System.Collections.Immutable;
using System.Xml.Linq;
using PodLayout.Reading.Curves;

namespace PodLayout.Reading.Svg;

/// <summary>What holds of all that is drawn inside an element.</summary>
/// <param name="ToMm">From its units to millimetres.</param>
/// <param name="Layer">The layer that its lines are taken to lie on.</param>
/// <param name="Paint">Whether fill and stroke are seen.</param>
/// <param name="Shapes">Reads shapes against the viewport that percentages refer to.</param>
/// <param name="Clips">Regions outside which nothing is seen.</param>
/// <param name="Veil">What hides a part of the lines in a way that is not resolved; null for nothing.</param>
/// <param name="Used">Elements that are being drawn by use, against circles.</param>
/// <param name="Depth">How deep elements are nested.</param>
internal sealed record SvgContext(
    Affine3 ToMm,
    SvgLayerName Layer,
    SvgPaint Paint,
    SvgShapes Shapes,
    ImmutableList<SvgClip> Clips,
    string? Veil,
    ImmutableHashSet<XElement> Used,
    int Depth);

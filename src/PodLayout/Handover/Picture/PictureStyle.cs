using System.Collections.Immutable;

namespace PodLayout.Handover.Picture;

/// <summary>How a primitive looks. Widths and dashes are in millimetres of paper.</summary>
/// <param name="Name">Name, kebab-case.</param>
/// <param name="Stroke">Colour of the line, #rrggbb; null for none.</param>
/// <param name="WidthMm">Width of the line.</param>
/// <param name="DashMm">Dashes and gaps; empty for a full line.</param>
/// <param name="Fill">Colour of the area or the text, #rrggbb; null for none.</param>
/// <param name="IsBold">Whether text is bold.</param>
public sealed record PictureStyle(
    string Name, string? Stroke, double WidthMm, ImmutableArray<double> DashMm, string? Fill, bool IsBold = false);

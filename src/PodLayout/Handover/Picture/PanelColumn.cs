using PodLayout.Geometry;

namespace PodLayout.Handover.Picture;

/// <summary>A column of the words and signs around a drawing.</summary>
/// <param name="Top">Its upper left corner, board coordinates.</param>
/// <param name="HeightMm">Its height, mm of paper.</param>
/// <param name="IsBelow">Whether it stands below the drawing, not beside it.</param>
internal sealed record PanelColumn(Point2 Top, double HeightMm, bool IsBelow);

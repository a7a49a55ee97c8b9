namespace PodLayout.Handover.Format;

/// <summary>The part.</summary>
/// <param name="Name">What the shop calls it.</param>
/// <param name="ThicknessMm">Thickness.</param>
/// <param name="Species">The wood, as the user wrote it; empty when not given.</param>
/// <param name="GrainDeg">Direction of the grain in the drawing, degrees counter-clockwise from X.</param>
/// <param name="AreaMm2">Area of the wood: outline less holes, mm².</param>
/// <param name="InDrawing">The shape in the drawing's coordinates.</param>
/// <param name="OnBoard">The shape as it lies on the board, from the board's datum; null when there is no layout.</param>
public sealed record PartEntry(
    string Name,
    double ThicknessMm,
    string Species,
    double GrainDeg,
    double AreaMm2,
    ShapeEntry InDrawing,
    ShapeEntry? OnBoard);

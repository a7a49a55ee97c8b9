using PodLayout.Geometry;

namespace PodLayout.Jobs;

/// <summary>A piece of the blank that comes loose when the part is cut out.</summary>
/// <param name="Name">Its name: offcut 1 is the largest.</param>
/// <param name="Inside">A point well inside it, in the drawing's coordinates.</param>
/// <param name="WidthMm">Its extent along the drawing's X.</param>
/// <param name="HeightMm">Its extent along the drawing's Y.</param>
/// <param name="MassKg">Its mass.</param>
/// <param name="IsLarge">Whether it can do harm when the cutter throws it.</param>
/// <param name="IsAround">Whether it is a frame all round the part.</param>
public sealed record Offcut(string Name, Point2 Inside, double WidthMm, double HeightMm, double MassKg, bool IsLarge, bool IsAround);

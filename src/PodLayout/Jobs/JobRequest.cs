using PodLayout.Cuts;
using PodLayout.Parts;
using PodLayout.Reading;
using PodLayout.Shops;

namespace PodLayout.Jobs;

/// <summary>A job as asked and checked, before its drawing and its shop are read.</summary>
/// <param name="Name">What the shop calls the job.</param>
/// <param name="DrawingPath">The drawing, as written: a path from the job file's folder, or from the working folder when an option gave it.</param>
/// <param name="ShopPath">The shop's file, likewise; null for the built-in shop.</param>
/// <param name="Reading">How the drawing is to be read.</param>
/// <param name="Layers">What the drawing's layers hold.</param>
/// <param name="ThicknessMm">Thickness of the part.</param>
/// <param name="Species">The wood, in free words.</param>
/// <param name="GrainDeg">Direction of the grain in the drawing, degrees counter-clockwise from X.</param>
/// <param name="Margins">Distances to keep.</param>
/// <param name="Support">How far the part may reach beyond its pods.</param>
/// <param name="Placement">Where it should lie.</param>
public sealed record JobRequest(
    string Name,
    string DrawingPath,
    string? ShopPath,
    ReadingOptions Reading,
    LayerRoles Layers,
    double ThicknessMm,
    string Species,
    double GrainDeg,
    Margins Margins,
    SupportRules Support,
    PlacementWish Placement)
{
    /// <summary>What is said of cuts, of the program and of the blank.</summary>
    public CutRequest Cuts { get; init; } = CutRequest.None;

    /// <summary>The job, now that its part and its shop are known.</summary>
    public Job With(PartShape shape, Shop shop) => new(
        Name, new Part(Name, shape, ThicknessMm, Species, GrainDeg), shop, Margins, Support, Placement);
}

using System.Collections.Immutable;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Programs;
using PodLayout.Reading;

namespace PodLayout.Cuts;

/// <summary>Puts what a job says of cuts, and what its program does, into the part and the shop.</summary>
public static class Cutting
{
    // A hazard of more corners is given a simpler edge around it, a hair or two larger.
    private const int ManyCorners = 600;

    /// <summary>The job with its hazards, and without pods that are too low for its cuts.</summary>
    /// <param name="job">The job.</param>
    /// <param name="drawing">Its drawing.</param>
    /// <param name="request">What it says of cuts.</param>
    /// <param name="path">Its program, read; null when it names none.</param>
    /// <param name="jobFile">The job file, for messages.</param>
    public static Outcome<Job> Apply(Job job, Drawing drawing, CutRequest request, ToolPath? path, string jobFile)
    {
        if (request.Operations.IsEmpty && path is null && request.Blank is null)
        {
            return Outcome<Job>.Of(job);
        }

        var (shape, thickness) = (job.Part.Shape, job.Part.ThicknessMm);
        return Heights.Check(job.Shop, path, request, thickness, jobFile)
            .Then(shop => OperationHazards.Of(drawing, shape, request, jobFile)
            .Then(operations => FromProgram(shop, path, request, job)
            .Then(program => Offcuts.Tell(drawing, shape, request, [.. operations, .. program], thickness, jobFile)
            .Then(_ => Outcome<Job>.Of(job with
            {
                Shop = shop,
                ProgramZero = request.Program is { } p ? new(p.FilePath, p.ZZero, p.Offset) : null,
                Part = job.Part with { Shape = shape with { Hazards = Within(shape, [.. operations, .. program]) } },
            })))));
    }

    private static Outcome<IReadOnlyList<Hazard>> FromProgram(Shops.Shop shop, ToolPath? path, CutRequest request, Job job)
    {
        if (path is null)
        {
            return Outcome<IReadOnlyList<Hazard>>.Of([]);
        }

        // With zero on the board, the higher the pods the more of the program lies below the underside.
        var height = shop.Pods.Where(p => p.Stock > 0).Select(p => p.HeightMm).DefaultIfEmpty(0).Max();
        return ProgramHazards.Of(path, Heights.Setting(request, height, job.Part.ThicknessMm), job.Part.Shape);
    }

    // Every edge of a hazard is gone through for each pod type and angle.
    private static Region Simple(Region area) =>
        area.Boundary.Sum(b => b.Points.Length) > ManyCorners ? area.SimplifiedOutward(Tolerances.ContactMm) : area;

    /// <summary>
    /// What of the hazards matters: seals and bodies keep from the part's edges anyway, by the same margins, and so from all that
    /// lies beyond them. A hair is left off within, so that a cut along the edge does not become a sliver of thousands of corners.
    /// </summary>
    private static ImmutableArray<Hazard> Within(PartShape shape, IReadOnlyList<Hazard> hazards)
    {
        var wood = Region.Inside(shape.Outline, shape.Holes).Shrink(Tolerances.ContactMm);
        return [.. hazards.Select(h => h with { Area = Simple(h.Area.Intersect(wood)), Shown = Simple(h.Shown) })];
    }
}

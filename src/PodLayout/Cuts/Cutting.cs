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
    // Mass of loose pieces where the wood is not known: that of the heavier common hardwoods.
    private const double UnknownOffcutKgPerM3 = 700;

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
            var uncut = FloorsOver.Of(job, request, [], []);
            return Outcome<Job>.Of(
                job with { Part = job.Part with { Shape = job.Part.Shape with { WeakFloors = uncut.Floors } } }, uncut.Told(jobFile));
        }

        var (shape, thickness) = (job.Part.Shape, job.Part.ThicknessMm);
        return Zero(job, path, request)
            .Then(_ => Heights.Check(job.Shop, path, request, thickness, jobFile))
            .Then(shop => OperationHazards.Of(drawing, shape, request, jobFile)
            .Then(operations => FromProgram(shop, path, request, job, drawing, operations)
            .Then(program => Offcuts.Tell(drawing, shape, request, [.. operations, .. program], thickness, OffcutDensity(request, job.Part), jobFile)
            .Then(loose => WithAll(
                job with { Shop = shop, ProgramZero = ZeroOf(request, path, Setting(shop, request, job)) },
                drawing, request, path, [.. operations, .. program], loose, jobFile)))));
    }

    private static ProgramZero? ZeroOf(CutRequest request, ToolPath? path, ProgramSetting setting) => request.Program is not { } p ? null
        : new(p.FilePath, p.ZZero, p.Offset) { Tools = path is null ? [] : [.. ProgramTool.Of(path, setting)], IsInInches = path?.InInches };

    // A wrong unit explains more than a wrong zero, and a wrong zero explains what the heights would say: it is told before them.
    private static Outcome<Job> Zero(Job job, ToolPath? path, CutRequest request)
    {
        if (path is not null && UnitDoubts.Of(path, request, job.Part) is { } unit)
        {
            return Outcome<Job>.Of(job, unit);
        }

        double[] heights = [.. job.Shop.Pods.Where(p => p.Stock > 0).Select(p => p.HeightMm).Distinct().Order()];
        return path is null || ZeroDoubts.Of(path, request, heights, job.Part) is not { } doubt ? Outcome<Job>.Of(job)
            : doubt.Severity == Severity.Refused ? Outcome<Job>.Refuse(doubt) : Outcome<Job>.Of(job, doubt);
    }

    private static Outcome<Job> WithAll(
        Job job, Drawing drawing, CutRequest request, ToolPath? path, IReadOnlyList<Hazard> hazards, IReadOnlyList<Region> loose, string jobFile)
    {
        var shape = job.Part.Shape;
        // Both go along every cut, and neither needs the other: side by side, for the sake of the first layout.
        var setting = Setting(job.Shop, request, job);
        var withoutFloors = shape;
        var thin = Task.Run(() => ThinFloors.Of(drawing, withoutFloors, request, path, setting, hazards));
        var held = Offcuts.ToHold(loose, request.Blank, job.Part.ThicknessMm, OffcutDensity(request, job.Part));
        var over = Task.Run(() => FloorsOver.Of(job with { Part = job.Part with { Shape = withoutFloors with { Held = held } } }, drawing, request, path, setting, hazards));
        var skins = Skins.Of(drawing, shape, request, hazards, jobFile);
        var floors = thin.GetAwaiter().GetResult();
        var weak = over.GetAwaiter().GetResult();
        return skins.Then(skinned =>
        {
            shape = shape with
            {
                Floors = floors,
                Skinned = [.. skinned],
                Blank = Offcuts.EdgesBeyondPart(drawing, shape, request.Blank),
                Held = held,
                WeakFloors = weak.Floors,
            };
            shape = shape with { Hazards = Within(shape, hazards) };
            return Outcome<Job>.Of(
                job with
                {
                    Part = job.Part with { Shape = shape, CutAway = weak.CutAway },
                    IsBlankStated = request.Blank is not null,
                    Offcuts = Offcuts.ToWatch(loose, shape, job.Part.ThicknessMm, OffcutDensity(request, job.Part)),
                }, [.. ThinFloors.Tell(floors, job.Support.ThinFloorSpanMm, jobFile), .. weak.Told(jobFile)]);
        });
    }

    // With zero on the board, the higher the pods the more of the program lies below the underside.
    private static ProgramSetting Setting(Shops.Shop shop, CutRequest request, Job job) => Heights.Setting(
        request, shop.Pods.Where(p => p.Stock > 0).Select(p => p.HeightMm).DefaultIfEmpty(0).Max(), job.Part.ThicknessMm);

    // A heavy piece does more harm than a light one.
    private static double OffcutDensity(CutRequest request, Part part) =>
        request.Blank?.DensityKgPerM3 ?? (part.Wood.IsKnown ? part.Wood.WeightKgPerM3 : UnknownOffcutKgPerM3);

    private static Outcome<IReadOnlyList<Hazard>> FromProgram(
        Shops.Shop shop, ToolPath? path, CutRequest request, Job job, Drawing drawing, IReadOnlyList<Hazard> operations)
    {
        if (path is null)
        {
            return Outcome<IReadOnlyList<Hazard>>.Of([]);
        }

        return ProgramHazards.Of(path, Setting(shop, request, job), drawing, job.Part.Shape, operations);
    }

    // Every edge of a hazard is gone through for each pod type and angle: one of many corners is given a simpler edge, a hair or two larger.
    private static Region Simple(Region area) => area.IsIntricate ? area.SimplifiedOutward(Tolerances.ContactMm) : area;

    /// <summary>
    /// What of the hazards matters: seals and bodies keep from the part's edges anyway, by the same margins, and so from all that
    /// lies beyond them. A hair is left off within, so that a cut along the edge does not become a sliver of thousands of corners.
    /// </summary>
    private static ImmutableArray<Hazard> Within(PartShape shape, IReadOnlyList<Hazard> hazards)
    {
        var wood = Region.UnionOf(
        [
            Region.Inside(shape.Outline, shape.Holes).Shrink(Tolerances.ContactMm),
            .. shape.Held.Select(p => Region.Inside(p.Outline, p.Holes).Shrink(Tolerances.ContactMm)),
        ]);
        // Where bodies may pass an edge, what is cut beyond it matters too.
        return [.. hazards.Select(h => h with { Area = Simple(shape.Skinned.IsEmpty ? h.Area.Near(wood.Bounds).Intersect(wood) : h.Area), Shown = Simple(h.Shown) })];
    }
}

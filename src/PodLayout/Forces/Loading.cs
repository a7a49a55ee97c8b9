using System.Globalization;
using PodLayout.Cuts;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Programs;
using PodLayout.Reading;

namespace PodLayout.Forces;

/// <summary>Works out what the cutters of a job do to its part.</summary>
public static class Loading
{
    /// <summary>The loads on the part, whether its cuts are in the job already or not.</summary>
    /// <param name="job">The job.</param>
    /// <param name="drawing">Its drawing.</param>
    /// <param name="request">What it says of cuts.</param>
    /// <param name="path">Its program, read; null when it names none.</param>
    /// <param name="jobFile">The job file, for messages.</param>
    public static Outcome<CutterLoads> Of(Job job, Drawing drawing, CutRequest request, ToolPath? path, string jobFile)
    {
        if (CutterDoubts.Of(job.Part, request, jobFile) is { } doubt)
        {
            return Outcome<CutterLoads>.Refuse(doubt);
        }

        LoadGathering loads = new(job.Part.ThicknessMm, job.Part.Shape.Outline.Bounds.Centre);
        var anyCut = false;
        IReadOnlyList<Finding> findings = [];
        foreach (var operation in request.Operations)
        {
            anyCut |= OperationLoads.Add(operation, request.Cutter, drawing, job.Part, request.LowestTipMm, loads);
        }

        if (path is not null && request.Program is not null)
        {
            anyCut = true;
            // The highest pods are high enough for the cuts, or none are.
            var height = job.Shop.Pods.Where(p => p.Stock > 0).Select(p => p.HeightMm).DefaultIfEmpty(0).Max();
            var setting = Heights.Setting(request, height, job.Part.ThicknessMm);
            findings = ProgramLoads.Add(path, setting, request, job.Part, Blank(drawing, job.Part, request, setting), loads);
        }

        if (!anyCut)
        {
            AssumeEdges(job.Part, drawing, request, loads);
        }

        Say(job.Part, request, loads);
        var done = loads.Done() with { AreAssumed = !anyCut };
        return Outcome<CutterLoads>.Of(done, anyCut && done.Points.IsEmpty ? [.. findings, NothingCut(path, jobFile)] : findings);
    }

    // Then there is nothing to hold against, which is more often a slip than meant.
    private static Finding NothingCut(ToolPath? path, string jobFile)
    {
        Place place = path is null ? new Place.InJson(jobFile, "$.cuts") : new Place.InFile(path.FileName);
        return new(
            "nothing-cut", Severity.Warning, FindingKind.Request,
            "none of the stated cuts puts a force on the part, so that how it is held is not computed.", place,
            "Check where the program's zero lies (offsetMm, zZero), its tools, and the lines of the operations.");
    }

    // A job that names no cut is still cut out of its blank.
    private static void AssumeEdges(Part part, Drawing drawing, CutRequest request, LoadGathering loads)
    {
        var diameter = request.Cutter?.DiameterMm ?? CutterCut.UsualDiameterMm;
        CutOperation outline = new(CutKind.ThroughProfile, new CutLines.Outline(), "assumed")
        {
            Name = "outline",
            Side = CutSide.Outside,
            ToolDiameterMm = diameter,
        };
        OperationLoads.Add(outline, request.Cutter, drawing, part, request.LowestTipMm, loads);
        if (!part.Shape.Holes.IsEmpty)
        {
            OperationLoads.Add(
                outline with { Name = "holes", Lines = new CutLines.Holes(), Side = CutSide.Inside }, request.Cutter, drawing, part, request.LowestTipMm, loads);
        }

        loads.Assume(string.Create(
            CultureInfo.InvariantCulture, $"The job names no cut: outline and holes are taken to be cut with a {diameter:0.##} mm cutter."));
    }

    private static Region Blank(Drawing drawing, Part part, CutRequest request, ProgramSetting setting)
    {
        var outline = Region.Inside(part.Shape.Outline);
        if (request.Blank is { Layer: { } layer })
        {
            return Region.UnionOf(drawing.Rings.Where(r => LayerRoles.Matches(layer, r.Layer)).Select(r => Region.Inside(r.Ring)).Append(outline));
        }

        return outline.Grow(request.Blank?.GrownByMm ?? setting.Tools.Values.Select(t => t.DiameterMm).DefaultIfEmpty(0).Max());
    }

    private static void Say(Part part, CutRequest request, LoadGathering loads)
    {
        var isGiven = request.Cutter?.TangentialN is not null
            && request.Operations.All(o => o.Cutter?.CuttingForceNPerMm2 is null);
        if (!isGiven && request.Cutter?.CuttingForceNPerMm2 is null)
        {
            loads.Assume("Cutting forces are worked out from the wood's density at the upper end of a wide band: force follows density loosely (r = .61 over nine species), and dull tools need more.");
            loads.Assume("Across the grain cutting takes up to three times the force along it; the force across a tooth's motion is up to 0.6 of that along it pushing, 0.3 pulling (from memory).");
        }

        foreach (var sentence in part.Wood.Assumptions)
        {
            loads.Assume(sentence);
        }
    }
}

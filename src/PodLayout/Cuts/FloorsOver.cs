using System.Collections.Immutable;
using PodLayout.Findings;
using PodLayout.Floors;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Programs;
using PodLayout.Reading;

namespace PodLayout.Cuts;

/// <summary>What cuts leave over the pods: floors that do not bear their vacuum, and how much of the part's mass is gone.</summary>
/// <param name="Floors">The floors that some kind of pod keeps off.</param>
/// <param name="CutAway">What is gone of the part.</param>
/// <param name="Part">The part.</param>
/// <param name="Pods">The kinds of pod in stock.</param>
/// <param name="Limits">What the vacuum may do.</param>
internal sealed record FloorsOver(
    ImmutableArray<WeakFloor> Floors, ImmutableArray<CutAway> CutAway, Part Part, ImmutableArray<string> Pods, FloorLimits Limits)
{
    // The lines of a program that a floor comes from are looked for among moves this much higher at most, mm.
    private const double SourceRoomMm = 0.05;

    // So many floors have their own lines looked for.
    private const int MostSourced = 24;

    /// <summary>From all that is cut.</summary>
    /// <param name="job">The job, with its loose pieces.</param>
    /// <param name="drawing">Its drawing.</param>
    /// <param name="request">What it says of cuts.</param>
    /// <param name="path">Its program, read; null when it names none.</param>
    /// <param name="setting">How the program stands to the part.</param>
    /// <param name="hazards">What is cut through, and what lies in the underside.</param>
    public static FloorsOver Of(
        Job job, Drawing drawing, CutRequest request, ToolPath? path, ProgramSetting setting, IReadOnlyList<Hazard> hazards)
    {
        var (shape, thickness) = (job.Part.Shape, job.Part.ThicknessMm);
        var weak = new WeakFloors(job, request.FloorLimits);
        var wood = Wood(shape);
        List<ThinnedArea> fromFace =
        [
            .. LeftWood.ByOperation(drawing, shape, request),
            .. path is null ? [] : LeftWood.ByProgram(path, request, setting, Math.Min(weak.NeededMm, thickness), wood),
        ];
        var underside = LeftWood.InUnderside(drawing, shape, request, thickness);
        var through = Region.UnionOf(hazards.Where(h => h.KeepsBodiesOff).Select(h => h.Shown.Near(wood.Bounds)));
        var cutAway = CutAways.Of(shape, thickness, fromFace, through, underside.Select(u => (u.Area, u.DepthMm)));
        var floors = weak.Of([.. fromFace, .. LeftWood.AboveUnderside(fromFace, underside, thickness)], wood.Minus(through));
        return new([.. floors.Select((f, i) => path is null || i >= MostSourced ? f : Sourced(f, path, request, setting))], cutAway, job.Part, [.. weak.Pods], request.FloorLimits);
    }

    /// <summary>Of a part that nothing is cut of but its edges.</summary>
    public static FloorsOver Of(Job job, CutRequest request, IReadOnlyList<ThinnedArea> areas, ImmutableArray<CutAway> cutAway)
    {
        var weak = new WeakFloors(job, request.FloorLimits);
        return new(weak.Of(areas, Wood(job.Part.Shape)), cutAway, job.Part, [.. weak.Pods], request.FloorLimits);
    }

    /// <summary>The floors, as they are told.</summary>
    public IEnumerable<Finding> Told(string jobFile) => FloorFindings.Tell(Floors, Pods, Part, Limits, jobFile);

    private static Region Wood(PartShape shape) => Region.UnionOf(
        [Region.Inside(shape.Outline, shape.Holes), .. shape.Held.Select(p => Region.Inside(p.Outline, p.Holes))]);

    private static WeakFloor Sourced(WeakFloor floor, ToolPath path, CutRequest request, ProgramSetting setting)
    {
        if (floor.Name != ThinFloors.CutOfProgram)
        {
            return floor;
        }

        var upTo = request with { ThinFloorMm = floor.LeftMm + SourceRoomMm };
        var lines = (from number in path.Tools
                     where setting.Tools.ContainsKey(number)
                     let found = ThinFloors.Lines(path, upTo, setting, setting.Tools[number], floor.Area)
                     where found is not null
                     select ProgramHazards.Source(path, found.Value.First, found.Value.Last, number)).FirstOrDefault();
        return lines is null ? floor : floor with { Source = lines };
    }
}

using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Programs;
using PodLayout.Reading;

namespace PodLayout.Cuts;

/// <summary>Where cuts from the face leave little wood: by operation, and by the program's own depths.</summary>
public static class ThinFloors
{
    // Narrower than this, or smaller, is what two passes leave between them by rounding, mm and mm².
    private const double NarrowestMm = 1;
    private const double SmallestMm2 = 25;

    // Points at the very edge of the part are the edge's, mm.
    private const double OffEdgeMm = 0.05;

    /// <summary>The thin floors of a part.</summary>
    /// <param name="drawing">The drawing.</param>
    /// <param name="shape">The part made of it.</param>
    /// <param name="request">What the job says.</param>
    /// <param name="path">Its program, read; null when it names none.</param>
    /// <param name="setting">How the program stands to the part.</param>
    /// <param name="hazards">What is cut through: no floor is left there.</param>
    public static ImmutableArray<ThinFloor> Of(
        Drawing drawing, PartShape shape, CutRequest request, ToolPath? path, ProgramSetting setting, IReadOnlyList<Hazard> hazards)
    {
        if (request.ThinFloorMm <= request.LowestTipMm)
        {
            return [];
        }

        var part = Region.Inside(shape.Outline, shape.Holes).Shrink(OffEdgeMm);
        var wood = part.IsEmpty ? part
            : part.Minus(Region.UnionOf(hazards.Where(h => h.KeepsBodiesOff).Select(h => h.Shown.Near(part.Bounds))));
        return
        [
            .. ByOperation(drawing, shape, request).Concat(path is null ? [] : ByProgram(path, request, setting))
                .Select(f => f with { Area = Within(f.Area, wood) }).Where(f => !f.Area.IsEmpty),
        ];
    }

    /// <summary>A note for each floor.</summary>
    public static IEnumerable<Finding> Tell(IEnumerable<ThinFloor> floors, double spanMm, string jobFile) => floors.Select(f => new Finding(
        "thin-floor", Severity.Note, FindingKind.Request,
        string.Create(CultureInfo.InvariantCulture, $"{f.Name} ({f.Source}) leaves {f.LeastMm:0.##} mm of wood over {f.Area.AreaMm2 / 100:0.#} cm2 about ({f.Area.Bounds.Centre.X:0.#}, {f.Area.Bounds.Centre.Y:0.#}): every point of it is to have a pod within {spanMm:0.##} mm."),
        new Place.InJson(jobFile, "$.thinFloorMm")));

    private static IEnumerable<ThinFloor> ByOperation(Drawing drawing, PartShape shape, CutRequest request) =>
        from operation in request.Operations
        where operation.Kind is CutKind.PocketFromFace or CutKind.ThroughProfile or CutKind.Drill
            && operation.LowestTipMm >= request.LowestTipMm && operation.LowestTipMm < request.ThinFloorMm
        let lines = CutPaths.Lines(operation.Lines, drawing, shape)
        where lines.Count > 0
        select new ThinFloor(
            OperationHazards.NameOf(operation), OperationLines.InWords(operation.Lines), OperationHazards.Area(operation, lines), operation.LowestTipMm);

    // The tool's swept area at heights below the least thickness; what goes through is taken off afterwards.
    private static IEnumerable<ThinFloor> ByProgram(ToolPath path, CutRequest request, ProgramSetting setting) =>
        from cut in Sweeping.Of(path, setting with { LowestTipMm = request.ThinFloorMm }, request.LowestTipMm).Value ?? []
        select new ThinFloor(
            "cut of the program", ProgramHazards.Source(path, cut), cut.Swept, Math.Max(cut.LowestTipMm, request.LowestTipMm));

    private static Region Within(Region area, Region wood)
    {
        if (wood.IsEmpty)
        {
            return Region.Empty;
        }

        var near = area.Near(wood.Bounds);
        var simple = near.IsIntricate ? near.SimplifiedOutward(Tolerances.ContactMm) : near;
        var pieces = simple.Intersect(wood).Pieces.Where(p => p.AreaMm2 >= SmallestMm2 && !p.Shrink(NarrowestMm / 2).IsEmpty);
        return Region.UnionOf(pieces).Rounded(Tolerances.CoordinateMm);
    }
}

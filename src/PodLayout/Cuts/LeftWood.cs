using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Programs;
using PodLayout.Reading;

namespace PodLayout.Cuts;

/// <summary>Where cuts leave wood thinner than the part: by operation, and at the depths of the program.</summary>
public static class LeftWood
{
    // Depths of a program that are told apart: so many among the floors that matter, so many above them for the part's mass. More are
    // taken together, each for the deepest of its group.
    private const int FloorLevels = 6;
    private const int MassLevels = 3;

    // Sloped moves and formed tools cut between two depths too: so many steps of height are put in.
    private const int SlopeSteps = 4;

    // Heights nearer than this are one, mm.
    private const double HeightStepMm = 0.01;

    /// <summary>The areas, as far as operations say so. What goes through is none, and what leaves the whole thickness is none.</summary>
    /// <param name="drawing">The drawing.</param>
    /// <param name="shape">The part made of it.</param>
    /// <param name="request">What the job says.</param>
    public static ImmutableArray<ThinnedArea> ByOperation(Drawing drawing, PartShape shape, CutRequest request) =>
    [
        .. from operation in request.Operations
           where operation.Kind is CutKind.PocketFromFace or CutKind.ThroughProfile or CutKind.Drill && operation.LowestTipMm >= request.LowestTipMm
           let lines = CutPaths.Lines(operation.Lines, drawing, shape)
           where lines.Count > 0
           select new ThinnedArea(
               OperationHazards.NameOf(operation), OperationLines.InWords(operation.Lines),
               OperationHazards.Area(operation, lines, isCoarse: true), operation.LowestTipMm, operation.Path),
    ];

    /// <summary>The areas that the program's own depths leave.</summary>
    /// <param name="path">The program.</param>
    /// <param name="request">What the job says.</param>
    /// <param name="setting">How the program stands to the part.</param>
    /// <param name="floorMm">Floors thinner than this matter by themselves, mm.</param>
    /// <param name="wood">The wood that is looked at.</param>
    public static ImmutableArray<ThinnedArea> ByProgram(ToolPath path, CutRequest request, ProgramSetting setting, double floorMm, Region wood)
    {
        var levels = Levels(path, request, setting, floorMm);
        if (levels.Count == 0 || wood.IsEmpty)
        {
            return [];
        }

        path = ThinFloors.WithoutDrilled(path, request, setting);
        var flanks = Region.UnionOf(ThinFloors.Flanks(path, request, setting, wood.Bounds));
        var areas = ImmutableArray.CreateBuilder<ThinnedArea>();
        var below = request.LowestTipMm;
        foreach (var (upToMm, leftMm) in levels)
        {
            areas.AddRange(
                from cut in Sweeping.Of(path, setting with { LowestTipMm = upToMm }, below).Value ?? []
                let near = cut.Swept.Near(wood.Bounds)
                let area = near.IsIntricate ? near.SimplifiedOutward(Tolerances.ContactMm) : near
                select new ThinnedArea(
                    ThinFloors.CutOfProgram, ProgramHazards.Source(path, cut), flanks.IsEmpty ? area : area.Minus(flanks), leftMm, "$.program"));
            below = upToMm;
        }

        return areas.ToImmutable();
    }

    /// <summary>Grooves and pockets in the underside, with their depth; where none is stated half of the part's thickness.</summary>
    public static ImmutableArray<(CutOperation Operation, Region Area, double DepthMm)> InUnderside(
        Drawing drawing, PartShape shape, CutRequest request, double thicknessMm) =>
    [
        .. from operation in request.Operations
           where operation.Kind is CutKind.GrooveInUnderside or CutKind.PocketInUnderside
           let lines = CutPaths.Lines(operation.Lines, drawing, shape)
           where lines.Count > 0
           select (operation, OperationHazards.Area(operation, lines, isCoarse: true), operation.DepthMm ?? thicknessMm / 2),
    ];

    /// <summary>What is left above grooves and pockets in the underside, and where a cut from the face lies over one of them.</summary>
    /// <param name="fromFace">What cuts from the face leave.</param>
    /// <param name="underside">The grooves and pockets; those without a stated depth are passed over.</param>
    /// <param name="thicknessMm">Thickness of the part.</param>
    public static IEnumerable<ThinnedArea> AboveUnderside(
        IReadOnlyList<ThinnedArea> fromFace, IEnumerable<(CutOperation Operation, Region Area, double DepthMm)> underside, double thicknessMm) =>
        from groove in underside
        where groove.Operation.DepthMm is not null
        let name = OperationHazards.NameOf(groove.Operation)
        from area in fromFace.Prepend(new("", "", groove.Area, thicknessMm, ""))
        let both = area.Area.Near(groove.Area.IsEmpty ? default : groove.Area.Bounds).Intersect(groove.Area)
        where !both.IsEmpty
        select new ThinnedArea(
            area.Name.Length == 0 ? name : $"{area.Name} over {name}", area.Name.Length == 0 ? OperationLines.InWords(groove.Operation.Lines) : area.Source,
            both, Math.Max(0, area.LeftMm - groove.DepthMm), groove.Operation.Path);

    // Each height up to which the tools are followed, and what they leave there at least.
    private static List<(double UpToMm, double LeftMm)> Levels(ToolPath path, CutRequest request, ProgramSetting setting, double floorMm)
    {
        SortedSet<double> heights = [];
        var slopes = false;
        foreach (ref readonly var stretch in path.Stretches.AsSpan())
        {
            var left = stretch.LowestZMm - setting.UndersideZMm;
            if (left < setting.ThicknessMm - HeightStepMm && stretch.HighestEndMm - setting.UndersideZMm >= request.LowestTipMm)
            {
                if (left >= request.LowestTipMm)
                {
                    heights.Add(Math.Floor(left / HeightStepMm + 1e-6) * HeightStepMm);
                }

                slopes |= left < floorMm && (setting.Tools.TryGetValue(stretch.ToolNumber, out var tool) && tool.Form is not CutterForm.Flat
                    || (stretch.From.ZMm != stretch.To.ZMm && (stretch.From.XMm != stretch.To.XMm || stretch.From.YMm != stretch.To.YMm)));
            }
        }

        List<(double UpToMm, double LeftMm)> levels =
        [
            .. Grouped([.. heights.Where(h => h < floorMm)], FloorLevels), .. Grouped([.. heights.Where(h => h >= floorMm)], MassLevels),
        ];
        // Where depths are many their groups lie close enough already.
        for (var step = 1; slopes && heights.Count < FloorLevels && step <= SlopeSteps; step++)
        {
            var upTo = request.LowestTipMm + (floorMm - request.LowestTipMm) * step / SlopeSteps;
            levels.Add((upTo, levels.Where(l => l.UpToMm <= upTo).Select(l => l.UpToMm).Append(request.LowestTipMm).Max()));
        }

        return [.. levels.Where(l => l.UpToMm > request.LowestTipMm).OrderBy(l => l.UpToMm)];
    }

    private static IEnumerable<(double UpToMm, double LeftMm)> Grouped(double[] heights, int most) =>
        from number in Enumerable.Range(0, Math.Min(most, heights.Length))
        let first = number * heights.Length / Math.Min(most, heights.Length)
        let last = (number + 1) * heights.Length / Math.Min(most, heights.Length) - 1
        select (heights[last] + HeightStepMm, heights[first]);
}

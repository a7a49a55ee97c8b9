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

    // So many floors of a tool are told one by one.
    private const int MostApart = 12;

    internal const string CutOfProgram = "cut of the program";

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
            .. ByOperation(drawing, shape, request).Select(f => f with { Area = Within(f.Area, wood) }).Where(f => !f.Area.IsEmpty),
            .. path is null ? [] : ByProgram(path, request, setting, wood),
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
            OperationHazards.NameOf(operation), OperationLines.InWords(operation.Lines), OperationHazards.Area(operation, lines, isCoarse: true), operation.LowestTipMm);

    // The tool's swept area at heights below the least thickness, less what goes through: each floor by itself, the largest
    // first, and what is left of many small ones together.
    private static IEnumerable<ThinFloor> ByProgram(ToolPath path, CutRequest request, ProgramSetting setting, Region wood)
    {
        path = WithoutDrilled(path, request, setting);
        wood = wood.IsEmpty ? wood : wood.Minus(Region.UnionOf(Flanks(path, request, setting, wood.Bounds)));
        foreach (var cut in Sweeping.Of(path, setting with { LowestTipMm = request.ThinFloorMm }, request.LowestTipMm).Value ?? [])
        {
            var pieces = Within(cut.Swept, wood).Pieces.OrderByDescending(p => p.AreaMm2).ToList();
            foreach (var piece in pieces.Take(MostApart))
            {
                yield return Made(path, request, setting, cut, piece);
            }

            if (pieces.Count > MostApart)
            {
                yield return new(
                    CutOfProgram, ProgramHazards.Source(path, cut), Region.UnionOf(pieces.Skip(MostApart)), Math.Max(cut.LowestTipMm, request.LowestTipMm));
            }
        }
    }

    // A drill's point that goes through leaves an edge around its hole and no floor. Programs may drill thousands.
    internal static ToolPath WithoutDrilled(ToolPath path, CutRequest request, ProgramSetting setting)
    {
        var through = path.Stretches.Where(s => IsDrilling(s) && s.LowestZMm - setting.UndersideZMm < request.LowestTipMm).Select(Place).ToHashSet();
        return through.Count == 0 ? path : path with { Stretches = [.. path.Stretches.Where(s => !IsDrilling(s) || !through.Contains(Place(s)))] };

        bool IsDrilling(Stretch s) => s.TurnRad == 0 && s.From.XMm == s.To.XMm && s.From.YMm == s.To.YMm
            && setting.Tools.TryGetValue(s.ToolNumber, out var tool) && tool.Form is not CutterForm.Flat;

        static (int Tool, double X, double Y) Place(Stretch s) => (s.ToolNumber, s.To.XMm, s.To.YMm);
    }

    // The same beside a way along which a pointed or rounded tool goes through.
    internal static IEnumerable<Region> Flanks(ToolPath path, CutRequest request, ProgramSetting setting, Box2 box)
    {
        var formed = path.Tools.Where(t => setting.Tools.TryGetValue(t, out var tool) && tool.Form is not CutterForm.Flat).ToHashSet();
        if (formed.Count == 0)
        {
            return [];
        }

        var flat = setting with
        {
            Tools = setting.Tools.SetItems(formed.Select(t => KeyValuePair.Create(t, setting.Tools[t] with { Form = new CutterForm.Flat() }))),
            LowestTipMm = request.LowestTipMm,
        };
        return (Sweeping.Of(path with { Stretches = [.. path.Stretches.Where(s => formed.Contains(s.ToolNumber))] }, flat).Value ?? []).Select(c => c.Swept.Near(box));
    }

    private static ThinFloor Made(ToolPath path, CutRequest request, ProgramSetting setting, ToolCut cut, Region piece) =>
        Lines(path, request, setting, cut.Tool, piece) is var (first, last, least)
            ? new(
                CutOfProgram, ProgramHazards.Source(path, cut with { FirstLine = first, LastLine = last }), piece,
                Math.Max(least, request.LowestTipMm))
            : new(CutOfProgram, ProgramHazards.Source(path, cut), piece, Math.Max(cut.LowestTipMm, request.LowestTipMm));

    /// <summary>
    /// The lines that a floor comes from, and the least that they leave: moves of the tool within its radius of it, lower than a floor
    /// may be thick; null when there are none.
    /// </summary>
    internal static (int First, int Last, double LeastMm)? Lines(ToolPath path, CutRequest request, ProgramSetting setting, Tool tool, Region piece)
    {
        // Asked point by point: a piece between two turns of a helix has hundreds of hollow corners, which are slow to grow.
        var near = new RegionIndex(piece);
        var box = piece.Bounds.Grow(tool.DiameterMm / 2);
        int first = int.MaxValue, last = 0;
        var least = double.PositiveInfinity;
        foreach (ref readonly var stretch in path.Stretches.AsSpan())
        {
            var left = stretch.LowestZMm - setting.UndersideZMm;
            if (stretch.ToolNumber == tool.Number && left < request.ThinFloorMm
                && stretch.HighestEndMm - setting.UndersideZMm >= request.LowestTipMm && Touches(stretch))
            {
                (first, last, least) = (Math.Min(first, stretch.Line), Math.Max(last, stretch.Line), Math.Min(least, left));
            }
        }

        return last == 0 ? null : (first, last, least);

        bool Touches(in Stretch stretch)
        {
            var (low, high) = stretch.Extent;
            Point2 from = new Point2(low.XMm, low.YMm) + setting.Offset, to = new Point2(high.XMm, high.YMm) + setting.Offset;
            if (!box.Touches(new(from.X, from.Y, to.X, to.Y)))
            {
                return false;
            }

            var steps = Math.Max(1, (int)Math.Ceiling(stretch.LengthMm / tool.DiameterMm));
            for (var i = 0; i <= steps; i++)
            {
                var at = stretch.At((double)i / steps);
                if (near.IsWithin(new Point2(at.XMm, at.YMm) + setting.Offset, tool.DiameterMm / 2))
                {
                    return true;
                }
            }

            return false;
        }
    }

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

using System.Globalization;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Reading;

namespace PodLayout.Cuts;

/// <summary>What the operations of a job keep pods off.</summary>
public static class OperationHazards
{
    /// <summary>The hazards of all operations that are real: a skin or floor that is left makes none.</summary>
    /// <param name="drawing">The drawing.</param>
    /// <param name="shape">The part made of it.</param>
    /// <param name="request">What the job says.</param>
    /// <param name="jobFile">The job file, for messages.</param>
    public static Outcome<IReadOnlyList<Hazard>> Of(Drawing drawing, PartShape shape, CutRequest request, string jobFile)
    {
        List<Finding> findings = [];
        List<Hazard> hazards = [];
        foreach (var operation in request.Operations)
        {
            var lines = CutPaths.Lines(operation.Lines, drawing, shape);
            if (lines.Count == 0)
            {
                findings.Add(Say(Severity.Refused, operation, jobFile, "cut-without-lines", $"found no line {OperationLines.InWords(operation.Lines)} for this operation{Nearest(operation, drawing)}.", "Correct the layer's name, or draw the line."));
                continue;
            }

            if (lines.Any(l => !l.IsClosed) && NeedsClosed(operation))
            {
                findings.Add(Say(Severity.Refused, operation, jobFile, "cut-open", $"found a line {OperationLines.InWords(operation.Lines)} that does not close; this operation needs closed lines.", "Close it, or let the tool run on the line."));
                continue;
            }

            var isReal = operation.LowestTipMm < request.LowestTipMm;
            Tell(operation, isReal, jobFile, findings);
            if (Hazard(operation, lines, isReal) is { } hazard && !hazard.Area.IsEmpty)
            {
                hazards.Add(hazard);
            }
            else if (isReal && operation.Kind != CutKind.PocketFromFace)
            {
                findings.Add(Say(Severity.Refused, operation, jobFile, "cut-empty", TooWide(operation, lines), "Check its diameter and its side."));
            }
        }

        return findings.Exists(f => f.Severity == Severity.Refused)
            ? Outcome<IReadOnlyList<Hazard>>.Refuse(findings)
            : Outcome<IReadOnlyList<Hazard>>.Of(hazards, findings);
    }

    private static string Nearest(CutOperation operation, Drawing drawing) =>
        operation.Lines is not CutLines.OfLayer layer || drawing.Layers.Any(l => LayerRoles.Matches(layer.Name, l.Name)) ? ""
            : $"; the drawing has no such layer, the nearest names it has: {string.Join(", ", NearestName.InOrder(layer.Name, drawing.Layers.Select(l => l.Name), 3))}";

    // The largest of the lines, which has the most room.
    private static string TooWide(CutOperation operation, IReadOnlyList<CutLine> lines)
    {
        var box = lines.Select(l => new Ring(l.Points).Bounds).MaxBy(b => Math.Min(b.Width, b.Height));
        return Text($"the tool of {operation.ToolDiameterMm:0.###} mm does not fit into the line, which is {box.Width:0.###} x {box.Height:0.###} mm{(lines.Count > 1 ? " at its largest" : "")}.");
    }

    private static bool NeedsClosed(CutOperation o) => o.Kind switch
    {
        CutKind.GrooveInUnderside or CutKind.EdgeProfile => false,
        CutKind.ThroughProfile => o.Side != CutSide.On,
        _ => true,
    };

    private static void Tell(CutOperation operation, bool isReal, string jobFile, List<Finding> findings)
    {
        if (operation.Tabs > 0 && isReal)
        {
            findings.Add(Say(Severity.Note, operation, jobFile, "tabs-stated", Text($"{operation.Tabs} holding tabs are stated; the cut is kept clear of as if there were none, since the tool is below the underside between them."), null));
        }

        if (!isReal && operation.Kind is CutKind.ThroughProfile or CutKind.Drill)
        {
            findings.Add(Say(Severity.Note, operation, jobFile, "cut-not-through", Text($"{operation.LowestTipMm:0.##} mm of wood are stated to be left; it is taken as not cutting through."), null));
        }
        else if (isReal && operation.Kind == CutKind.PocketFromFace)
        {
            findings.Add(Say(Severity.Warning, operation, jobFile, "floor-thin", Text($"a floor of {operation.LowestTipMm:0.##} mm is no floor; the pocket is kept clear of like a cut through the part."), "Leave more, or make it a through cut."));
        }
    }

    private static Hazard? Hazard(CutOperation operation, IReadOnlyList<CutLine> lines, bool isReal)
    {
        var cutsBelow = operation.Kind is CutKind.ThroughProfile or CutKind.Drill or CutKind.PocketFromFace or CutKind.EdgeProfile;
        return cutsBelow && !isReal ? null
            : new(NameOf(operation), OperationLines.InWords(operation.Lines), Area(operation, lines), cutsBelow, true);
    }

    /// <summary>What an operation cuts, seen from above.</summary>
    /// <param name="operation">The operation.</param>
    /// <param name="lines">Its lines.</param>
    /// <param name="isCoarse">Whether it may be larger by up to two hundredths of a millimetre, to be quicker.</param>
    internal static Region Area(CutOperation operation, IReadOnlyList<CutLine> lines, bool isCoarse = false)
    {
        var radius = operation.ToolDiameterMm / 2;
        var insides = lines.Where(l => l.IsClosed).Select(l => Region.Inside(new Ring(l.Points)));
        return operation.Kind switch
        {
            CutKind.ThroughProfile => Profiles(lines, operation.Side, radius, isCoarse),
            CutKind.Drill when operation.DiameterMm is { } diameter => Region.UnionOf(
                lines.Select(l => Region.AlongPath([new Ring(l.Points).Bounds.Centre], diameter / 2))),
            CutKind.GrooveInUnderside when radius > 0 => Region.UnionOf(lines.Select(l => Along(l, radius, isCoarse))),
            // The tool runs along the edge: its own width beyond it, and under the part as far as it reaches.
            CutKind.EdgeProfile => Region.UnionOf(lines.Select(l => Along(l, Math.Max(operation.ToolDiameterMm, operation.ReachMm), isCoarse))),
            _ => Region.UnionOf(insides),
        };
    }

    /// <summary>What the shop calls an operation, or its kind.</summary>
    internal static string NameOf(CutOperation operation) => operation.Name ?? CutPaths.NameOf(operation.Kind);

    private static Region Profiles(IReadOnlyList<CutLine> lines, CutSide side, double radius, bool isCoarse) =>
        Region.UnionOf(CutPaths.Centres(lines, side, radius).Select(centre => Along(centre.Line, radius, isCoarse)));

    private static Region Along(CutLine line, double radius, bool isCoarse) =>
        Region.AlongPath(line.IsClosed ? [.. line.Points, line.Points[0]] : line.Points, radius, isCoarse);

    private static Finding Say(Severity severity, CutOperation operation, string jobFile, string code, string message, string? remedy) =>
        new(code, severity, FindingKind.Request, message, new Place.InJson(jobFile, operation.Path), remedy);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

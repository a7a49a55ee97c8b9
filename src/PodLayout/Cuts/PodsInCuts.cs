using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Programs;
using PodLayout.Shops;

namespace PodLayout.Cuts;

/// <summary>Whether the pods of a layout stand clear of what is cut below the underside.</summary>
public static class PodsInCuts
{
    // Less than this is rounding, mm².
    private const double NothingMm2 = 1e-3;

    /// <summary>A refusal for each pod that stands in a cut or within the clearance of one, naming the cut, its line and tool.</summary>
    /// <param name="job">The job with its hazards.</param>
    /// <param name="layout">The layout.</param>
    /// <param name="path">The program, to name the line; null when there is none.</param>
    /// <param name="request">What the job says of cuts.</param>
    public static ImmutableArray<Finding> Of(Job job, Layout layout, ToolPath? path, CutRequest request)
    {
        var findings = ImmutableArray.CreateBuilder<Finding>();
        var turn = Turn.FromDegrees(layout.Placement.AngleDeg);
        var reached = job.Part.Shape.Hazards.Where(h => h.KeepsBodiesOff)
            .Select(h => (Hazard: h, Cut: h.Area.Laid(turn, layout.Placement.ZeroOnBoard)))
            .Select(h => (h.Hazard, h.Cut, Near: h.Cut.Grow(job.Margins.CutClearanceMm - Tolerances.ContactMm))).ToList();
        for (var i = 0; i < layout.Pods.Length; i++)
        {
            var pod = layout.Pods[i];
            var body = Body(pod);
            foreach (var (hazard, cut, near) in reached)
            {
                var within = body.Intersect(near);
                if (within.AreaMm2 > NothingMm2)
                {
                    var overlap = body.Intersect(cut);
                    var worst = (overlap.IsEmpty ? within : overlap).PointInside()!.Value;
                    var inDrawing = turn.Inverse.Apply(worst - layout.Placement.ZeroOnBoard);
                    var line = hazard.TipPaths.IsEmpty || path is null ? null
                        : Sweeping.Nearest(path, Heights.Setting(request, pod.Type.HeightMm, job.Part.ThicknessMm), inDrawing)?.Stretch;
                    findings.Add(Say(job, i, pod, hazard.Name, hazard.Source, overlap.AreaMm2, line, path));
                }
            }
        }

        return findings.ToImmutable();
    }

    private static Region Body(PlacedPod pod) => pod.Type.Footprint is PodFootprint.Round round
        ? Region.AlongPath([pod.Centre], round.DiameterMm / 2) : Region.Inside(pod.BodyBox);

    private static Finding Say(
        Job job, int index, PlacedPod pod, string name, string source, double overlapMm2, Stretch? line, ToolPath? path)
    {
        var how = overlapMm2 > NothingMm2
            ? Text($"overlaps it by {overlapMm2:0.#} mm2") : Text($"comes nearer to it than {job.Margins.CutClearanceMm:0.##} mm");
        var where = line is { } l ? Text($"{path!.FileName} line {l.Line}, tool {l.ToolNumber}") : source;
        Place? place = line is { } known ? new Place.InFile(path!.FileName, known.Line) : null;
        return new(
            "pod-in-cut", Severity.Refused, FindingKind.NoLayout,
            Text($"pod P{index + 1} ({pod.Type.Name}) at X {pod.Centre.X:0.#}, Y {pod.Centre.Y:0.#} {how}: {name} ({where})."),
            place, "Move the pod.");
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Reading;

namespace PodLayout.Cuts;

/// <summary>Edges of the part where a stated skin is really left, so that no tool comes through beside them.</summary>
public static class Skins
{
    // How near to an edge a cut below the underside must come to be a cut along it, mm; to a few hundredths.
    private const double BesideMm = 0.5;

    private const double NothingMm2 = 1e-3;

    /// <summary>
    /// The edges: 0 for the outline, 1.. for the holes. An edge counts when an operation along it leaves a skin and nothing else,
    /// neither another operation nor the program, goes below the underside beside it.
    /// </summary>
    /// <param name="drawing">The drawing.</param>
    /// <param name="shape">The part made of it.</param>
    /// <param name="request">What the job says.</param>
    /// <param name="hazards">What goes below the underside.</param>
    /// <param name="jobFile">The job file, for messages.</param>
    public static Outcome<IReadOnlyList<int>> Of(
        Drawing drawing, PartShape shape, CutRequest request, IReadOnlyList<Hazard> hazards, string jobFile)
    {
        List<Finding> findings = [];
        var skinned = new SortedSet<int>();
        foreach (var operation in request.Operations)
        {
            if (operation.Kind is not (CutKind.ThroughProfile or CutKind.Drill) || operation.LowestTipMm < request.LowestTipMm)
            {
                continue;
            }

            foreach (var edge in OperationLines.EdgesAlong(operation.Lines, drawing, shape))
            {
                var ring = edge == 0 ? shape.Outline : shape.Holes[edge - 1];
                var beside = Region.AlongPath([.. ring.Points, ring.Points[0]], BesideMm, isCoarse: true);
                if (hazards.FirstOrDefault(h => h.KeepsBodiesOff && h.Shown.Intersect(beside).AreaMm2 > NothingMm2) is { } through)
                {
                    findings.Add(new(
                        "skin-not-left", Severity.Warning, FindingKind.Request,
                        $"a skin is stated here, but {through.Name} ({through.Source}) goes below the underside beside the same edge; pods keep clear of the edge.",
                        new Place.InJson(jobFile, operation.Path), "Correct the skin, or the cut."));
                    continue;
                }

                skinned.Add(edge);
                findings.Add(new(
                    "skin-left", Severity.Note, FindingKind.Request,
                    $"bodies of pods may pass {(edge == 0 ? "the outline" : "the hole's edge")}, where a skin is left; seals keep their margin from it.",
                    new Place.InJson(jobFile, operation.Path)));
            }
        }

        return Outcome<IReadOnlyList<int>>.Of([.. skinned], findings);
    }
}

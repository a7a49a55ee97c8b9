using PodLayout.Cuts;
using PodLayout.Findings;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Programs;
using PodLayout.Reading;

namespace PodLayout.Forces;

/// <summary>Puts into a job what is cut of its part, and what its cutters do to the part meanwhile.</summary>
public static class Machining
{
    // A tool's middle within its radius and this of a piece touches it, mm: what simplifying the piece and gathering loads are off.
    private const double BesideMm = 0.5;

    /// <summary>The job with its cuts and its loads.</summary>
    /// <param name="job">The job.</param>
    /// <param name="drawing">Its drawing.</param>
    /// <param name="request">What it says of cuts.</param>
    /// <param name="path">Its program, read; null when it names none.</param>
    /// <param name="jobFile">The job file, for messages.</param>
    public static Outcome<Job> Apply(Job job, Drawing drawing, CutRequest request, ToolPath? path, string jobFile)
    {
        // Both follow the program from end to end, and neither needs the other: side by side, for the sake of the first layout.
        var loads = Task.Run(() => Loading.Of(job, drawing, request, path, jobFile));
        return Cutting.Apply(job, drawing, request, path, jobFile).Then(cut => loads.GetAwaiter().GetResult().Then(
            found => Outcome<Job>.Of(cut with
            {
                Part = cut.Part with
                {
                    Loads = found with { Freeing = [] },
                    Shape = cut.Part.Shape with { Held = [.. cut.Part.Shape.Held.Select(p => p with { Loads = OnPiece(p, found) })] },
                },
            })));
    }

    // A piece comes loose only when the last layer beside it is cut: until then it hangs on the rest, and is held with it.
    private static CutterLoads OnPiece(HeldPiece piece, CutterLoads loads)
    {
        var wood = Region.Inside(piece.Outline, piece.Holes);
        var beside = loads.Freeing.GroupBy(f => f.RadiusMm).SelectMany(ofRadius =>
        {
            RegionIndex near = new(wood.Grow(ofRadius.Key + BesideMm));
            return ofRadius.Where(f => near.Contains(f.Load.OnPart)).Select(f => f.Load);
        });
        return loads with { Points = [.. beside.OrderBy(l => l.Pass).ThenBy(l => l.OnPart.Y).ThenBy(l => l.OnPart.X)], Freeing = [] };
    }
}

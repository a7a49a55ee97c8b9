using PodLayout.Cuts;
using PodLayout.Findings;
using PodLayout.Jobs;
using PodLayout.Programs;
using PodLayout.Reading;

namespace PodLayout.Forces;

/// <summary>Puts into a job what is cut of its part, and what its cutters do to the part meanwhile.</summary>
public static class Machining
{
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
            found => Outcome<Job>.Of(cut with { Part = cut.Part with { Loads = found } })));
    }
}

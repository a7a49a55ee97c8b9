using PodLayout.Findings;
using PodLayout.Forces;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Programs;
using PodLayout.Reading;
using PodLayout.Shops;

namespace PodLayout.Cli;

/// <summary>From the files that a job names to the whole job.</summary>
internal static class Drawings
{
    /// <summary>Reads the drawing, and the program where one is named.</summary>
    /// <param name="request">What is asked.</param>
    /// <param name="shop">The shop, read.</param>
    /// <param name="folder">Where paths in the job file start.</param>
    /// <param name="jobFile">The job file, for messages.</param>
    public static Outcome<Job> Job(JobRequest request, Shop shop, string folder, string jobFile)
    {
        var path = Path.Combine(folder, request.DrawingPath);
        var isTyped = path == jobFile;
        var name = isTyped ? Path.GetFileName(path) : InputFile.NameOf(request.DrawingPath);
        return InputFile.Read(path, isOfJob: !isTyped)
            .Then(content => DrawingReader.Read(name, content, request.Reading))
            .Then(drawing => PartShaping.From(drawing, request.Layers)
                .Then(shape => request.With(shape, shop)).Then(job => WithCuts(job, drawing, request.Cuts, folder, Path.GetFileName(jobFile))));
    }

    private static Outcome<Job> WithCuts(Job job, Drawing drawing, CutRequest cuts, string folder, string jobFile)
    {
        if (cuts.Program is not { } program)
        {
            return Machining.Apply(job, drawing, cuts, null, jobFile);
        }

        var path = Path.Combine(folder, program.FilePath);
        return InputFile.Read(path, isOfJob: true)
            .Then(content => ProgramReading.Read(InputFile.NameOf(program.FilePath), content, program.Options))
            .Then(read => Machining.Apply(job, drawing, cuts, read, jobFile));
    }
}

using PodLayout.Findings;
using PodLayout.Jobs;
using PodLayout.Parts;
using PodLayout.Reading;

namespace PodLayout.Cli;

/// <summary>From a drawing's file to the part's shape.</summary>
internal static class Drawings
{
    public static Outcome<PartShape> Part(JobRequest request, string path) => InputFile.Read(path)
        .Then(content => DrawingReader.Read(path, content, request.Reading))
        .Then(drawing => PartShaping.From(drawing, request.Layers));
}

using PodLayout.Findings;
using PodLayout.Jobs;
using PodLayout.Parts;

namespace PodLayout.Cli;

/// <summary>From a drawing's file to the part's shape.</summary>
internal static class Drawings
{
    public static Outcome<PartShape> Part(DrawingWishes wishes, string path) =>
        InputFile.Read(path).Then<PartShape>(_ => throw new NotSupportedException($"Drawings are not read yet ({wishes})."));
}

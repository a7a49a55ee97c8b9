using System.Text;
using PodLayout.Findings;
using PodLayout.Handover;
using PodLayout.Handover.Format;

namespace PodLayout.Cli;

/// <summary>A layout as it lies in its folder.</summary>
/// <param name="File">
/// What it holds. As plan wrote it the file says how the part is supported; once it has been changed that no longer holds, and is
/// left out.
/// </param>
/// <param name="Content">Its bytes.</param>
internal sealed record FiledLayout(LayoutFile File, byte[] Content)
{
    /// <summary>
    /// Reads it, after what a killed command left undone there has been done, and looks at the files beside it: those of another
    /// plan are refused.
    /// </summary>
    public static Outcome<FiledLayout> Read(string path)
    {
        // Where the folder cannot be mended its files tell of it.
        OutputFolder.Mend(Path.GetDirectoryName(path) ?? "");
        return InputFile.Read(path).Then(content => Of(path, content)).Then(filed =>
            PlanFiles.Beside(path, filed.File) is var beside && beside.Any(f => f.Severity == Severity.Refused)
                ? Outcome<FiledLayout>.Refuse(beside) : Outcome<FiledLayout>.Of(filed, beside));
    }

    private static Outcome<FiledLayout> Of(string path, byte[] content) => EditedLayout.Read(path, content).Then(edited =>
        LayoutJson.Read(path, Encoding.UTF8.GetString(content).TrimStart('\uFEFF')) is { Succeeded: true } asWritten
            ? Outcome<FiledLayout>.Of(new(asWritten.Value, content)) : Outcome<FiledLayout>.Of(new(edited, content)));
}

using PodLayout.Findings;

namespace PodLayout.JsonFiles;

/// <summary>Makes the refusals of one file, so that each check says only what is particular to it.</summary>
/// <param name="File">The file's name.</param>
internal sealed record FileRefusals(string File)
{
    /// <summary>Members that came from options, and so are not in the file.</summary>
    public System.Collections.Immutable.ImmutableArray<MemberOverride> Overrides { get; init; } = [];

    /// <summary>Members that stand in the file in inches: a check that speaks of <c>xMm</c> is sent to <c>xIn</c>.</summary>
    public System.Collections.Immutable.ImmutableHashSet<string> Inches { get; init; } = [];

    public Finding At(string code, string path, string message, string remedy, Severity severity = Severity.Refused) =>
        new(code, severity, FindingKind.Request, message, StrictReader.PlaceOf(File, Overrides, InchPaths.AsGiven(Inches, path)), remedy);
}

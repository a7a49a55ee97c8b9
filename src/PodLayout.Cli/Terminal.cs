using PodLayout.Findings;

namespace PodLayout.Cli;

/// <summary>Where a command speaks: results on one side, findings and progress on the other.</summary>
internal sealed record Terminal(TextWriter Out, TextWriter Error, bool ErrorIsTerminal)
{
    /// <summary>What a time limit is kept by.</summary>
    public TimeProvider Clock { get; init; } = TimeProvider.System;

    /// <summary>Prints findings, one line each; nothing is told by colour.</summary>
    public void Print(IEnumerable<Finding> findings)
    {
        foreach (var finding in findings)
        {
            Error.WriteLine($"podlayout: {Word(finding.Severity)}: {finding}");
        }
    }

    /// <summary>Prints a refusal in one line, after what was found before it, and gives the exit code.</summary>
    public int Refuse(IEnumerable<Finding> findings)
    {
        var all = findings.ToArray();
        var refused = all.Where(f => f.Severity == Severity.Refused).ToArray();
        Print(all.Where(f => f.Severity != Severity.Refused));

        // One clear error: the others are often its consequences, and come back when it is mended and they are not.
        var others = refused.Length == 1 ? "" : $" (and {refused.Length - 1} more{(refused[0].Kind == FindingKind.Drawing ? ", which podlayout inspect lists" : "")})";
        Error.WriteLine($"podlayout: error: {refused[0]}{others}");
        return ExitCodes.Of(refused[0]);
    }

    /// <summary>Says what was written, and what went with it, and gives the exit code.</summary>
    public int Told(string folder, IEnumerable<(string Name, byte[] Content)> files, IReadOnlyCollection<string> gone)
    {
        Out.WriteLine($"Written to {folder}: {string.Join(", ", files.Select(f => f.Name))}");
        if (gone.Count > 0)
        {
            Out.WriteLine($"Removed from {folder}, as out of date beside these: {string.Join(", ", gone)}");
        }

        return ExitCodes.LayoutFound;
    }

    private static string Word(Severity severity) => severity switch
    {
        Severity.Note => "note",
        Severity.Mended => "mended",
        Severity.Warning => "warning",
        _ => "error",
    };
}

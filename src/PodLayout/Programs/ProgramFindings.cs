using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Findings;

namespace PodLayout.Programs;

/// <summary>Collects what is found while one program is read: each kind once, with its first line and how often it came.</summary>
internal sealed class ProgramFindings(string fileName)
{
    private readonly List<Finding> _warnings = [];
    private readonly Dictionary<string, int> _counts = new(StringComparer.Ordinal);

    public string FileName => fileName;

    /// <summary>The refusal; reading stops at the first.</summary>
    public Finding? Refusal { get; private set; }

    public ImmutableArray<Finding> All
    {
        get
        {
            var told = _warnings.Select(w => _counts[w.Code + w.Message] is var n and > 1
                ? w with { Message = string.Create(CultureInfo.InvariantCulture, $"{w.Message} ({n} times, first here)") }
                : w);
            return Refusal is null ? [.. told] : [.. told, Refusal];
        }
    }

    public void Warn(int? line, string code, string message, string? remedy = null) => Add(Severity.Warning, line, code, message, remedy);

    public void Note(int? line, string code, string message) => Add(Severity.Note, line, code, message, null);

    /// <summary>Stops the reading; false, so that a step can hand it on.</summary>
    public bool Refuse(int line, string code, string message, string remedy)
    {
        Refusal ??= new(code, Severity.Refused, FindingKind.Program, message, new Place.InFile(fileName, line), remedy);
        return false;
    }

    private void Add(Severity severity, int? line, string code, string message, string? remedy)
    {
        var key = code + message;
        var count = _counts.GetValueOrDefault(key);
        _counts[key] = count + 1;
        if (count == 0)
        {
            _warnings.Add(new(code, severity, FindingKind.Program, message, new Place.InFile(fileName, line), remedy));
        }
    }
}

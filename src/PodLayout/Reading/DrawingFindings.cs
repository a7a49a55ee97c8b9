using System.Collections.Immutable;
using PodLayout.Findings;

namespace PodLayout.Reading;

/// <summary>Collects what is found while one drawing is read; all of it is about the drawing.</summary>
internal sealed class DrawingFindings(string fileName)
{
    /// <summary>Findings of one code that are told one by one; the rest are counted.</summary>
    private const int MostOfACode = 12;

    private readonly List<Finding> _all = [];

    public string FileName => fileName;

    /// <summary>How lengths are told; set once the unit is known.</summary>
    public DrawnLengths Lengths { get; set; } = DrawnLengths.Mm;

    public bool HasRefusal => _all.Exists(f => f.Severity == Severity.Refused);

    public ImmutableArray<Finding> All
    {
        get
        {
            var told = new Dictionary<string, int>(StringComparer.Ordinal);
            var result = ImmutableArray.CreateBuilder<Finding>();
            foreach (var finding in _all)
            {
                told[finding.Code] = told.GetValueOrDefault(finding.Code) + 1;
                if (told[finding.Code] <= MostOfACode)
                    result.Add(finding);
            }

            foreach (var (code, count) in told.Where(t => t.Value > MostOfACode))
            {
                var first = _all.Find(f => f.Code == code)!;
                result.Add(first with { Message = $"{count - MostOfACode} more of this kind ({code}).", Place = new Place.InFile(fileName) });
            }

            return result.ToImmutable();
        }
    }

    public void Add(Severity severity, string code, string message, string? remedy = null, int? line = null) =>
        _all.Add(new(code, severity, FindingKind.Drawing, message, new Place.InFile(fileName, line), remedy));

    public void AddAt(Severity severity, string code, string message, Geometry.Point2 at, string? remedy = null) =>
        _all.Add(new(code, severity, FindingKind.Drawing, message, new Place.InDrawing(fileName, at.X, at.Y) { InInches = Lengths.InInches }, remedy));

    public void Note(string code, string message, int? line = null) => Add(Severity.Note, code, message, null, line);

    public void Mended(string code, string message, int? line = null) => Add(Severity.Mended, code, message, null, line);

    public void Warn(string code, string message, string? remedy = null, int? line = null) =>
        Add(Severity.Warning, code, message, remedy, line);

    public void Refuse(string code, string message, string? remedy = null, int? line = null) =>
        Add(Severity.Refused, code, message, remedy, line);
}

using System.Collections.Immutable;
using PodLayout.Findings;

namespace PodLayout.Reading;

/// <summary>Collects what is found while one drawing is read; all of it is about the drawing.</summary>
internal sealed class DrawingFindings(string fileName)
{
    /// <summary>Findings of one code that are told one by one; the rest are counted.</summary>
    private const int MostOfACode = 12;

    // A drawing of a million entities may have a million of a kind: only those that are told are kept.
    private readonly List<Finding> _told = [];
    private readonly Dictionary<string, int> _counts = new(StringComparer.Ordinal);

    public string FileName => fileName;

    /// <summary>How lengths are told; set once the unit is known.</summary>
    public DrawnLengths Lengths { get; set; } = DrawnLengths.Mm;

    public bool HasRefusal { get; private set; }

    public ImmutableArray<Finding> All =>
    [
        .. _told,
        .. _counts.Where(c => c.Value > MostOfACode).Select(c => _told.Find(f => f.Code == c.Key)! with
        {
            Message = $"{c.Value - MostOfACode} more of this kind ({c.Key}).",
            Place = new Place.InFile(fileName),
        }),
    ];

    public void Add(Severity severity, string code, string message, string? remedy = null, int? line = null) =>
        Add(new(code, severity, FindingKind.Drawing, message, new Place.InFile(fileName, line), remedy));

    public void AddAt(Severity severity, string code, string message, Geometry.Point2 at, string? remedy = null) =>
        Add(new(code, severity, FindingKind.Drawing, message, new Place.InDrawing(fileName, at.X, at.Y) { InInches = Lengths.InInches }, remedy));

    public void Note(string code, string message, int? line = null) => Add(Severity.Note, code, message, null, line);

    public void Mended(string code, string message, int? line = null) => Add(Severity.Mended, code, message, null, line);

    public void Warn(string code, string message, string? remedy = null, int? line = null) =>
        Add(Severity.Warning, code, message, remedy, line);

    public void Refuse(string code, string message, string? remedy = null, int? line = null) =>
        Add(Severity.Refused, code, message, remedy, line);

    private void Add(Finding finding)
    {
        HasRefusal |= finding.Severity == Severity.Refused;
        var count = _counts[finding.Code] = _counts.GetValueOrDefault(finding.Code) + 1;
        if (count <= MostOfACode)
        {
            _told.Add(finding);
        }
    }
}

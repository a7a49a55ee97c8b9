using System.Collections.Immutable;
using PodLayout.Findings;
using PodLayout.JsonFiles;

namespace PodLayout.BoardMaking;

/// <summary>The checks of one board as they are made: each with its figure, and with its remedy where it does not hold.</summary>
internal sealed class CheckList(BoardRequest request)
{
    // A sum of lengths that were given in inches is off by some digits of a double.
    private const double RoundingMm = 1e-9;

    private readonly List<Check> checks = [];
    private readonly FileRefusals refusals = new(request.File) { Inches = request.Inches };

    public ImmutableArray<Check> All => [.. checks];

    public ImmutableArray<Finding> Findings => [.. checks.Select(c => c.Finding).OfType<Finding>()];

    /// <summary>A length that must be at least a limit.</summary>
    /// <param name="what">What it is, as the subject of the message.</param>
    /// <param name="figureMm">The length.</param>
    /// <param name="limitMm">The limit.</param>
    /// <param name="where">Where it is; null where that is no question.</param>
    /// <param name="code">Code of the finding.</param>
    /// <param name="path">The member that is most likely to be mended.</param>
    /// <param name="remedy">What mends it.</param>
    public bool Least(string what, double figureMm, double limitMm, string? where, string code, string path, string remedy)
    {
        var holds = figureMm >= limitMm - RoundingMm;
        var at = where is null ? "" : " " + where;
        checks.Add(new(
            what,
            Figure.Mm(figureMm) + " mm" + at,
            "at least " + Figure.Mm(limitMm) + " mm",
            holds ? null : refusals.At(
                code, path, $"{what}: {Figure.Mm(figureMm)} mm{at}; expected at least {Figure.Mm(limitMm)} mm.", remedy)));
        return holds;
    }

    /// <summary>A figure without a limit of its own.</summary>
    public void Tell(string what, string value, string limit = "") => checks.Add(new(what, value, limit));

    /// <summary>Something that is wrong.</summary>
    public void Add(string what, string value, string limit, Severity severity, string code, string path, string message, string remedy) =>
        checks.Add(new(what, value, limit, refusals.At(code, path, message, remedy, severity)));

    /// <summary>Something that cannot be.</summary>
    public void Refuse(string what, string value, string limit, string code, string path, string message, string remedy) =>
        Add(what, value, limit, Severity.Refused, code, path, message, remedy);
}

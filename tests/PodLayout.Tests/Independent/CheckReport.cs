using System.Globalization;

namespace PodLayout.Tests.Independent;

/// <summary>What the checker found: violations in words, and how near each rule is to being broken.</summary>
public sealed class CheckReport
{
    /// <summary>Coordinates are handed over in steps of 0.001 mm; curves are chords within 0.01 mm.</summary>
    public const double ToleranceMm = 0.02;

    private readonly List<string> violations = [];
    private readonly SortedDictionary<string, double> spare = new(StringComparer.Ordinal);

    /// <summary>Each begins with the rule's name and a colon.</summary>
    public IReadOnlyList<string> Violations => violations;

    /// <summary>For each measured rule, the least that was left over, mm (shares of the limit for support).</summary>
    public IReadOnlyDictionary<string, double> LeastSpare => spare;

    public void Measure(string rule, double found, double needed, string who, double tolerance = ToleranceMm)
    {
        var left = found - needed;
        spare[rule] = Math.Min(left, spare.GetValueOrDefault(rule, double.PositiveInfinity));
        if (!(left >= -tolerance))
        {
            violations.Add(string.Create(CultureInfo.InvariantCulture, $"{rule}: {who} has {found:0.###}, needs {needed:0.###}"));
        }
    }

    public void Require(string rule, bool holds, string otherwise)
    {
        if (!holds)
        {
            violations.Add($"{rule}: {otherwise}");
        }
    }

    public override string ToString() => string.Join("\n", violations);
}

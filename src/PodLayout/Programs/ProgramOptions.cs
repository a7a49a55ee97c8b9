using System.Collections.Immutable;

namespace PodLayout.Programs;

/// <summary>What must be known beside the program to read it.</summary>
public sealed record ProgramOptions
{
    /// <summary>
    /// Greatest difference between an arc's radius at its start and at its end, mm: 0.002 mm, or in inches 0.0002 in, as NIST's
    /// RS274/NGC (NISTIR 6556, 2000, section 3.5.3) has it; a number here goes before both.
    /// </summary>
    public double? ArcToleranceMm { get; init; }

    /// <summary>Whether lines that begin with a slash are left out.</summary>
    public bool LeavesOutSlashLines { get; init; }

    /// <summary>The tools by number, for cutter radius compensation; may be empty.</summary>
    public ImmutableSortedDictionary<int, Tool> Tools { get; init; } = ImmutableSortedDictionary<int, Tool>.Empty;

    /// <summary>Where the tip is before the first move; null when that is not known, as it mostly is.</summary>
    public TipPoint? Start { get; init; }
}

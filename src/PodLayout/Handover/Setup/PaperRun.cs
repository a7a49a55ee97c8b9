using System.Collections.Immutable;

namespace PodLayout.Handover.Setup;

/// <summary>Pieces that are read together: a paragraph, a table, a list.</summary>
/// <param name="Pieces">The pieces from the top down; at least one.</param>
/// <param name="GapMm">Room after the last one.</param>
internal sealed record PaperRun(ImmutableArray<PaperPiece> Pieces, double GapMm)
{
    /// <summary>Of a run that is longer than a page at least so many pieces stand on each side of the end of a page.</summary>
    public const int Together = 2;

    /// <summary>What fits on a page must leave room for a heading above it, which may not stand alone, mm.</summary>
    public const double HeadingMm = 13;

    /// <summary>What stands above the pieces on every page that they are on; null for nothing.</summary>
    public PaperPiece? Head { get; init; }

    /// <summary>Whether it leads to the next run and stands on the same page as its beginning.</summary>
    public bool LeadsOn { get; init; }

    /// <summary>Height of the head; 0 for none.</summary>
    public double HeadMm => Head?.HeightMm ?? 0;

    /// <summary>Height of all of it, with its head, without the room after it.</summary>
    public double HeightMm => HeadMm + Pieces.Sum(p => p.HeightMm);

    /// <summary>The least height that a page must have left for it to begin there, mm.</summary>
    /// <param name="pageMm">Room on an empty page.</param>
    public double BeginningMm(double pageMm) => HeightMm <= pageMm - HeadingMm ? HeightMm : LeastMm(pageMm);

    /// <summary>The height of its first pieces that stand together, with its head, mm: what must follow on whatever leads to it.</summary>
    /// <param name="pageMm">Room on an empty page.</param>
    public double LeastMm(double pageMm) => HeadMm + Pieces.Take(TogetherFrom(0, pageMm)).Sum(p => p.HeightMm);

    /// <summary>
    /// How many pieces stand together on either side of the end of a page: <see cref="Together"/>, but one where those from here on
    /// are too tall for that, or so few that it could not be kept on both sides.
    /// </summary>
    /// <param name="first">Index of the first of them.</param>
    /// <param name="pageMm">Room on an empty page.</param>
    public int TogetherFrom(int first, double pageMm) =>
        Pieces.Length >= 2 * Together && HeadMm + Pieces.Skip(first).Take(Together).Sum(p => p.HeightMm) <= pageMm ? Together : 1;
}

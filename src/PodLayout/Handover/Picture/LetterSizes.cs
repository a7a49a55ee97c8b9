using System.Collections.Immutable;

namespace PodLayout.Handover.Picture;

/// <summary>How large words in and beside pods are, mm of paper (em).</summary>
/// <param name="LargestId">The largest number of a pod.</param>
/// <param name="LeastId">A number of a pod that would be smaller stands beside its pod, as long as there is room anywhere.</param>
/// <param name="Port">Names of ports where there is room; a capital is 0.72 of it high.</param>
/// <param name="Least">Names of ports and letters of types are not smaller than this: they stand outside, with a line to their place.</param>
internal sealed record LetterSizes(double LargestId, double LeastId, double Port, double Least)
{
    /// <summary>Numbers of pods that stand beside them where few do, the most welcome first.</summary>
    public ImmutableArray<IdSize> WhereFew { get; init; } = [new(1.15), new(1), new(0.8)];

    /// <summary>There, how much longer the line to a number may be for each step that it is larger, mm.</summary>
    public double WorthWhereFewMm { get; init; } = 5;

    /// <summary>Numbers of pods that stand beside them where many do, the most welcome first.</summary>
    public ImmutableArray<IdSize> WhereMany { get; init; } = [new(1.15), new(1), new(0.8)];

    /// <summary>More than so many numbers beside their pods are many.</summary>
    public int Few { get; init; } = 16;

    /// <summary>There, how much longer the line to a number may be for each step that it is larger, mm.</summary>
    public double WorthWhereManyMm { get; init; } = 2.5;

    /// <summary>How small a number may be in its pod rather than stand beside it, as a share of <see cref="LeastId"/>.</summary>
    public double LeastInside { get; init; } = 0.87;

    /// <summary>Numbers that are narrower in their pods rather than stand beside them narrower or with a line.</summary>
    public ImmutableArray<IdSize> Narrower { get; init; } = [];

    /// <summary>How large the flag of a mark is on a pod, as a share of what it is on paper.</summary>
    public double CloseFlag { get; init; } = 1;

    /// <summary>How large the flag of a mark is at least in a gap or off the board, as a share of what it is on paper.</summary>
    public double LeastFlag { get; init; } = 0.7;

    /// <summary>How much longer the line to a flag may be for each tenth that the flag is larger, mm.</summary>
    public double WorthOfFlagMm { get; init; } = double.PositiveInfinity;

    /// <summary>Whether words of capitals and digits alone take only the height of a capital.</summary>
    public bool IsTight { get; init; }

    /// <summary>How far from its pod a word may stand, mm.</summary>
    public double FarthestMm { get; init; } = double.PositiveInfinity;

    /// <summary>
    /// On paper: capitals of 2.4 mm where there is room and of 1.9 mm at least, which is the type beside the picture too. Common
    /// practice for what is read at arm's length, no source.
    /// </summary>
    public static LetterSizes OnPaper { get; } = new(6, 2.8, 3.4, 2.6);

    /// <summary>
    /// On a screen, whose picture is stretched: numbers of pods and marks are as large as they must be to be read, narrower where
    /// that gives them room, and smaller only where there is none at all.
    /// </summary>
    /// <param name="leastMm">The least number that can be read there, mm of paper.</param>
    public static LetterSizes OnScreen(double leastMm)
    {
        var least = leastMm / ScreenIdMm;
        var fair = Math.Max(0.8, least);
        ImmutableArray<IdSize> narrower = [new(1, 0.8), new(fair, 0.8), new(fair, Narrowest)];
        ImmutableArray<IdSize> beside = [new(1.15), new(1), new(fair), .. narrower, new(least, Narrowest)];
        return new(6, ScreenIdMm, 2.8, 2.3)
        {
            LeastInside = Math.Max(0.87, least),
            Narrower = narrower,
            WhereFew = beside,
            WorthWhereFewMm = 2,
            WhereMany = beside,
            WorthWhereManyMm = 1.5,
            CloseFlag = leastMm / Symbols.FlagTypeMm,
            LeastFlag = leastMm / Symbols.FlagTypeMm,
            WorthOfFlagMm = 2,
            IsTight = true,
            FarthestMm = 12,
        };
    }

    private const double ScreenIdMm = 2.4;

    // Of the measure, which is that of a wide bold face: nine tenths of what a usual one has.
    private const double Narrowest = 0.73;

    /// <summary>How a number of a pod is written.</summary>
    /// <param name="Share">Its size as a share of <see cref="LeastId"/>.</param>
    /// <param name="Narrow">Its width as a share of what it is measured at.</param>
    public readonly record struct IdSize(double Share, double Narrow = 1);
}

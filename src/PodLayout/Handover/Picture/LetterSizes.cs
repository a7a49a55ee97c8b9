using System.Collections.Immutable;

namespace PodLayout.Handover.Picture;

/// <summary>How large words in and beside pods are, mm of paper (em).</summary>
/// <param name="LargestId">The largest number of a pod.</param>
/// <param name="LeastId">A number of a pod that would be smaller stands beside its pod, as long as there is room anywhere.</param>
/// <param name="Port">Names of ports where there is room; a capital is 0.72 of it high.</param>
/// <param name="Least">Names of ports and letters of types are not smaller than this: they stand outside, with a line to their place.</param>
internal sealed record LetterSizes(double LargestId, double LeastId, double Port, double Least)
{
    /// <summary>Numbers of pods that stand beside them where few do, as shares of <see cref="LeastId"/>, the most welcome first.</summary>
    public ImmutableArray<double> WhereFew { get; init; } = [1.15, 1, 0.8];

    /// <summary>There, how much longer the line to a number may be for each step that it is larger, mm.</summary>
    public double WorthWhereFewMm { get; init; } = 5;

    /// <summary>
    /// Numbers of pods that stand beside them where many do, as shares of <see cref="LeastId"/>, the most welcome first.
    /// </summary>
    public ImmutableArray<double> WhereMany { get; init; } = [1.15, 1, 0.8];

    /// <summary>More than so many numbers beside their pods are many.</summary>
    public int Few { get; init; } = 16;

    /// <summary>There, how much longer the line to a number may be for each step that it is larger, mm.</summary>
    public double WorthWhereManyMm { get; init; } = 2.5;

    /// <summary>How small a number may be in its pod rather than stand beside it still smaller, as a share of <see cref="LeastId"/>.</summary>
    public double LeastInside { get; init; } = 0.87;

    /// <summary>How large the flag of a mark is where there is little room, as a share of what it is on paper.</summary>
    public double CloseFlag { get; init; } = 1;

    /// <summary>How far from its pod a word may stand, mm.</summary>
    public double FarthestMm { get; init; } = double.PositiveInfinity;

    /// <summary>
    /// On paper: capitals of 2.4 mm where there is room and of 1.9 mm at least, which is the type beside the picture too. Common
    /// practice for what is read at arm's length, no source.
    /// </summary>
    public static LetterSizes OnPaper { get; } = new(6, 2.8, 3.4, 2.6);

    /// <summary>On a screen, whose picture is stretched to five pixels or more for each of its millimetres.</summary>
    public static LetterSizes OnScreen { get; } = new(6, 2.4, 2.8, 2.3)
    {
        // Whoever zooms in reads small numbers too: many stand at their pods rather than off them with lines.
        LeastInside = 0.6,
        WhereFew = [1.15, 1, 0.8, 0.64, 0.5, 0.4],
        WorthWhereFewMm = 2,
        WhereMany = [1.15, 1, 0.8, 0.64, 0.5, 0.4],
        WorthWhereManyMm = 1.5,
        CloseFlag = 0.5,
        FarthestMm = 10,
    };
}

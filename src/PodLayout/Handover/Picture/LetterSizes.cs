namespace PodLayout.Handover.Picture;

/// <summary>How large words in and beside pods are, mm of paper (em).</summary>
/// <param name="LargestId">The largest number of a pod.</param>
/// <param name="LeastId">A number of a pod that would be smaller stands beside its pod, as long as there is room anywhere.</param>
/// <param name="Port">Names of ports where there is room; a capital is 0.72 of it high.</param>
/// <param name="Least">Names of ports and letters of types are not smaller than this: they stand outside, with a line to their place.</param>
internal sealed record LetterSizes(double LargestId, double LeastId, double Port, double Least)
{
    /// <summary>
    /// On paper: capitals of 2.4 mm where there is room and of 1.9 mm at least, which is the type beside the picture too. Common
    /// practice for what is read at arm's length, no source.
    /// </summary>
    public static LetterSizes OnPaper { get; } = new(6, 2.8, 3.4, 2.6);

    /// <summary>On a screen, whose picture is stretched to five pixels or more for each of its millimetres.</summary>
    public static LetterSizes OnScreen { get; } = new(6, 2.4, 2.8, 2.3);
}

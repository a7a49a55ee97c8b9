namespace PodLayout.Parts;

/// <summary>A pass of the cutter: one operation, or one tool of the program.</summary>
/// <param name="Name">What it is, in the shop's words.</param>
/// <param name="Source">Where it comes from: an operation, lines of a program, or an assumption.</param>
/// <param name="PeakN">The largest force at its points, at the upper end of the band that is reckoned with, N.</param>
/// <param name="LeastPeakN">The same at the lower end of the band, N.</param>
public sealed record CutterPass(string Name, string Source, double PeakN, double LeastPeakN)
{
    /// <summary>Whether its forces are worked out from its feed, so that a slower one lessens them.</summary>
    public bool FollowsFeed { get; init; }
}

namespace PodLayout.Holding;

/// <summary>How deep a pass of the cutter may go for the layout to reach the target factor.</summary>
/// <param name="Pass">The pass, in the shop's words.</param>
/// <param name="DepthMm">The greatest depth that was reckoned with, mm.</param>
/// <param name="MostDepthMm">The greatest depth at which the target is reached, mm; 0 when no depth is small enough.</param>
/// <param name="IsThrough">Whether that is all the wood there is.</param>
/// <param name="FeedShare">
/// The share of the feed at which the target is reached with the depth as reckoned; null where the depth reaches it, or the force
/// does not follow the feed.
/// </param>
public sealed record PassLimit(string Pass, double DepthMm, double MostDepthMm, bool IsThrough, double? FeedShare);

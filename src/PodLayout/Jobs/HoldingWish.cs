namespace PodLayout.Jobs;

/// <summary>What a job says of how firmly its part is held, beside the shop's rules that it has changed.</summary>
/// <param name="ShopLeastFactor">The least factor of the shop.</param>
/// <param name="AcceptLessBecause">Why this job goes below it, in the words of who wrote it; null when it does not.</param>
public sealed record HoldingWish(double ShopLeastFactor, string? AcceptLessBecause);

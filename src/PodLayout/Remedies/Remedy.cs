using PodLayout.Jobs;

namespace PodLayout.Remedies;

/// <summary>A change of the job that may mend what a plan leaves unsupported.</summary>
/// <param name="Words">What is done, for a person: "turn the part by 90 degrees".</param>
/// <param name="Job">The job with the change.</param>
public sealed record Remedy(string Words, Job Job);

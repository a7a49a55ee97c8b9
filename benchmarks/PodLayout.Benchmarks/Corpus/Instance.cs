using PodLayout.Jobs;

namespace PodLayout.Benchmarks.Corpus;

/// <summary>A job of the corpus.</summary>
/// <param name="Name">Family, shape, size and shop: what stands in the tables.</param>
/// <param name="Family">Where the shape comes from.</param>
/// <param name="Make">Makes the job.</param>
/// <param name="Files">The same job as files.</param>
internal sealed record Instance(string Name, string Family, Func<Job> Make, Func<InstanceFiles> Files);

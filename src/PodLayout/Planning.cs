using PodLayout.Jobs;
using PodLayout.Layouts;

namespace PodLayout;

/// <summary>The whole job, from what is asked to the layout.</summary>
public static class Planning
{
    /// <summary>Finds the layout with the fewest pods.</summary>
    /// <param name="job">What is asked.</param>
    /// <param name="effort">How long and on how many threads.</param>
    /// <param name="progress">Told of each better layout and bound; null for silence.</param>
    /// <param name="cancellation">Cuts the work short; the best layout found so far is returned.</param>
    public static PlanResult Plan(Job job, Effort effort, IProgress<Progress>? progress, CancellationToken cancellation) =>
        new(job, null, [], [], false, new(0, 0, 0));
}

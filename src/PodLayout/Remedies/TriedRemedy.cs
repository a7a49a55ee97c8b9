using PodLayout.Layouts;

namespace PodLayout.Remedies;

/// <summary>A change that was planned, and what it came to.</summary>
/// <param name="Words">What is done.</param>
/// <param name="Plan">The plan with it: a layout that was really found.</param>
public sealed record TriedRemedy(string Words, PlanResult Plan)
{
    /// <summary>The same in figures.</summary>
    public WayOut Figures => new(
        Words, Plan.Layout!.Proof.UnsupportedMm, Plan.Layout.Pods.Length, Plan.Layout.Holding?.LeastOfAll);
}

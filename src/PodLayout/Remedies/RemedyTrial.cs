using System.Collections.Immutable;
using PodLayout.Jobs;
using PodLayout.Layouts;

namespace PodLayout.Remedies;

/// <summary>Tries what a practitioner would where a plan leaves part of the wood unsupported, or comes to no layout.</summary>
public static class RemedyTrial
{
    // How many are told.
    private const int Most = 6;

    // A gain below this is none, mm.
    private const double LeastGainMm = 0.5;

    /// <summary>Whether there is something to mend.</summary>
    public static bool IsOfUse(PlanResult plan) => plan.Layout is null ? !plan.Interrupted : plan.IsPartial;

    /// <summary>
    /// The changes that leave less unsupported, each planned: first those that leave nothing, in the order of what they cost whoever sets up
    /// and stocks the shop, then those that leave least.
    /// </summary>
    /// <param name="plan">The plan.</param>
    /// <param name="planned">Plans a job.</param>
    /// <param name="cancellation">Ends the trial; what was tried till then is told.</param>
    public static ImmutableArray<TriedRemedy> Of(PlanResult plan, Func<Job, PlanResult> planned, CancellationToken cancellation)
    {
        var tried = new List<TriedRemedy>();
        foreach (var remedy in RemedyList.Of(plan))
        {
            if (cancellation.IsCancellationRequested)
            {
                break;
            }

            // What does not hold is no way out.
            var result = planned(remedy.Job);
            if (!result.Interrupted && !result.DoesNotHold && LeftMm(result) < LeftMm(plan) - LeastGainMm)
            {
                tried.Add(new(WithAngle(remedy, result), result));
            }
        }

        return [.. tried.Select((t, i) => (Tried: t, Order: i)).OrderBy(t => LeftMm(t.Tried.Plan) > 0)
            .ThenBy(t => LeftMm(t.Tried.Plan) > 0 ? LeftMm(t.Tried.Plan) : 0).ThenBy(t => t.Order).Take(Most).Select(t => t.Tried)];
    }

    /// <summary>What a plan leaves unsupported, mm; infinite without a layout.</summary>
    public static double LeftMm(PlanResult plan) => plan.Layout?.Proof.UnsupportedMm ?? double.PositiveInfinity;

    // Where several angles were tried, the one that it came to.
    private static string WithAngle(Remedy remedy, PlanResult result) =>
        remedy.Job.Placement is PlacementWish.Search { AnglesDeg.Length: > 1 } && result.Layout is { } layout
            ? FormattableString.Invariant($"{remedy.Words}: {layout.Placement.AngleDeg:0.###} degrees") : remedy.Words;
}

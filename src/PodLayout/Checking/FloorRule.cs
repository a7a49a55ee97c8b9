using PodLayout.Floors;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Layouts;

namespace PodLayout.Checking;

/// <summary>No pod pulls at a floor that does not bear its vacuum.</summary>
internal static class FloorRule
{
    public static RuleCheck Check(Job job, Layout layout)
    {
        var tally = new RuleTally(CheckedRule.FloorsBearVacuum, Measure.LeastMm, LayoutCheck.ToleranceMm);
        var turn = Turn.FromDegrees(layout.Placement.AngleDeg);
        foreach (var floor in job.Part.Shape.WeakFloors.Where(f => !f.Area.IsEmpty))
        {
            var ring = RingOnBoard.Of(floor, turn, layout.Placement.ZeroOnBoard);
            for (var i = 0; i < layout.Pods.Length; i++)
            {
                var pod = layout.Pods[i];
                if (floor.Pulls.FirstOrDefault(p => p.Pod == pod.Type.Name) is not { } pull)
                {
                    continue;
                }

                var name = CheckWords.Pod(i);
                var (mm, at) = StandingBody.Of(pod, pod.Type.SealInsetAboveMm).Clear(ring, inside: false);
                tally.Add(mm, 0, $"{name} to {ring.Words} at {CheckWords.At(at)}", (i, 0), () => (
                    $"{name}: {FloorFindings.Words(floor)}, and the pod's upper seal reaches {CheckWords.Mm(-mm)} mm over it at {CheckWords.At(at)}: {FloorFindings.Words(pull, null)}.",
                    floor.Name == WeakFloors.WholePart
                        ? $"Use a smaller pod, or a part at least {CheckWords.Mm(pull.NeededMm)} mm thick."
                        : $"Move {name} off it, use a smaller pod there, or leave at least {CheckWords.Mm(pull.NeededMm)} mm of wood."));
            }
        }

        return tally.Done(layout.Pods.IsEmpty ? "no pods" : "no floor is too thin for the pods used");
    }
}

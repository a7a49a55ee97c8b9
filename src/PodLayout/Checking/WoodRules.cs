using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Parts;

namespace PodLayout.Checking;

/// <summary>Seals under sound wood, bodies clear of cuts.</summary>
internal static class WoodRules
{
    public static IEnumerable<RuleCheck> Check(Job job, Layout layout)
    {
        var turn = Turn.FromDegrees(layout.Placement.AngleDeg);
        var (shape, zero) = (job.Part.Shape, layout.Placement.ZeroOnBoard);
        var part = (Outline: RingOnBoard.Of("the outline", shape.Outline, turn, zero), Holes: shape.Holes.Select(h => RingOnBoard.Of("a hole", h, turn, zero)).ToArray());
        var pieces = shape.Held.ToDictionary(h => h.Name, h => (
            Outline: RingOnBoard.Of($"the edge of {h.Name}", h.Outline, turn, zero), Holes: h.Holes.Select(r => RingOnBoard.Of($"the edge of {h.Name}", r, turn, zero)).ToArray()));
        ImmutableArray<RingOnBoard> defects = [.. shape.Defects.Select(d => RingOnBoard.Of("a defect", d, turn, zero))];
        ImmutableArray<Hazard> hazards = [.. shape.Hazards.Where(h => !h.Area.IsEmpty)];
        ImmutableArray<RingOnBoard> forBodies = [.. hazards.Where(h => h.KeepsBodiesOff).Select(h => RingOnBoard.Of(h, turn, zero))];
        ImmutableArray<RingOnBoard> forSeals = [.. defects, .. hazards.Where(h => h.KeepsSealsOff).Select(h => RingOnBoard.Of(h, turn, zero))];
        var seals = new RuleTally(CheckedRule.SealInSoundWood, Measure.LeastMm, LayoutCheck.ToleranceMm);
        var bodies = new RuleTally(CheckedRule.BodyClearOfCuts, Measure.LeastMm, LayoutCheck.ToleranceMm);
        for (var i = 0; i < layout.Pods.Length; i++)
        {
            var (pod, index, shortMm) = (layout.Pods[i], i, 0.0);
            List<Action> figures = [];
            var seal = StandingBody.Of(pod, pod.Type.SealInsetAboveMm);
            var body = StandingBody.Of(pod, 0);
            var ground = pod.Holds is { } name ? pieces[name] : part;
            for (var ring = 0; ring <= ground.Holes.Length; ring++)
            {
                var edge = ring == 0 ? ground.Outline : ground.Holes[ring - 1];
                Add(seals, "seal", seal, edge, ring == 0, job.Margins.SealMarginMm);
                // Where a skin is left no tool comes through.
                if (pod.Holds is not null || !shape.Skinned.Contains(ring))
                {
                    Add(bodies, "body", body, edge, ring == 0, job.Margins.CutClearanceMm);
                }
            }

            foreach (var unsound in forSeals)
            {
                Add(seals, "seal", seal, unsound, false, job.Margins.SealMarginMm);
            }

            foreach (var cut in forBodies)
            {
                Add(bodies, "body", body, cut, false, job.Margins.CutClearanceMm);
            }

            // One way mends both: what its seal lacks, or its body, whichever is more.
            figures.ForEach(add => add());

            void Add(RuleTally tally, string what, StandingBody stands, RingOnBoard ring, bool inside, double neededMm)
            {
                var (mm, at) = stands.Clear(ring, inside);
                shortMm = Math.Max(shortMm, neededMm - mm);
                figures.Add(() => tally.Add(mm, neededMm, $"{CheckWords.Pod(index)} to {ring.Words} at {CheckWords.At(at)}", (index, 0), () => (
                    Words(CheckWords.Pod(index), what, ring, mm, at, neededMm),
                    $"Move {CheckWords.Pod(index)} away by whole pitches or use a smaller pod there, or move the part by {CheckWords.Mm(shortMm)} mm.")));
            }
        }

        yield return seals.Done("no pods");
        yield return bodies.Done("no pods");
    }

    private static string Words(string pod, string what, RingOnBoard ring, double mm, Point2 at, double neededMm) => mm < 0
        ? $"{pod}: its {what} passes {ring.Words} by {CheckWords.Mm(-mm)} mm at {CheckWords.At(at)}; it must keep {CheckWords.Mm(neededMm)} mm away."
        : $"{pod}: its {what} is {CheckWords.Mm(mm)} mm from {ring.Words} at {CheckWords.At(at)}, {CheckWords.Mm(neededMm - mm)} mm less than the {CheckWords.Mm(neededMm)} mm that it must keep.";
}

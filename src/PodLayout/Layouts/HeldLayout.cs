using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Geometry;
using PodLayout.Holding;
using PodLayout.Jobs;
using PodLayout.Shops;
using PodLayout.Vacuum;

namespace PodLayout.Layouts;

/// <summary>How a layout holds its part: the report for people.</summary>
public static class HeldLayout
{
    /// <summary>The report; null where nothing is known of the cutter.</summary>
    /// <param name="job">The job.</param>
    /// <param name="layout">The layout.</param>
    /// <param name="threads">Threads to use; the result does not depend on it.</param>
    public static HoldingReport? Report(Job job, Layout layout, int threads)
    {
        var rules = job.Shop.Holding;
        if (HoldingGround.Of(job.Part, job.Shop, rules.TargetFactor) is not { } ground || !layout.Pods.Any(p => p.Holds is null))
        {
            return null;
        }

        var (standing, vacuum) = Pods(ground, layout, lost: -1);
        var pods = Bearing(layout, standing);
        var (now, load) = Strength(job, layout, ground, standing);
        var part = ground.On(pods);
        var lost = new double[standing.Length];
        Parallel.For(0, lost.Length, new ParallelOptions { MaxDegreeOfParallelism = threads }, i =>
            lost[i] = Firmness.Weakest(ground, Bearing(layout, Pods(ground, layout, i).Pods)).Limit.Factor);
        var bears = new Queue<double>(part.Presses(load < 0 ? default : ground.Loads[load].Wrench));
        return new(
            now.Factor,
            rules.TargetFactor,
            rules.LeastFactor,
            job.Holding.AcceptLessBecause,
            now.Weakest,
            [.. standing.Select((p, i) => new PodHold(p.VacuumKPa, p.PullN, layout.Pods[i].Holds is null ? bears.Dequeue() : 0, lost[i]))],
            vacuum.GaugeKPa,
            vacuum.BarometerKPa,
            now.StandMm,
            ground.WeightN,
            [.. job.Part.Loads.Assumptions, .. vacuum.Assumptions, .. Assumed(job)])
        {
            FactorByPulls = Least(ground, (w, enough) => part.ByPulls(w, enough).Factor),
            FactorBySprings = Least(ground, (w, enough) => part.BySprings(w, enough).Factor),
            FactorUnloading = Least(ground, (w, _) => part.Unloading(w)),
            Pieces = now.Pieces,
            Passes = PassDepths.Of(ground, part, rules.TargetFactor),
        };
    }

    private static double Least(HoldingGround ground, Func<Wrench, double, double> factorOf)
    {
        var least = double.PositiveInfinity;
        foreach (var load in ground.Telling.Concat(Enumerable.Range(0, ground.Loads.Length)))
        {
            least = Math.Min(least, factorOf(ground.Loads[load].Wrench, least));
        }

        return least;
    }

    /// <summary>
    /// How firmly a layout holds with all its seals; null where nothing is known of the cutter. A small part of the work of a
    /// report, which asks the same again for every seal that may be lost.
    /// </summary>
    /// <param name="job">The job.</param>
    /// <param name="layout">The layout.</param>
    public static HoldingStrength? Strength(Job job, Layout layout) =>
        HoldingGround.Of(job.Part, job.Shop, job.Shop.Holding.TargetFactor) is { } ground && layout.Pods.Any(p => p.Holds is null)
            ? Strength(job, layout, ground, Pods(ground, layout, lost: -1).Pods).Now : null;

    /// <summary>
    /// A layout that may have been changed since its report was made, with the report as it now is: the old one where its factor
    /// still stands, since it also knows what one more pod would give.
    /// </summary>
    /// <param name="job">The job.</param>
    /// <param name="layout">The layout.</param>
    /// <param name="threads">Threads to use.</param>
    public static Layout Renewed(Job job, Layout layout, int threads)
    {
        // As the check has it: a pod that pulls at nothing holds nothing.
        var (counted, _) = PodsUnderWood.Of(job, layout);
        var now = Strength(job, counted);
        var stands = (now is null && layout.Holding is null) || (now is not null && layout.Holding is { } before && before.Pods.Length == layout.Pods.Length
            && IsSame(before.Factor, now.Factor)
            && before.Pieces.Select(p => p.Name).SequenceEqual(now.Pieces.Select(p => p.Name))
            && before.Pieces.Zip(now.Pieces).All(p => IsSame(p.First.Factor, p.Second.Factor)));
        return stands ? layout : layout with { Holding = Report(job, counted, threads) };
    }

    private static bool IsSame(double before, double now) =>
        before == now || Math.Abs(before - now) <= Tolerances.FiledFactor + Tolerances.HoldingShare * 2 * now;

    /// <summary>The pods of a layout in the part's axes, with the vacuum left at each.</summary>
    /// <param name="ground">The part.</param>
    /// <param name="layout">The layout.</param>
    /// <param name="lost">Index of a pod whose upper seal is lost; -1 for none.</param>
    public static (ImmutableArray<HeldPod> Pods, VacuumReading Vacuum) Pods(HoldingGround ground, Layout layout, int lost)
    {
        var vacuum = VacuumNetwork.At(ground.Shop, [.. layout.Pods.Select(p => new PodOnPorts(p.Type, p.OpenPorts))], lost);
        var back = Turn.FromDegrees(-layout.Placement.AngleDeg);
        return ([.. layout.Pods.Select((p, i) => new HeldPod(
            PodGrip.Of(p.Type, ground.Shop.Holding.Friction),
            back.Apply(p.Centre - layout.Placement.ZeroOnBoard) - ground.Middle,
            Turn.FromDegrees((p.Turned ? 90 : 0) - layout.Placement.AngleDeg),
            vacuum.AtPodKPa[i]))], vacuum);
    }

    private static (HoldingStrength Now, int Load) Strength(Job job, Layout layout, HoldingGround ground, ImmutableArray<HeldPod> standing)
    {
        var pods = Bearing(layout, standing);
        var (limit, load) = Firmness.Weakest(ground, pods);
        return (new(
            limit.Factor, load < 0 ? null : Weakest(ground, pods, limit, load),
            Firmness.Standing(pods, ground.StandingCentre).DistanceMm,
            [.. HoldingGround.OfPieces(job.Part, job.Shop, ground.Factor).Select(piece => OfPiece(
                piece, [.. standing.Where((_, i) => layout.Pods[i].Holds == piece.Piece)]))]), load);
    }

    private static PieceHold OfPiece(HoldingGround ground, ImmutableArray<HeldPod> pods)
    {
        if (pods.IsEmpty)
        {
            return new(ground.Piece!, 0, 0, 0, null);
        }

        var part = ground.On(pods);
        var (limit, load) = Firmness.Weakest(ground, pods);
        return new(
            ground.Piece!, limit.Factor, Least(ground, (w, enough) => part.ByPulls(w, enough).Factor),
            Least(ground, (w, enough) => part.BySprings(w, enough).Factor), load < 0 ? null : Weakest(ground, pods, limit, load));
    }

    // What stands under a loose piece takes its share of the vacuum and bears nothing of the part.
    private static ImmutableArray<HeldPod> Bearing(Layout layout, ImmutableArray<HeldPod> pods) =>
        [.. pods.Where((_, i) => layout.Pods[i].Holds is null)];

    private static WeakestPlace Weakest(HoldingGround ground, ImmutableArray<HeldPod> pods, Limit limit, int load)
    {
        var force = ground.Loads[load];
        var point = ground.CutterLoads.Points[force.Point];
        var pass = ground.CutterLoads.Passes[point.Pass];
        return new(
            point.OnPart,
            force.HeightMm,
            force.Force,
            pass.Name,
            FailureModes.Of(limit.Motion, force.Wrench, pods),
            pass.LeastPeakN > 0 ? limit.Factor * pass.PeakN / pass.LeastPeakN : limit.Factor);
    }

    private static IEnumerable<string> Assumed(Job job)
    {
        var friction = job.Shop.Holding.Friction;
        yield return string.Create(
            CultureInfo.InvariantCulture, $"Friction between pod and wood: {friction:0.##}; dust, resin or a worn face lowers it.");
        if (job.Shop.Pods.Where(p => PodGrip.Of(p, friction).Friction < friction).Select(p => p.Name).ToList() is { Count: > 0 } narrow)
        {
            yield return $"Pods that are narrow for their height tip before the part slides on them and count with less friction: {string.Join(", ", narrow)}.";
        }

        yield return string.Create(
            CultureInfo.InvariantCulture, $"The part weighs as solid wood of {job.Part.DensityKgPerM3:0} kg/m3 in its finished shape; what is still to be cut off is left out.");
        yield return "The part is stiff and the pods stand fast on the board. Of two figures the lower counts: by springs the seals share what presses on them as springs do, and friction at a pod is at most the coefficient times what it bears; by pulls it is at most the coefficient times the pod's own pull.";
        var stiffness = job.Shop.Pods.Select(p => p.SealStiffnessNPerMm2).Distinct().ToList();
        yield return stiffness is [PodType.UsualSealStiffnessNPerMm2]
            ? "The seals of all pods are equally stiff for each millimetre of their length (1 N/mm2, from memory; the figure itself does not matter while it is the same for all)."
            : $"Seals push back with {string.Join(", ", job.Shop.Pods.Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.SealStiffnessNPerMm2:0.###} N/mm2 ({p.Name})")))} for each millimetre of their length and each that they are pressed.";
        yield return "Where a corner of a seal bears nothing any more the seal may leak: beyond that factor the vacuum itself is in doubt.";
    }
}

using System.Collections.Immutable;
using PodLayout.Parts;

namespace PodLayout.Holding;

/// <summary>The depth of each pass that the target factor allows.</summary>
/// <remarks>
/// The cutter's force is proportional to the depth of its cut (Kienzle 1952: chip section times specific force), and acts in the
/// middle of it: a shallower pass pushes less, but higher up where it takes wood from the top. Both are reckoned with; the greatest
/// depth is found by halving, pass by pass, with the others left as they are. With the feed the force grows by a power of 0.7 of it
/// or more, since thin chips take more force for each mm².
/// </remarks>
public static class PassDepths
{
    private const int Halvings = 12;

    // Depths are told to this, mm, rounded down: what a program is written in.
    private const double StepMm = 0.5;
    private const double FineStepMm = 0.1;
    private const double FineBelowMm = 3;

    // The least power of the feed that the force follows: 1 less the exponent of Kienzle's form, which is from memory.
    private const double FeedPower = 0.7;

    /// <summary>The limits of the passes whose depth is known, in their order.</summary>
    /// <param name="ground">What is held.</param>
    /// <param name="part">It on its pods.</param>
    /// <param name="target">The factor to reach.</param>
    public static ImmutableArray<PassLimit> Of(HoldingGround ground, PartOnPods part, double target)
    {
        var limits = ImmutableArray.CreateBuilder<PassLimit>();
        var passes = ground.CutterLoads.Passes;
        foreach (var ofPass in ground.Loads.GroupBy(l => ground.CutterLoads.Points[l.Point].Pass).OrderBy(g => g.Key))
        {
            var cuts = ofPass.Select(l => (Load: l, Depth: ground.CutterLoads.Points[l.Point].DepthMm)).Where(c => c.Depth > 0).ToList();
            if (cuts.Count > 0)
            {
                limits.Add(OfPass(passes[ofPass.Key], cuts, part, target));
            }
        }

        return limits.ToImmutable();
    }

    private static PassLimit OfPass(CutterPass pass, List<(CutterForce Load, double Depth)> cuts, PartOnPods part, double target)
    {
        var depth = cuts.Max(c => c.Depth);
        // All the wood there is above the underside, in shares of the depth of the cut.
        var through = cuts.Max(c => (c.Load.HeightMm + c.Depth / 2) / c.Depth);
        var enough = target * (1 - Tolerances.HoldingShare);
        double most = 0, low = 0, high = through;
        if (Reaches(through))
        {
            return new(pass.Name, depth, Rounded(through * depth), true, null);
        }

        for (var i = 0; i < Halvings; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = Reaches(middle) ? (middle, high) : (low, middle);
        }

        for (most = Rounded(low * depth); most > 0 && !Reaches(most / depth); most = Rounded(most - FineStepMm / 2))
        {
        }

        var isDepthTooMuch = most < depth - 1e-9;
        return new(pass.Name, depth, most, false, isDepthTooMuch && pass.FollowsFeed ? FeedShare(cuts, part, target) : null);

        // The cut that failed last is asked first.
        bool Reaches(double share)
        {
            for (var i = 0; i < cuts.Count; i++)
            {
                if (part.Of(Wrench(cuts[i], share), enough).Factor < enough)
                {
                    (cuts[0], cuts[i]) = (cuts[i], cuts[0]);
                    return false;
                }
            }

            return true;
        }
    }

    // The same cut with another depth, from the same top down, but not deeper than there is wood.
    private static Wrench Wrench((CutterForce Load, double Depth) cut, double share)
    {
        var top = cut.Load.HeightMm + cut.Depth / 2;
        var depth = Math.Min(share * cut.Depth, top);
        return (cut.Load with { HeightMm = top - depth / 2 }).Wrench * (depth / cut.Depth);
    }

    private static double? FeedShare(List<(CutterForce Load, double Depth)> cuts, PartOnPods part, double target)
    {
        var factor = double.PositiveInfinity;
        foreach (var (load, _) in cuts)
        {
            factor = Math.Min(factor, part.Of(load.Wrench, factor).Factor);
        }

        // Told to a hundredth, rounded down.
        return factor >= target ? null : Math.Floor(Math.Pow(factor / target, 1 / FeedPower) * 100) / 100;
    }

    private static double Rounded(double mm)
    {
        var step = mm < FineBelowMm ? FineStepMm : StepMm;
        return Math.Round(Math.Floor(mm / step + 1e-9) * step, 3);
    }
}

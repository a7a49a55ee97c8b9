using PodLayout.Jobs;
using PodLayout.Layouts;
using PodLayout.Shops;

namespace PodLayout.Checking;

/// <summary>Which pods: in stock, allowed to turn, of one height.</summary>
internal static class PodRules
{
    public static IEnumerable<RuleCheck> Check(Job job, Layout layout)
    {
        yield return Stock(job.Shop, layout);
        yield return QuarterTurn(layout);
        yield return OneHeight(layout);
        yield return KeptPodsStand(job, layout);
    }

    private static RuleCheck KeptPodsStand(Job job, Layout layout)
    {
        var tally = new RuleTally(CheckedRule.KeptPodsStand, Measure.MostCount, 0);
        for (var i = 0; i < job.Keep.Length; i++)
        {
            var kept = job.Keep[i];
            var stands = layout.Pods.Any(p => p.Type == kept.Type && (p.Turned == kept.Turned || p.ExtentXMm == p.ExtentYMm) && p.Column == kept.Column && p.Row == kept.Row);
            var place = $"column {CheckWords.Whole(kept.Column + 1)}, row {CheckWords.Whole(kept.Row + 1)}";
            tally.Add(stands ? 0 : 1, 0, stands ? "none is missing" : place, (i, 0), () => (
                $"The job keeps a \"{kept.Type.Name}\"{(kept.Turned ? ", turned," : "")} at {place}; none stands there.",
                "Put it back, or take it out of the job's keep."));
        }

        return tally.Done("none to be kept");
    }

    private static RuleCheck Stock(Shop shop, Layout layout)
    {
        var tally = new RuleTally(CheckedRule.Stock, Measure.MostCount, 0);
        var types = shop.Pods.Union(layout.Pods.Select(p => p.Type)).ToArray();
        for (var t = 0; t < types.Length; t++)
        {
            var type = types[t];
            var used = layout.Pods.Count(p => p.Type == type);
            var stock = shop.Pods.Contains(type) ? type.Stock : 0;
            if (used > 0)
            {
                tally.Add(used, stock, $"\"{type.Name}\"", (t, 0), () => (
                    $"{CheckWords.Whole(used)} pods \"{type.Name}\" are used; the shop has {CheckWords.Whole(stock)}.",
                    $"Use {CheckWords.Whole(used - stock)} fewer, or pods of another type."));
            }
        }

        return tally.Done("no pods");
    }

    private static RuleCheck QuarterTurn(Layout layout)
    {
        var tally = new RuleTally(CheckedRule.QuarterTurn, Measure.MostCount, 0);
        for (var i = 0; i < layout.Pods.Length; i++)
        {
            var (pod, name) = (layout.Pods[i], CheckWords.Pod(i));
            var isWrong = pod.Turned && !pod.Type.MayTurn;
            tally.Add(isWrong ? 1 : 0, 0, isWrong ? name : "no pod turned that may not be", (i, 0), () => (
                $"{name} is turned by a quarter; \"{pod.Type.Name}\" may not be.", $"Set turned to false at {name}."));
        }

        return tally.Done("no pods");
    }

    private static RuleCheck OneHeight(Layout layout)
    {
        var tally = new RuleTally(CheckedRule.OneHeight, Measure.MostMm, 0);
        if (layout.Pods.IsEmpty)
        {
            return tally.Done("no pods");
        }

        // The height that most pods have is held to be the right one; among equals the first.
        var usual = layout.Pods.GroupBy(p => p.Type.HeightMm).MaxBy(g => g.Count())!.Key;
        for (var i = 0; i < layout.Pods.Length; i++)
        {
            var (pod, name) = (layout.Pods[i], CheckWords.Pod(i));
            var off = Math.Abs(pod.Type.HeightMm - usual);
            tally.Add(off, 0, off > 0 ? name : $"all are {CheckWords.Mm(usual)} mm high", (i, 0), () => (
                $"{name} is {CheckWords.Mm(pod.Type.HeightMm)} mm high, the others {CheckWords.Mm(usual)} mm: the part cannot lie flat on both.",
                $"Use a pod of {CheckWords.Mm(usual)} mm there."));
        }

        return tally.Done("no pods");
    }
}

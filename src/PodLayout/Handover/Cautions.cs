using System.Collections.Immutable;
using PodLayout.Layouts;
using PodLayout.Shops;

namespace PodLayout.Handover;

/// <summary>What the figures do not say. They stand in every output that a person works from.</summary>
internal static class Cautions
{
    public static ImmutableArray<string> Of(PlanResult result)
    {
        var stuck = result.Job.Shop.Board.Ports.Where(p => p.State == PortState.StuckOpen).Select(p => p.Name).ToList();
        return
        [
            .. result.Layout is null ? [] : (IEnumerable<string>)[result.Layout.Holding is null
                ? "Computed: where pods fit and how far the part reaches beyond them. Not computed: whether vacuum holds the part "
                    + "against the cutter."
                : "The holding factor follows from estimates of the cutting force, of friction and of the vacuum; blunt tools, knots, "
                    + "dust, a warped underside and leaks lower it."],
            "The machine's manual, local codes and the judgement of licensed practice come before this layout.",
            .. stuck.Count == 0 ? [] : (IEnumerable<string>)[$"Ports that cannot be plugged: {string.Join(", ", stuck)}."],
            .. result is { Interrupted: true, Layout: not null }
                ? (IEnumerable<string>)["The work was cut short: this is the best layout found, not the best possible."] : [],
        ];
    }
}

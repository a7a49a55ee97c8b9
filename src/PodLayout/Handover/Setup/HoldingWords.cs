using PodLayout.Layouts;

namespace PodLayout.Handover.Setup;

/// <summary>
/// What the card says of holding: the factor and where it is weakest, the gauge reading to wait for, what was assumed. This is
/// the one place where it is said; what has not been computed is said to be so.
/// </summary>
internal static class HoldingWords
{
    public const string NotComputed = "not computed";

    /// <param name="result">The plan.</param>
    /// <param name="unit">The card's unit.</param>
    public static IEnumerable<CardBlock> Of(PlanResult result, CardUnit unit)
    {
        _ = (result, unit);
        yield return new CardBlock.Facts(
        [
            ("Holding factor", NotComputed),
            ("Weakest", NotComputed),
            ("Gauge reading to reach before the spindle starts", NotComputed),
            ("The shop's own gauge reading", ""),
            ("Assumed", "nothing: where pods fit and how far the part reaches beyond them was computed, not whether vacuum holds it"),
        ]);
    }
}

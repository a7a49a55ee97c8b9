using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Holding;
using PodLayout.Layouts;

namespace PodLayout.Handover.Setup;

/// <summary>
/// What keeps the operator from starting: a layout that does not hold, or that was changed after it was planned and now breaks a rule
/// or holds too weakly.
/// It stands at the head, beside the picture, where vacuum and holding are spoken of, and among what is ticked off.
/// </summary>
/// <param name="Short">In one line, for the page with the picture; null when nothing keeps from starting.</param>
/// <param name="Lines">All of it, a paragraph each; of a layout as planned that is below its target, only that.</param>
internal sealed record StopWords(string? Short, ImmutableArray<string> Lines)
{
    // More would hide the work behind them.
    private const int MostBroken = 10;

    private const string Cleared = "until whoever programs this job has cleared it";

    public bool Stops => Short is not null;

    public static StopWords Of(Jobs.Job job, Layout layout, LayoutDoubts doubts)
    {
        var weak = layout.Holding is { } held && held.LeastOfAll < held.TargetFactor * (1 - Tolerances.HoldingShare) ? Weak(job, held) : null;
        var holdsNot = layout.Holding?.DoesNotHold == true;
        if (doubts.Rules.IsEmpty && doubts.NotCounted.IsEmpty && !holdsNot && !(doubts.IsChanged && weak is not null))
        {
            return new(null, weak is null ? [] : [weak]);
        }

        var count = doubts.Rules.Length;
        var why = (holdsNot ? "this layout DOES NOT HOLD" : doubts.IsChanged ? "this layout was changed after it was planned" : "this layout is not as it should be")
            + (holdsNot && doubts.IsChanged ? ", was changed after it was planned" : "") + (count == 0 ? "" : $" and breaks {(count == 1 ? "a rule" : $"{CsvText.Count(count)} rules")}");
        return new(
            $"DO NOT START: {why}. Read the head of page 2.",
            [
                $"DO NOT START THE SPINDLE {Cleared}: {why}{(count == 0 ? "" : ": " + string.Join("; ", doubts.Rules))}.",
                .. weak is null ? [] : new[] { weak },
                .. doubts.NotCounted.IsEmpty ? [] : new[] { $"Pods that hold nothing: {string.Join("; ", doubts.NotCounted)}." },
            ]);
    }

    /// <summary>The broken rules one by one, for the head alone.</summary>
    public static IEnumerable<string> Broken(ImmutableArray<string> broken, CardUnit unit)
    {
        // One of them may break several rules: how many rules there are the stop says.
        var shown = broken.Take(MostBroken).Select(b => "Breach: " + unit.Words(b));
        return broken.Length <= MostBroken ? shown : shown.Append($"And {CsvText.Count(broken.Length - MostBroken)} more: podlayout check lists them all.");
    }

    private static string Weak(Jobs.Job job, HoldingReport held)
    {
        var least = held.DoesNotHold ? Text($" and below the least of {FactorText.Asked(held.LeastFactor)}") : "";
        var assumed = job.Part.Loads.AreAssumed ? " with the cuts that are assumed, since the job states none" : "";
        return Text($"{Summary.Capital(held.HeldLeast.What)} is held at a factor of {FactorText.Of(held.HeldLeast.Factor)}{assumed}: below the target of {FactorText.Asked(held.TargetFactor)}{least}.");
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

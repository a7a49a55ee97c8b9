using System.Collections.Immutable;
using PodLayout.Geometry;
using PodLayout.Handover.Setup;
using PodLayout.Jobs;
using PodLayout.Layouts;

namespace PodLayout.Handover;

/// <summary>What stays unsupported, a line for each stretch.</summary>
internal static class StretchWords
{
    /// <summary>Code of the findings that say the same.</summary>
    public const string Told = "edge-unsupported";

    /// <summary>What stands before the number of a stretch on the card, where other things have numbers too.</summary>
    public const string CardMark = "U";

    // So many stretches with the same cause are told one by one.
    private const int FewAlike = 2;

    /// <summary>The lines, those alike together, and how many stretches are left out.</summary>
    /// <param name="result">The plan.</param>
    /// <param name="most">How many to tell.</param>
    public static IEnumerable<string> Of(PlanResult result, int most)
    {
        var hasLayout = result.Layout is not null;
        var numbered = result.Unsupported.Select((s, i) => (Stretch: s, Number: i + 1))
            .GroupBy(s => (s.Stretch.Cause, Far: hasLayout || s.Stretch.OverhangThatWouldDoMm is not null ? s.Number : 0)).ToList();
        var lines = numbered.SelectMany(group => group.Count() <= FewAlike
            ? group.Select(s => (s.Number, Count: 1, Words: $"{CsvText.Count(s.Number)}. {Of(s.Stretch, result.Job, hasLayout)}"))
            : [(group.First().Number, Count: group.Count(), Words: Alike([.. group.Select(s => s.Stretch)], [.. group.Select(s => s.Number)], result))])
            .OrderBy(l => l.Number).ToList();
        var more = lines.Skip(most).Sum(l => l.Count);
        return [.. lines.Take(most).Select(l => l.Words), .. more <= 0 ? [] : new[] { $"... and {CsvText.Count(more)} more, in layout.json." }];
    }

    private static string Alike(ImmutableArray<UnsupportedStretch> stretches, ImmutableArray<int> numbers, PlanResult result) => stretches.Length == result.Unsupported.Length
        ? $"Everywhere ({CsvText.Count(stretches.Length)} stretches): {stretches[0].Cause}"
        : $"{string.Join(", ", numbers.Select(CsvText.Count))}. {Mm(Math.Round(stretches.Sum(s => s.LengthMm)))} mm of edge in {CsvText.Count(stretches.Length)} stretches, the first {Place(stretches[0], result.Job)}: {stretches[0].Cause}";

    /// <summary>At the head of the card.</summary>
    public static string OnCard(PlanResult result, CardUnit unit) => unit.Words(
        $"PARTLY UNSUPPORTED: {UnsupportedFindings.Amount(result.Layout!, result.Unsupported)} beyond the limits of every pod, at the heavy numbered lines of the picture.");

    /// <summary>What is ticked off before the spindle starts.</summary>
    public static string ToTick(PlanResult result) => result.Unsupported.Length == 1
        ? "The stretch that stays unsupported is dealt with as whoever programs this job says."
        : $"The {CsvText.Count(result.Unsupported.Length)} stretches that stay unsupported are dealt with as whoever programs this job says.";

    /// <summary>The stretches where they lie on the board.</summary>
    public static IEnumerable<string> OnBoard(PlanResult result, Layout layout, CardUnit unit)
    {
        var turn = Turn.FromDegrees(layout.Placement.AngleDeg);
        string At(Point2 p)
        {
            var at = turn.Apply(p) + layout.Placement.ZeroOnBoard;
            return $"X {unit.Rough(at.X)}, Y {unit.Rough(at.Y)}";
        }

        return result.Unsupported.Select((s, i) =>
            $"{CardMark}{CsvText.Count(i + 1)}, unsupported: {(s.IsEdge && s.From != s.To ? $"edge from {At(s.From)} to {At(s.To)}" : $"{(s.IsEdge ? "edge" : Summary.Where(s.Limit))} at {At(s.From)}")} {unit.Name} on the board"
            + (s.OverhangNowMm is { } mm ? $", {unit.LengthAndUnit(mm)} from the nearest pod." : "."));
    }

    private static string Of(UnsupportedStretch stretch, Job job, bool hasLayout)
    {
        // With a layout its own overhang says what limit would do.
        return !hasLayout ? $"{Place(stretch, job)}: {stretch.Cause} {WhatWouldDo(stretch, job.Support)}"
            : stretch.OverhangNowMm is { } mm
            ? $"{Place(stretch, job)}, {Mm(mm)} mm from the nearest pod (limit {Mm(UnsupportedFindings.LimitMm(stretch.Limit, job.Support))} mm): {stretch.Cause}"
            : $"{Place(stretch, job)}, no pod anywhere near: {stretch.Cause}";
    }

    /// <summary>Where it is and how long.</summary>
    public static string Place(UnsupportedStretch stretch, Job job)
    {
        var outline = job.Part.Shape.Outline;
        string At(Point2 p) => $"({Mm(p.X)}, {Mm(p.Y)})";
        return !stretch.IsEdge ? $"{Summary.Where(stretch.Limit)}, near {At(stretch.From)}"
            : stretch.LengthMm > 0.95 * outline.PerimeterMm ? "nearly all of the outline"
            : stretch.From == stretch.To ? $"edge at {At(stretch.From)}"
            : $"{Mm(Math.Round(stretch.LengthMm))} mm of edge from {At(stretch.From)} to {At(stretch.To)}";
    }

    /// <summary>What a longer overhang or span would change there.</summary>
    public static string WhatWouldDo(UnsupportedStretch stretch, SupportRules rules)
    {
        var what = stretch.Limit switch
        {
            SupportLimit.Edge => "overhang",
            SupportLimit.Interior => "span",
            _ => "span of thin floors",
        };
        var direction = stretch.IsEdge && rules.OverhangAcrossGrainMm < rules.OverhangAlongGrainMm ? " across the grain" : "";
        var limit = Mm(UnsupportedFindings.LimitMm(stretch.Limit, rules));
        return stretch.OverhangThatWouldDoMm is { } mm
            ? $"With the part there {(stretch.IsEdge ? "an" : "a")} {what} of {Mm(Math.Ceiling(mm * 10) / 10)} mm{direction} would do for this stretch (the limit is {limit} mm)."
            : "No pod could stand anywhere near.";
    }

    private static string Mm(double value) => CsvText.Mm(value);
}

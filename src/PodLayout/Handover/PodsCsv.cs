using System.Collections.Immutable;
using PodLayout.Layouts;

namespace PodLayout.Handover;

/// <summary><c>pods.csv</c>: one row a pod, in placing order.</summary>
public static class PodsCsv
{
    /// <summary>
    /// The file's text. Column and row are the grooves along the pod's left and lower edge, counted from 1 at the datum; X and
    /// Y are the pod's centre from the datum. Without a layout there is only the header.
    /// </summary>
    /// <param name="result">The plan.</param>
    /// <param name="inInchesToo">Whether X and Y stand in inches too, as on a card in inches: in columns of their own after all others.</param>
    /// <param name="faults">Pods of a layout that was changed by hand that break a rule or are not counted: those hold nothing.</param>
    public static string Write(PlanResult result, bool inInchesToo = false, params ImmutableArray<PodFault> faults)
    {
        var mark = LayoutMark.Of(result);
        string[] header = ["pod", "type", "turn_deg", "x_mm", "y_mm", "column", "row", "ports", "holds", .. CsvText.InchHeads(inInchesToo), .. CsvText.StopHead(result), CsvText.MarkHead];
        var rows = (result.Layout?.Pods ?? []).Select((pod, i) => (string[])
        [
            LayoutFiling.PodId(i),
            CsvText.Text(pod.Type.Name),
            pod.Turned ? "90" : "0",
            CsvText.Mm(pod.Centre.X),
            CsvText.Mm(pod.Centre.Y),
            CsvText.Count(pod.Column + 1),
            CsvText.Count(pod.Row + 1),
            CsvText.Text(string.Join(' ', pod.OpenPorts.Select(p => p.Name))),
            CsvText.Text(faults.Any(f => f.Pod == i && !f.Counts) ? "nothing" : pod.Holds ?? "part"),
            .. CsvText.Inches(pod.Centre, inInchesToo),
            .. CsvText.Stop(result),
            mark,
        ]);
        return CsvText.Of(rows.Prepend(header));
    }
}

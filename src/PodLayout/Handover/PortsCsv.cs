using PodLayout.Layouts;
using PodLayout.Shops;

namespace PodLayout.Handover;

/// <summary><c>ports.csv</c>: one row a port to open; a column says on every row what happens to the others.</summary>
public static class PortsCsv
{
    /// <summary>
    /// The file's text. Column and row are the grooves next to the port on the datum's side, counted from 1 (0 where the port
    /// lies before the first groove). Without a layout there is only the header.
    /// </summary>
    /// <param name="result">The plan.</param>
    /// <param name="inInchesToo">Whether X and Y stand in inches too, as on a card in inches: in columns of their own after all others.</param>
    public static string Write(PlanResult result, bool inInchesToo = false)
    {
        var board = result.Job.Shop.Board;
        var others = Others(board);
        var mark = LayoutMark.Of(result);
        string[] header = ["open_port", "x_mm", "y_mm", "column", "row", "pod", "all_other_ports", .. CsvText.InchHeads(inInchesToo), .. CsvText.StopHead(result), CsvText.MarkHead];
        var podOf = (result.Layout?.Pods ?? [])
            .SelectMany((pod, i) => pod.OpenPorts.Select(port => (port.Name, Id: LayoutFiling.PodId(i))))
            .ToLookup(p => p.Name, p => p.Id, StringComparer.Ordinal);
        var rows = LayoutFiling.OpenPorts(result.Layout).Select(port => (string[])
        [
            CsvText.Text(port.Name),
            CsvText.Mm(port.Centre.X),
            CsvText.Mm(port.Centre.Y),
            CsvText.Count(GroovesBefore(port.Centre.X - board.FirstGroove.X, board.PitchMm)),
            CsvText.Count(GroovesBefore(port.Centre.Y - board.FirstGroove.Y, board.PitchMm)),
            CsvText.Text(string.Join(' ', podOf[port.Name])),
            CsvText.Text(others),
            .. CsvText.Inches(port.Centre, inInchesToo),
            .. CsvText.Stop(result),
            mark,
        ]);
        return CsvText.Of(rows.Prepend(header));
    }

    private static string Others(GridBoard board)
    {
        var stuck = board.Ports.Where(p => p.State == PortState.StuckOpen).Select(p => p.Name).ToList();
        return stuck.Count == 0 ? "stay plugged" : $"stay plugged; these cannot be: {string.Join(' ', stuck)}";
    }

    internal static int GroovesBefore(double fromFirstMm, double pitchMm) =>
        (int)Math.Floor((fromFirstMm + Tolerances.ContactMm) / pitchMm) + 1;
}

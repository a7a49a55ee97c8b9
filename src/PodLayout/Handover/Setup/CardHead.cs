using System.Globalization;
using PodLayout.Handover.Picture;
using PodLayout.Layouts;

namespace PodLayout.Handover.Setup;

/// <summary>What the card is for: job, part, board.</summary>
internal static class CardHead
{
    public static CardBlock.Facts Of(PlanResult result, Layout layout, CardOptions options, StopWords stop, CardUnit unit)
    {
        var (job, part, board) = (result.Job, result.Job.Part, result.Job.Shop.Board);
        var types = layout.Pods.GroupBy(p => p.Type.Name, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => $"{CsvText.Count(g.Count())} of {g.Key}{(unit.InInches && !unit.SaysSize(g.First().Type) ? $" ({unit.Size(g.First().Type)})" : "")}").ToList();
        var pods = (types.Count > 1 ? $"{CsvText.Count(layout.Pods.Length)}: " : "") + string.Join(", ", types);
        var title = job.Name.Length > 0 ? job.Name : part.Name;
        var size = unit.InInches ? $"{board.Name}, {unit.Rough(board.WidthMm)} x {unit.Rough(board.LengthMm)} in" : PanelText.BoardName(board);
        return new(
        [
            .. part.Name == title ? [] : new[] { ("Part", part.Name) },
            ("Wood", $"{(part.Species.Length > 0 ? part.Species : "not given")}, {unit.LengthAndUnit(part.ThicknessMm)} thick"),
            ("Face", options.Face switch
            {
                PartFace.Up => "face side UP, as in the picture",
                PartFace.Down => "face side DOWN, on the pods",
                _ => "not stated: ask the programmer, write here: ____________",
            }),
            ("Grain", Direction(part.GrainDeg + layout.Placement.AngleDeg)),
            ("Board", $"{size}, grooves every {unit.LengthAndUnit(board.PitchMm)}"),
            ("Pods", $"{pods}, {unit.LengthAndUnit(layout.Pods[0].Type.HeightMm)} high"),
            ("Ports to open", CsvText.Count(LayoutFiling.OpenPorts(layout).Count())),
            ("Gauge before the spindle starts", layout.Holding is { } gauge ? "at least " + HoldingSteps.Gauge(gauge, unit) + HoldingSteps.Assumed(job.Shop) : HoldingSteps.NotComputed),
            ("Holding factor", layout.Holding is { } held ? HoldingSteps.Factor(held, stop) : HoldingSteps.NotComputed),
        ]);
    }

    private static string Direction(double degrees)
    {
        var within = Math.Round(degrees % 180, 1);
        within = within < 0 ? within + 180 : within;
        return within switch
        {
            0 or 180 => "along X, left to right",
            90 => "along Y, towards you and away",
            _ => within.ToString("0.#", CultureInfo.InvariantCulture) + " degrees counter-clockwise from X",
        };
    }
}

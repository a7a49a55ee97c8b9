using System.Globalization;
using PodLayout.Layouts;

namespace PodLayout.Handover.Setup;

/// <summary>What the card is for: job, part, board.</summary>
internal static class CardHead
{
    public static CardBlock.Facts Of(PlanResult result, Layout layout, CardOptions options, CardUnit unit)
    {
        var (job, part, board) = (result.Job, result.Job.Part, result.Job.Shop.Board);
        var types = layout.Pods.GroupBy(p => p.Type.Name, StringComparer.Ordinal).OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => $"{CsvText.Count(g.Count())} of {g.Key}").ToList();
        var pods = (types.Count > 1 ? $"{CsvText.Count(layout.Pods.Length)}: " : "") + string.Join(", ", types);
        return new(
        [
            ("Part", part.Name),
            ("Wood", $"{(part.Species.Length > 0 ? part.Species : "not given")}, {unit.LengthAndUnit(part.ThicknessMm)} thick"),
            ("Face", options.Face switch
            {
                PartFace.Up => "face side UP, as in the picture",
                PartFace.Down => "face side DOWN, on the pods",
                _ => "not stated: lay the part as the picture shows it from above",
            }),
            ("Grain", Direction(part.GrainDeg + layout.Placement.AngleDeg)),
            ("Board", $"{board.Name}, {unit.Length(board.WidthMm)} x {unit.LengthAndUnit(board.LengthMm)}, grooves every {unit.LengthAndUnit(board.PitchMm)}"),
            ("Pods", pods),
            ("Ports to open", CsvText.Count(LayoutFiling.OpenPorts(layout).Count())),
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

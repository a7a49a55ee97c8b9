using System.Globalization;
using PodLayout.Findings;
using PodLayout.Jobs;
using PodLayout.Parts;

namespace PodLayout.Forces;

/// <summary>What a job states of its cutters that cannot be: too wide for the part, wider than themselves, chips as thick as boards.</summary>
internal static class CutterDoubts
{
    /// <summary>Routers take a tenth of a millimetre to one for each cutting edge: more than this is a slip, mm. Common practice, no source.</summary>
    public const double ThickestChipMm = 5;

    /// <summary>The first refusal; null when there is none.</summary>
    public static Finding? Of(Part part, CutRequest request, string jobFile) =>
        TooWide(part, request, jobFile) ?? WiderThanItself(request, jobFile) ?? TooThick(part, request, jobFile);

    private static Finding? TooWide(Part part, CutRequest request, string jobFile)
    {
        var box = part.Shape.Outline.Bounds;
        double narrow = Math.Min(box.Width, box.Height), wide = Math.Max(box.Width, box.Height);
        IEnumerable<(double? Diameter, double Most, string Path, string Name)> said =
        [
            (request.Cutter?.DiameterMm, narrow, "$.cutter.diameterMm", "the cutter of the job"),
            .. request.Operations.SelectMany(o => new[]
            {
                (o.ToolDiameterMm, narrow, o.Path + ".toolDiameterMm", $"the tool of {Named(o)}"),
                (o.DiameterMm, narrow, o.Path + ".diameterMm", $"the hole of {Named(o)}"),
                (o.Cutter?.DiameterMm, narrow, o.Path + ".cutter.diameterMm", $"the cutter of {Named(o)}"),
            }),
            // A narrow part may well be faced with a wide cutter.
            .. (request.Program?.Tools.Values ?? []).Select(t => (
                (double?)t.DiameterMm, wide, "$.program.tools", $"tool {t.Number.ToString(CultureInfo.InvariantCulture)}")),
        ];
        return said.Where(s => s.Diameter > s.Most).Select(s => Refuse(
            "tool-wider-than-part", jobFile, s.Path,
            Text($"{s.Name} is {s.Diameter:0.##} mm wide; the part is {box.Width:0.##} x {box.Height:0.##} mm."),
            "Give its diameter in millimetres.")).FirstOrDefault();
    }

    // The width of the cut beside a diameter that stands elsewhere; beside one in the same place the reader has looked.
    private static Finding? WiderThanItself(CutRequest request, string jobFile)
    {
        List<(CutterSetup? Setup, double DiameterMm, string Name)> own =
        [
            .. request.Operations.Where(o => o.ToolDiameterMm > 0).Select(o => (o.Cutter, o.ToolDiameterMm, $"the tool of {Named(o)}")),
            .. (request.Program?.Tools.Values ?? []).Select(t => (
                request.Program!.Cutters.GetValueOrDefault(t.Number), t.DiameterMm, $"tool {t.Number.ToString(CultureInfo.InvariantCulture)}")),
        ];
        var widest = own.Select(o => o.DiameterMm).DefaultIfEmpty(CutterCut.UsualDiameterMm).Max();
        if (request.Cutter is { DiameterMm: null } common)
        {
            own.Insert(0, (common, widest, own.Count == 0 ? "the cutter that is reckoned with" : "the widest tool of the job"));
        }

        return own.Where(o => o.Setup?.WidthMm > o.DiameterMm).Select(o => Refuse(
            "cutter-unclear", jobFile, o.Setup!.Path + ".widthMm",
            Text($"found a cut {o.Setup.WidthMm:0.##} mm wide; {o.Name} is {o.DiameterMm:0.##} mm wide."), "Give the width that one pass takes.")).FirstOrDefault();
    }

    private static Finding? TooThick(Part part, CutRequest request, string jobFile)
    {
        IEnumerable<(CutterSetup Setup, CutterSetup? Own, string Name)> said =
        [
            .. request.Cutter is { } common ? new[] { (common, (CutterSetup?)common, "the cutter of the job") } : [],
            .. request.Operations.Select(o => ((o.Cutter ?? new CutterSetup(o.Path)).Over(request.Cutter), o.Cutter, Named(o))),
            .. (request.Program?.Cutters.AsEnumerable() ?? []).Select(c => (
                c.Value.Over(request.Cutter), (CutterSetup?)c.Value, $"tool {c.Key.ToString(CultureInfo.InvariantCulture)}")),
        ];
        foreach (var (setup, own, name) in said)
        {
            CutterCut cut = new(setup, setup.DiameterMm ?? CutterCut.UsualDiameterMm, part);
            var chip = cut.ChipMm(cut.FeedMmPerMin, cut.SpindleRpm);
            if (setup.TangentialN is null && chip > ThickestChipMm)
            {
                var member = setup.SpindleRpm is not null ? ".spindleRpm" : ".feedMmPerMin";
                var isOwn = own is not null && (setup.SpindleRpm is not null ? own.SpindleRpm : own.FeedMmPerMin) is not null;
                return Refuse(
                    "chip-too-thick", jobFile, (isOwn ? own! : request.Cutter!).Path + member,
                    Text($"{name}: {cut.FeedMmPerMin:0.###} mm a minute at {cut.SpindleRpm:0.###} rpm is {chip:0.###} mm for each cutting edge; expected at most {ThickestChipMm:0.##} mm."),
                    "Correct the feed or the spindle speed.");
            }
        }

        return null;
    }

    private static string Named(CutOperation operation) => $"\"{operation.Name ?? Cuts.CutPaths.NameOf(operation.Kind)}\"";

    private static Finding Refuse(string code, string jobFile, string path, string message, string remedy) =>
        new(code, Severity.Refused, FindingKind.Request, message, new Place.InJson(jobFile, path), remedy);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}

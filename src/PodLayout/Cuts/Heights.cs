using System.Collections.Immutable;
using System.Globalization;
using PodLayout.Findings;
using PodLayout.Programs;
using PodLayout.Shops;

namespace PodLayout.Cuts;

/// <summary>Whether the deepest tip stays clear of the board, for each height of pods in stock.</summary>
public static class Heights
{
    /// <summary>
    /// The shop with only those pods that are high enough; a refusal when none are. The findings say the spare height, and the Z
    /// of pod face and part's face for the operator.
    /// </summary>
    /// <param name="shop">The shop.</param>
    /// <param name="path">The program; null when there is none.</param>
    /// <param name="request">What the job says.</param>
    /// <param name="thicknessMm">Thickness of the part.</param>
    /// <param name="jobFile">The job file, for messages.</param>
    public static Outcome<Shop> Check(Shop shop, ToolPath? path, CutRequest request, double thicknessMm, string jobFile)
    {
        List<Finding> findings = [];
        var pods = shop.Pods;
        foreach (var height in shop.Pods.Where(p => p.Stock > 0).Select(p => p.HeightMm).Distinct().Order())
        {
            var (spare, place, who) = Deepest(path, request, height, thicknessMm, jobFile);
            if (spare >= request.BoardClearanceMm)
            {
                findings.Add(Say(Severity.Note, "height-spare", Text($"on pods of {height:0.##} mm the deepest tip ({who}) stays {spare:0.##} mm above the board{Zeros(request, height, thicknessMm)}"), place, null));
                continue;
            }

            findings.Add(Say(
                Severity.Warning, "pods-too-low", Text($"on pods of {height:0.##} mm the deepest tip ({who}) comes to {spare:0.##} mm above the board; expected at least {request.BoardClearanceMm:0.##} mm; these pods are left out."), place, "Cut less deep, or use higher pods."));
            pods = [.. pods.Select(p => p.HeightMm == height ? p with { Stock = 0 } : p)];
        }

        if (pods.Any(p => p.Stock > 0) || shop.Pods.All(p => p.Stock == 0))
        {
            return Outcome<Shop>.Of(shop with { Pods = pods }, findings);
        }

        return Outcome<Shop>.Refuse(findings.Select(f => f.Code == "pods-too-low" ? f with { Severity = Severity.Refused } : f));
    }

    private static (double SpareMm, Place Place, string Who) Deepest(
        ToolPath? path, CutRequest request, double height, double thickness, string jobFile)
    {
        var spare = double.PositiveInfinity;
        Place place = new Place.InJson(jobFile, "$");
        var who = "none";
        foreach (var operation in request.Operations.Where(o => height + o.LowestTipMm < spare))
        {
            (spare, place, who) = (height + operation.LowestTipMm, new Place.InJson(jobFile, operation.Path), operation.Name ?? "this operation");
        }

        if (path is null)
        {
            return (spare, place, who);
        }

        var board = Setting(request, height, thickness).BoardZMm;
        var lowest = path.Stretches.MinBy(s => s.LowestZMm);
        return lowest.LowestZMm - board >= spare ? (spare, place, who)
            : (lowest.LowestZMm - board, new Place.InFile(path.FileName, lowest.Line), Text($"tool {lowest.ToolNumber}"));
    }

    /// <summary>How a job's program stands to pods of one height.</summary>
    public static ProgramSetting Setting(CutRequest request, double podHeightMm, double thicknessMm) => new(
        request.Program?.Tools ?? ImmutableSortedDictionary<int, Tool>.Empty,
        request.Program?.ZZero ?? ZZero.PartFace,
        thicknessMm,
        podHeightMm,
        request.LowestTipMm,
        request.Program?.Offset ?? default);

    private static string Zeros(CutRequest request, double height, double thickness)
    {
        if (request.Program is null)
        {
            return "";
        }

        var setting = Setting(request, height, thickness);
        return Text($"; in the program the pod face is at Z {setting.UndersideZMm:0.###} and the part's face at Z {setting.FaceZMm:0.###}");
    }

    private static Finding Say(Severity severity, string code, string message, Place place, string? remedy) =>
        new(code, severity, FindingKind.Request, message, place, remedy);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
